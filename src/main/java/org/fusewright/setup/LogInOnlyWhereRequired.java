package org.fusewright.setup;

import org.fusewright.accounts.AccountsMode;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.autoconfigure.AutoConfigurationImportFilter;
import org.springframework.boot.autoconfigure.AutoConfigurationMetadata;
import org.springframework.context.EnvironmentAware;
import org.springframework.core.env.Environment;

import java.util.List;

/** Keeps the filters of log-in and sessions out of a service that one person uses alone. */
class LogInOnlyWhereRequired implements AutoConfigurationImportFilter, EnvironmentAware {
    private static final List<String> FAMILIES =
            List.of("org.springframework.boot.security.", "org.springframework.boot.session.");

    private boolean required = true;

    @Override
    public void setEnvironment(Environment environment) {
        required = AccountsMode.isRequired(environment);
    }

    @Override
    public boolean[] match(@Nullable String[] candidates, AutoConfigurationMetadata metadata) {
        boolean[] matches = new boolean[candidates.length];
        for (int i = 0; i < matches.length; i++) {
            String candidate = candidates[i];
            matches[i] =
                    required
                            || candidate == null
                            || FAMILIES.stream().noneMatch(candidate::startsWith);
        }
        return matches;
    }
}
