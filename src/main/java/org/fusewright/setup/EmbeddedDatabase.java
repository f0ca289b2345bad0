package org.fusewright.setup;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import io.zonky.test.db.postgres.util.LinuxUtils;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * PostgreSQL in the data folder, started and stopped with the service.
 *
 * <p>It is as safe as a server: every commit is on the disk before it is acknowledged, it listens
 * on the loopback address only and asks for a password. Text is ordered by code point, the same on
 * every system. Its data stay when it stops.
 */
public final class EmbeddedDatabase implements AutoCloseable {
    private static final Duration STARTING = Duration.ofSeconds(30);
    private static final String USER = "postgres";

    private static final Duration NEXT_TRY = Duration.ofSeconds(1);
    private static final int ANY_PORT = 0;
    private static final Logger log = LoggerFactory.getLogger(EmbeddedDatabase.class);

    private final DataFolder folder;
    private final String password;
    private final int port;
    private EmbeddedPostgres server;
    private boolean closed;

    private EmbeddedDatabase(DataFolder folder, EmbeddedPostgres server, String password) {
        this.folder = folder;
        this.server = server;
        this.password = password;
        this.port = server.getPort();
    }

    /**
     * Starts the database of a data folder, which is made where it is missing.
     *
     * @throws StartProblem when another service uses the folder, or the database does not come up
     */
    public static EmbeddedDatabase start(Path home) {
        DataFolder folder = DataFolder.open(home);
        try {
            Files.deleteIfExists(folder.databaseLog());
            LeftoverServer.stop(folder.cluster(), folder.databaseLog());
            String password = folder.readOrCreatePassword();
            EmbeddedPostgres server = startServer(folder, password, ANY_PORT);
            folder.confirmDatabase();
            EmbeddedDatabase database = new EmbeddedDatabase(folder, server, password);
            database.startAgainWhenEnded();
            return database;
        } catch (IOException e) {
            folder.close();
            throw new UncheckedIOException(e);
        } catch (RuntimeException | Error e) {
            folder.close();
            throw e;
        }
    }

    /** Somebody else may end the server's process; the service then waits for it to come back. */
    private void startAgainWhenEnded() throws IOException {
        ProcessHandle.of(LeftoverServer.readProcessId(folder.cluster()))
                .orElseThrow(() -> new IOException("The database ended at once"))
                .onExit()
                .thenRun(() -> Thread.ofVirtual().start(this::startAgain));
    }

    private void startAgain() {
        while (!triedAgain()) {
            try {
                Thread.sleep(NEXT_TRY);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return;
            }
        }
    }

    private synchronized boolean triedAgain() {
        if (closed) {
            return true;
        }
        log.warn("The database has ended; it is started again.");
        try {
            server.close();
            LeftoverServer.stop(folder.cluster(), folder.databaseLog());
            server = startServer(folder, password, port);
            startAgainWhenEnded();
            return true;
        } catch (IOException | StartProblem e) {
            log.error("The database does not come back: {}", e.getMessage());
            return false;
        }
    }

    private static EmbeddedPostgres startServer(DataFolder folder, String password, int port) {
        Redirect log = Redirect.appendTo(folder.databaseLog().toFile());
        try {
            return EmbeddedPostgres.builder()
                    .setDataDirectory(folder.cluster())
                    .setPort(port)
                    .setOverrideWorkingDirectory(folder.binaries().toFile())
                    .setCleanDataDirectory(false)
                    .setRegisterShutdownHook(false)
                    .setPGStartupWait(STARTING)
                    .setOutputRedirector(log)
                    .setErrorRedirector(log)
                    .setConnectConfig("password", password)
                    // The library turns the first two off.
                    .setServerConfig("fsync", "on")
                    .setServerConfig("synchronous_commit", "on")
                    .setServerConfig("listen_addresses", "127.0.0.1")
                    .setServerConfig("unix_socket_directories", "''")
                    .setServerConfig("password_encryption", "scram-sha-256")
                    .setServerConfig("max_connections", "100")
                    .setServerConfig("log_checkpoints", "off")
                    .setLocaleConfig("auth-host", "scram-sha-256")
                    .setLocaleConfig("auth-local", "scram-sha-256")
                    .setLocaleConfig("pwfile", folder.firstPassword().toString())
                    .setLocaleConfig("locale-provider", "builtin")
                    .setLocaleConfig("builtin-locale", "C.UTF-8")
                    .setLocaleConfig("locale", "C")
                    .start();
        } catch (IOException | RuntimeException | ExceptionInInitializerError e) {
            throw new StartProblem(
                    "The embedded database in " + folder + " did not start.",
                    "Look into "
                            + folder.databaseLog()
                            + " for the reason, or set spring.datasource.url to a PostgreSQL"
                            + " server of your own.",
                    e);
        }
    }

    /** The command as it must be called where the superuser runs it, whom PostgreSQL refuses. */
    static List<String> asOrdinaryUser(List<String> command) {
        if (!LinuxUtils.isUnshareAvailable()) {
            return command;
        }
        List<String> wrapped = new ArrayList<>(List.of("unshare", "-U"));
        wrapped.addAll(command);
        return wrapped;
    }

    public String jdbcUrl() {
        return "jdbc:postgresql://127.0.0.1:" + port + "/postgres";
    }

    public String user() {
        return USER;
    }

    public String password() {
        return password;
    }

    /** Stops the server, keeps its data, and lets another service have the folder. */
    @Override
    public synchronized void close() {
        closed = true;
        try (folder) {
            server.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
