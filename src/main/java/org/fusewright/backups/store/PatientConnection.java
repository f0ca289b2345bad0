package org.fusewright.backups.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;

import javax.sql.DataSource;

/** A connection for statements over all rows, which take longer than any other. */
final class PatientConnection {
    private static final Duration LONGEST_STATEMENT = Duration.ofMinutes(15);

    private PatientConnection() {}

    /** The pool takes the patience back with the connection. */
    static Connection open(DataSource database) throws SQLException {
        Connection connection = database.getConnection();
        try {
            connection.setNetworkTimeout(Runnable::run, (int) LONGEST_STATEMENT.toMillis());
            return connection;
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
    }
}
