package org.fusewright;

import org.fusewright.setup.EmbeddedDatabase;
import org.postgresql.ds.PGSimpleDataSource;
import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.util.FileSystemUtils;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;

import javax.sql.DataSource;

/**
 * The one embedded PostgreSQL of a test run: started when the first test needs it, empty then, and
 * stopped with the JVM. Its files stay in {@code target}, which saves the next run from making
 * them.
 */
public final class TestDatabase
        implements ApplicationContextInitializer<ConfigurableApplicationContext> {
    /**
     * The data folder of services under test, which they must leave alone: they are given a server.
     */
    public static final Path UNUSED_HOME = Path.of("target", "unused-home");

    private static final class Started {
        private static final EmbeddedDatabase DATABASE = start();
    }

    private static EmbeddedDatabase start() {
        FileSystemUtils.deleteRecursively(UNUSED_HOME.toFile());
        EmbeddedDatabase database = EmbeddedDatabase.start(Path.of("target", "test-home"));
        Runtime.getRuntime().addShutdownHook(new Thread(database::close));
        try (Connection connection = connect(database);
                Statement statement = connection.createStatement()) {
            statement.execute("drop schema public cascade");
            statement.execute("create schema public");
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        return database;
    }

    /** A connection of the test's own, beside those of the service. */
    public static Connection connect() throws SQLException {
        return connect(Started.DATABASE);
    }

    private static Connection connect(EmbeddedDatabase database) throws SQLException {
        return DriverManager.getConnection(
                database.jdbcUrl(), database.user(), database.password());
    }

    /** A new, empty database on the same server, for a service of the test's own. */
    public static ApplicationContextInitializer<ConfigurableApplicationContext> newOne(
            String name) {
        try (Connection connection = connect();
                Statement statement = connection.createStatement()) {
            statement.execute("drop database if exists " + name + " with (force)");
            statement.execute("create database " + name);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        return context -> use(urlOf(name), context);
    }

    /** A connection to a database made by {@link #newOne}. */
    public static Connection connectTo(String name) throws SQLException {
        return DriverManager.getConnection(
                urlOf(name), Started.DATABASE.user(), Started.DATABASE.password());
    }

    /** The same for whoever makes its own connections. */
    public static DataSource sourceOf(String name) {
        PGSimpleDataSource source = new PGSimpleDataSource();
        source.setUrl(urlOf(name));
        source.setUser(Started.DATABASE.user());
        source.setPassword(Started.DATABASE.password());
        return source;
    }

    private static String urlOf(String name) {
        return Started.DATABASE.jdbcUrl().replaceFirst("/[^/?]+(?=\\?|$)", "/" + name);
    }

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        use(Started.DATABASE.jdbcUrl(), context);
    }

    private static void use(String url, ConfigurableApplicationContext context) {
        EmbeddedDatabase database = Started.DATABASE;
        TestPropertyValues.of(
                        "spring.datasource.url=" + url,
                        "spring.datasource.username=" + database.user(),
                        "spring.datasource.password=" + database.password(),
                        "spring.datasource.hikari.maximum-pool-size=4",
                        "fusewright.home=" + UNUSED_HOME)
                .applyTo(context);
    }
}
