package org.fusewright.setup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Properties;

class EmbeddedDatabaseTest {
    @TempDir private static Path sharedHome;
    @TempDir private static Path quickHome;
    private static EmbeddedDatabase database;

    @BeforeAll
    static void start() {
        database = EmbeddedDatabase.start(sharedHome);
        EmbeddedDatabase.start(quickHome).close();
    }

    @AfterAll
    static void stop() {
        database.close();
    }

    @ParameterizedTest
    @CsvSource({
        "fsync, on",
        "synchronous_commit, on",
        "full_page_writes, on",
        "data_checksums, on",
        "password_encryption, scram-sha-256",
        "listen_addresses, 127.0.0.1",
        "unix_socket_directories, ''",
        "server_encoding, UTF8",
    })
    void keepsTheSafeSetting(String name, String value) throws SQLException {
        assertThat(ask(database, "show " + name)).isEqualTo(value);
    }

    @Test
    void asksForAPasswordWhereverAConnectionComesFrom() throws SQLException {
        assertThat(
                        ask(
                                database,
                                "select string_agg(distinct auth_method, ' ')"
                                        + " from pg_hba_file_rules"))
                .isEqualTo("scram-sha-256");
    }

    @ParameterizedTest
    @CsvSource({"'b', 'Ä'", "'Z', 'a'", "'10', '9'"})
    void ordersTextByCodePoint(String first, String second) throws SQLException {
        assertThat(ask(database, "select '%s' < '%s'".formatted(first, second))).isEqualTo("t");
        assertThat(ask(database, "select upper('ä')")).isEqualTo("Ä");
    }

    @Test
    void rejectsAConnectionWithoutPassword() {
        Properties nobody = new Properties();
        nobody.setProperty("user", database.user());
        assertThatExceptionOfType(SQLException.class)
                .isThrownBy(() -> DriverManager.getConnection(database.jdbcUrl(), nobody).close())
                .withMessageContaining("no password was provided");
    }

    @Test
    void rejectsAWrongPassword() {
        assertThatExceptionOfType(SQLException.class)
                .isThrownBy(
                        () ->
                                DriverManager.getConnection(
                                                database.jdbcUrl(), database.user(), "guessed")
                                        .close())
                .extracting(SQLException::getSQLState)
                .isEqualTo("28P01"); // invalid_password, PostgreSQL manual, appendix A
    }

    @Test
    void keepsTheFolderAndThePasswordFromOtherUsers() throws IOException {
        assumeTrue(sharedHome.getFileSystem().supportedFileAttributeViews().contains("posix"));
        assertThat(Files.getPosixFilePermissions(sharedHome))
                .isEqualTo(PosixFilePermissions.fromString("rwx------"));
        Path password = sharedHome.resolve("database-password");
        assertThat(password).hasContent(database.password());
        assertThat(Files.getPosixFilePermissions(password))
                .isEqualTo(PosixFilePermissions.fromString("rw-------"));
    }

    @Test
    void rejectsASecondServiceOnTheFolderAtOnce() throws SQLException {
        Instant start = Instant.now();
        assertThatExceptionOfType(StartProblem.class)
                .isThrownBy(() -> EmbeddedDatabase.start(sharedHome))
                .withMessageContaining("is in use by another Fusewright");
        assertThat(Duration.between(start, Instant.now())).isLessThan(Duration.ofSeconds(2));
        assertThat(ask(database, "select 'alive'")).isEqualTo("alive");
    }

    @Test
    void keepsDataAndPasswordWhenItStopsAndStarts(@TempDir Path parent) throws SQLException {
        Path home = parent.resolve("our shop");
        String password;
        try (EmbeddedDatabase first = EmbeddedDatabase.start(home)) {
            password = first.password();
            run(first, "create table kept as select 'two seals' as what");
        }
        assertThat(home.resolve("database/postmaster.pid")).doesNotExist();
        try (EmbeddedDatabase second = EmbeddedDatabase.start(home)) {
            assertThat(ask(second, "select what from kept")).isEqualTo("two seals");
            assertThat(second.password()).isEqualTo(password);
        }
    }

    @Test
    void startsThoughAStrangerHasTheProcessNumberOfTheOldServer(@TempDir Path scripts)
            throws IOException, SQLException {
        Path home = quickHome;
        Process stranger = new ProcessBuilder(javaProgram(), sleeper(scripts)).start();
        Files.write(
                home.resolve("database/postmaster.pid"),
                List.of(Long.toString(stranger.pid()), home + "/database", "1", "1", "", "", ""));
        try (EmbeddedDatabase again = EmbeddedDatabase.start(home)) {
            assertThat(ask(again, "select 1")).isEqualTo("1");
            assertThat(stranger.isAlive()).isTrue();
        } finally {
            stranger.destroyForcibly();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "12", "no number\n/x\nnone\n", "99999999\n/x\n1\n5432\n"})
    void startsThoughTheFileOfTheOldServerIsTornOrStale(String content) throws IOException {
        Files.writeString(quickHome.resolve("database/postmaster.pid"), content);
        EmbeddedDatabase.start(quickHome).close();
        assertThat(quickHome.resolve("database/postmaster.pid")).doesNotExist();
    }

    private static String javaProgram() {
        return ProcessHandle.current().info().command().orElseThrow();
    }

    private static String sleeper(Path folder) throws IOException {
        return Files.writeString(
                        folder.resolve("Sleeper.java"),
                        "void main() throws Exception { Thread.sleep(60_000); }")
                .toString();
    }

    @Test
    void startsOverAfterAFirstStartThatWasInterrupted(@TempDir Path home)
            throws IOException, SQLException {
        Files.writeString(home.resolve("database-password.new"), "half");
        Files.createDirectories(home.resolve("database/base"));
        Files.writeString(home.resolve("database/postgresql.conf"), "");
        Files.createDirectories(home.resolve("binaries/half/bin"));
        try (EmbeddedDatabase database = EmbeddedDatabase.start(home)) {
            assertThat(ask(database, "select 1")).isEqualTo("1");
            assertThat(home.resolve("database-password.new")).doesNotExist();
            assertThat(home.resolve("binaries/half")).doesNotExist();
        }
    }

    @Test
    void rejectsADatabaseWhosePasswordIsLostAndLeavesItAlone(@TempDir Path home)
            throws IOException {
        Path treasure = home.resolve("database/treasure");
        Files.createDirectories(treasure);
        assertThatExceptionOfType(StartProblem.class)
                .isThrownBy(() -> EmbeddedDatabase.start(home))
                .withMessageContaining("database-password is missing");
        assertThat(treasure).exists();
    }

    @Test
    void rejectsADataFolderThatIsAFile(@TempDir Path parent) throws IOException {
        Path file = Files.writeString(parent.resolve("file"), "text");
        assertThatExceptionOfType(StartProblem.class)
                .isThrownBy(() -> EmbeddedDatabase.start(file))
                .withMessageContaining("cannot be used");
        assertThat(file).hasContent("text");
    }

    private static Connection connect(EmbeddedDatabase database) throws SQLException {
        return DriverManager.getConnection(
                database.jdbcUrl(), database.user(), database.password());
    }

    private static String ask(EmbeddedDatabase database, String question) throws SQLException {
        try (Connection connection = connect(database);
                Statement statement = connection.createStatement();
                ResultSet answer = statement.executeQuery(question)) {
            assertThat(answer.next()).isTrue();
            return answer.getString(1);
        }
    }

    private static void run(EmbeddedDatabase database, String command) throws SQLException {
        try (Connection connection = connect(database);
                Statement statement = connection.createStatement()) {
            statement.execute(command);
        }
    }
}
