package org.fusewright.backups.store;

import org.postgresql.PGConnection;
import org.postgresql.copy.CopyManager;
import org.springframework.stereotype.Repository;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

import javax.sql.DataSource;

/** Copies all tables out, of one moment. */
@Repository
public class BackupWriter {
    private final DataSource database;

    BackupWriter(DataSource database) {
        this.database = database;
    }

    public void write(OutputStream file, Instant now) throws IOException {
        try (Connection connection = PatientConnection.open(database)) {
            connection.setAutoCommit(false);
            connection.setReadOnly(true);
            // All tables as they are when the first is read.
            connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
            write(connection, file, now);
            connection.commit();
        } catch (SQLException e) {
            throw new IOException("the database did not give its rows", e);
        }
    }

    private static void write(Connection connection, OutputStream file, Instant now)
            throws SQLException, IOException {
        CopyManager copies = connection.unwrap(PGConnection.class).getCopyAPI();
        Map<String, Long> rows = new LinkedHashMap<>();
        try (ZipOutputStream zip = new ZipOutputStream(file, StandardCharsets.UTF_8)) {
            for (String table : Tables.list(connection, Tables.currentSchema(connection))) {
                zip.putNextEntry(new ZipEntry(BackupFile.entryOf(table)));
                long copied =
                        copies.copyOut(
                                "copy "
                                        + Tables.quoted(table)
                                        + " to stdout (format csv, header, encoding 'UTF8')",
                                zip);
                rows.put(table, copied);
                zip.closeEntry();
            }
            zip.putNextEntry(new ZipEntry(BackupFile.CONTENT));
            BackupFile.Content content =
                    new BackupFile.Content(Tables.schemaVersion(connection), now, rows);
            zip.write(content.print().getBytes(StandardCharsets.UTF_8));
            zip.closeEntry();
        }
    }
}
