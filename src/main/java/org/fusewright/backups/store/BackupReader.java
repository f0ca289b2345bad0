package org.fusewright.backups.store;

import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationVersion;
import org.fusewright.backups.Restored;
import org.fusewright.backups.UnusableBackupException;
import org.fusewright.core.words.Phrase;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyManager;
import org.springframework.stereotype.Repository;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

import javax.sql.DataSource;

/**
 * Restores beside what is there: the backup's tables are made anew in a schema of their own, by the
 * migrations up to the backup's version, filled, brought up to date by the later migrations, and
 * only then put in place by exchanging the names of the schemas. Until then nothing is touched.
 */
@Repository
public class BackupReader {
    private static final String FORMER = "before_restore_";
    private static final String COMING = "restoring_";
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd_HHmmss_SSS").withZone(ZoneOffset.UTC);

    /** Whoever works must end within this, or the restore gives up. */
    private static final String LONGEST_WAIT = "30s";

    private final DataSource database;
    private final Flyway migrations;

    BackupReader(DataSource database, Flyway migrations) {
        this.database = database;
        this.migrations = migrations;
    }

    /**
     * @param by who asks for it
     * @throws UnusableBackupException when the file is no whole backup, or of a newer program
     */
    public Restored restore(Path file, String by, Instant now) throws IOException {
        try (ZipFile zip = new ZipFile(file.toFile(), StandardCharsets.UTF_8)) {
            BackupFile.Content content = content(zip);
            refuseNewer(content.schema());
            String coming = COMING + STAMP.format(now);
            String former = FORMER + STAMP.format(now);
            try {
                schemaAt(coming, content.schema()).migrate();
                fill(zip, content, coming);
                schemaAt(coming, "latest").migrate();
                exchange(coming, former, new Restoring(content.takenAt(), by, now));
            } finally {
                drop(coming);
            }
            return new Restored(
                    content.takenAt(),
                    content.rows().size(),
                    content.rows().values().stream().mapToLong(Long::longValue).sum(),
                    former);
        } catch (ZipException e) {
            throw BackupFile.notABackup();
        } catch (SQLException e) {
            throw new IOException("the database did not take the backup", e);
        }
    }

    /** What is kept of a restore itself. */
    private record Restoring(Instant takenAt, String by, Instant at) {}

    private static BackupFile.Content content(ZipFile zip) throws IOException {
        return BackupFile.Content.parse(
                new String(read(zip, BackupFile.CONTENT).readAllBytes(), StandardCharsets.UTF_8));
    }

    private static InputStream read(ZipFile zip, String name) throws IOException {
        ZipEntry entry = zip.getEntry(name);
        if (entry == null) {
            throw BackupFile.notABackup();
        }
        return zip.getInputStream(entry);
    }

    private void refuseNewer(String schema) {
        boolean known =
                Arrays.stream(migrations.info().all())
                        .anyMatch(each -> schema.equals(String.valueOf(each.getVersion())));
        if (!known) {
            throw new UnusableBackupException(Phrase.of("restore.unknown-schema", schema));
        }
    }

    private Flyway schemaAt(String schema, String version) {
        return Flyway.configure()
                .configuration(migrations.getConfiguration())
                .schemas(schema)
                .defaultSchema(schema)
                .target(MigrationVersion.fromVersion(version))
                .load();
    }

    private void fill(ZipFile zip, BackupFile.Content content, String schema)
            throws SQLException, IOException {
        try (Connection connection = PatientConnection.open(database)) {
            connection.setAutoCommit(false);
            String usual = connection.getSchema();
            connection.setSchema(schema);
            try {
                fill(connection, zip, content, schema);
                connection.commit();
            } finally {
                connection.rollback();
                connection.setSchema(usual);
                connection.commit();
            }
        }
    }

    private static void fill(
            Connection connection, ZipFile zip, BackupFile.Content content, String schema)
            throws SQLException, IOException {
        List<String> tables = Tables.list(connection, schema);
        if (!content.rows().keySet().equals(Set.copyOf(tables))) {
            throw BackupFile.notABackup();
        }
        CopyManager copies = connection.unwrap(PGConnection.class).getCopyAPI();
        try (Statement statement = connection.createStatement()) {
            for (String table : tables) {
                // What guards rows against change would keep them from being put back.
                statement.execute("alter table " + Tables.quoted(table) + " disable trigger user");
            }
            for (String table : tables.reversed()) {
                // Some tables are born with rows.
                statement.execute("delete from " + Tables.quoted(table));
            }
            for (String table : tables) {
                try (InputStream rows = read(zip, BackupFile.entryOf(table))) {
                    long copied = copies.copyIn(copyIn(table), rows);
                    if (copied != content.rows().get(table)) {
                        throw BackupFile.notABackup();
                    }
                } catch (SQLException e) {
                    throw new UnusableBackupException(
                            Phrase.of("restore.bad-rows", table, String.valueOf(e.getMessage())));
                }
            }
            for (String table : tables) {
                for (String update : Tables.counterUpdates(connection, schema, table)) {
                    statement.execute(update);
                }
                statement.execute("alter table " + Tables.quoted(table) + " enable trigger user");
            }
        }
    }

    private static String copyIn(String table) {
        return "copy "
                + Tables.quoted(table)
                + " from stdin (format csv, header match, encoding 'UTF8')";
    }

    /** The one moment in which all changes: whoever writes has ended, and nobody else has begun. */
    private void exchange(String coming, String former, Restoring restoring) throws SQLException {
        try (Connection connection = PatientConnection.open(database);
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            String current = Tables.currentSchema(connection);
            statement.execute("set local lock_timeout = '" + LONGEST_WAIT + "'");
            for (String table : Tables.list(connection, current)) {
                statement.execute(
                        "lock table " + Tables.quoted(table) + " in access exclusive mode");
            }
            for (String older : formerSchemas(connection)) {
                statement.execute("drop schema " + Tables.quoted(older) + " cascade");
            }
            rename(statement, current, former);
            rename(statement, coming, current);
            note(connection, former, restoring);
            connection.commit();
        }
    }

    private static void note(Connection connection, String former, Restoring restoring)
            throws SQLException {
        try (PreparedStatement name =
                        connection.prepareStatement("select set_config('fusewright.by', ?, true)");
                PreparedStatement row =
                        connection.prepareStatement(
                                "insert into restored_backup (taken_at, restored_at, former_data)"
                                        + " values (?, ?, ?)")) {
            name.setString(1, restoring.by());
            name.execute();
            row.setTimestamp(1, Timestamp.from(restoring.takenAt()));
            row.setTimestamp(2, Timestamp.from(restoring.at()));
            row.setString(3, former);
            row.executeUpdate();
        }
    }

    private static List<String> formerSchemas(Connection connection) throws SQLException {
        return Tables.strings(
                connection,
                "select nspname from pg_namespace where starts_with(nspname::text, ?)",
                FORMER);
    }

    private static void rename(Statement statement, String from, String to) throws SQLException {
        statement.execute(
                "alter schema " + Tables.quoted(from) + " rename to " + Tables.quoted(to));
    }

    private void drop(String schema) throws SQLException {
        try (Connection connection = PatientConnection.open(database);
                Statement statement = connection.createStatement()) {
            statement.execute("drop schema if exists " + Tables.quoted(schema) + " cascade");
        }
    }
}
