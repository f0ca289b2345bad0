package org.fusewright.accounts.web;

import org.fusewright.TestDatabase;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.test.context.ContextConfiguration;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * A test against the whole service where people must log in, on a database of its own. All such
 * tests share one running service.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@SpringBootTest(
        webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = "fusewright.accounts=required")
@ContextConfiguration(initializers = AccountsTest.Database.class)
@interface AccountsTest {
    String DATABASE = "fusewright_accounts";

    /** The database, made when the service starts. */
    final class Database implements ApplicationContextInitializer<ConfigurableApplicationContext> {
        @Override
        public void initialize(ConfigurableApplicationContext context) {
            TestDatabase.newOne(DATABASE).initialize(context);
        }
    }
}
