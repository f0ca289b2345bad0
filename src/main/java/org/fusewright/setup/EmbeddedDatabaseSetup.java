package org.fusewright.setup;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Condition;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.type.AnnotatedTypeMetadata;
import org.springframework.util.StringUtils;

import java.nio.file.Path;

/** Gives the service a database of its own, unless {@code spring.datasource.url} names a server. */
@Configuration(proxyBeanMethods = false)
@Conditional(EmbeddedDatabaseSetup.NoServerNamed.class)
class EmbeddedDatabaseSetup {
    @Bean(destroyMethod = "close")
    EmbeddedDatabase embeddedDatabase(@Value("${fusewright.home}") Path home) {
        return EmbeddedDatabase.start(home);
    }

    @Bean
    JdbcConnectionDetails embeddedDatabaseConnection(EmbeddedDatabase database) {
        return new JdbcConnectionDetails() {
            @Override
            public String getJdbcUrl() {
                return database.jdbcUrl();
            }

            @Override
            public String getUsername() {
                return database.user();
            }

            @Override
            public String getPassword() {
                return database.password();
            }
        };
    }

    static class NoServerNamed implements Condition {
        @Override
        public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
            return !StringUtils.hasText(
                    context.getEnvironment().getProperty("spring.datasource.url"));
        }
    }
}
