package org.fusewright.accounts;

import org.springframework.context.annotation.Condition;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.core.env.Environment;
import org.springframework.core.type.AnnotatedTypeMetadata;

import java.net.InetAddress;
import java.net.UnknownHostException;

/**
 * Whether people must log in: wherever the service answers to another than its own machine, and
 * where {@code fusewright.accounts} is {@code required}. As a condition: they must.
 */
public final class AccountsMode implements Condition {
    private static final String SETTING = "fusewright.accounts";
    private static final String REQUIRED = "required";
    private static final String AUTO = "auto";

    @Override
    public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
        return isRequired(context.getEnvironment());
    }

    public static boolean isRequired(Environment settings) {
        String asked = settings.getProperty(SETTING, AUTO);
        if (!asked.equals(AUTO) && !asked.equals(REQUIRED)) {
            throw new IllegalStateException(SETTING + " must be " + AUTO + " or " + REQUIRED);
        }
        return asked.equals(REQUIRED) || !isLoopback(settings.getProperty("server.address", ""));
    }

    private static boolean isLoopback(String address) {
        try {
            // Without a name this is the loopback address, and yet the server would answer to all.
            return !address.isBlank() && InetAddress.getByName(address).isLoopbackAddress();
        } catch (UnknownHostException notThisMachine) {
            return false;
        }
    }
}
