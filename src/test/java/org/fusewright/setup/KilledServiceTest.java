package org.fusewright.setup;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;

/** What was acknowledged stays, whoever is killed. */
@Timeout(value = 2, unit = TimeUnit.MINUTES)
class KilledServiceTest {
    private static final int WRITERS = 3;
    private static final int ENOUGH = 150;

    // One folder for all: the second test finds what the first one left.
    @TempDir private static Path parent;

    private final Path home = parent.resolve("our shop");

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void keepsEveryAcknowledgedJobWhenKilledDuringWrites(boolean killDatabaseToo)
            throws IOException, SQLException, InterruptedException {
        Queue<String> acknowledged = new ConcurrentLinkedQueue<>();
        List<Thread> writers = new ArrayList<>();
        ServiceProcess killed = ServiceProcess.start(home);
        ProcessHandle database = killed.database();
        try {
            for (int i = 0; i < WRITERS; i++) {
                Connection connection = killed.connect();
                String prefix = "K-" + killDatabaseToo + "-" + i + "-";
                writers.add(
                        Thread.ofPlatform().start(() -> write(connection, prefix, acknowledged)));
            }
            waitForMore(acknowledged, ENOUGH);
            killed.kill();
            if (killDatabaseToo) {
                database.destroyForcibly();
                database.onExit().join();
            } else {
                assertThat(database.isAlive()).isTrue();
                waitForMore(acknowledged, ENOUGH);
            }
            try (ServiceProcess restarted = ServiceProcess.start(home)) {
                assertThat(restarted.output()).contains("Fusewright is ready");
                assertThat(database.isAlive()).isFalse();
                for (Thread writer : writers) {
                    writer.join();
                }
                assertThat(listReferences(restarted)).containsAll(acknowledged);
            }
        } finally {
            killed.kill();
            database.destroy();
        }
    }

    private static void write(Connection connection, String prefix, Queue<String> acknowledged) {
        try (connection;
                PreparedStatement insert =
                        connection.prepareStatement(
                                """
                                insert into job (reference, title, customer, revision, version,
                                    document, schema_version, created_at, changed_at)
                                values (?, 'Trail quad', 'Highmoor Trails', 1, 0,
                                    '{}', 1, now(), now())
                                """)) {
            for (int number = 0; ; number++) {
                String reference = prefix + number;
                insert.setString(1, reference);
                insert.executeUpdate();
                acknowledged.add(reference);
            }
        } catch (SQLException serverGone) {
            // The end of every writer: what it was told is saved so far is what counts.
            return;
        }
    }

    private static void waitForMore(Queue<String> acknowledged, int more)
            throws InterruptedException {
        int target = acknowledged.size() + more;
        while (acknowledged.size() < target) {
            Thread.sleep(Duration.ofMillis(5));
        }
    }

    private static List<String> listReferences(ServiceProcess service)
            throws IOException, SQLException {
        List<String> references = new ArrayList<>();
        try (Connection connection = service.connect();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("select reference from job")) {
            while (rows.next()) {
                references.add(rows.getString(1));
            }
        }
        return references;
    }

    @Test
    void stopsTheDatabaseWithTheServiceAndTurnsASecondServiceAway()
            throws IOException, InterruptedException {
        ProcessHandle database;
        try (ServiceProcess service = ServiceProcess.start(home)) {
            database = service.database();
            assertThat(service.output()).doesNotContain("WARN", "ERROR");
            assertThat(service.address()).hasScheme("http").hasHost("127.0.0.1");
            assertThat(get(service, "/actuator/health")).isEqualTo("{\"status\":\"UP\"}");

            try (ServiceProcess second = ServiceProcess.start(home)) {
                assertThat(second.output())
                        .contains("is in use by another Fusewright")
                        .doesNotContain("\tat ", "Exception");
            }
            assertThat(get(service, "/actuator/health")).isEqualTo("{\"status\":\"UP\"}");
        }
        assertThat(database.onExit()).succeedsWithin(Duration.ofSeconds(5));
    }

    private static String get(ServiceProcess service, String path)
            throws IOException, InterruptedException {
        try (HttpClient client = HttpClient.newHttpClient()) {
            HttpRequest request = HttpRequest.newBuilder(service.address().resolve(path)).build();
            return client.send(request, BodyHandlers.ofString()).body();
        }
    }
}
