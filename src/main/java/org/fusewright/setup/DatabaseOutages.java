package org.fusewright.setup;

import org.fusewright.web.Outage;
import org.fusewright.web.OutageFinder;
import org.springframework.stereotype.Component;

import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Knows by the SQLSTATE when the database is gone or its disk full (PostgreSQL manual, appendix
 * "PostgreSQL Error Codes": class 08 connection exception, 57P01 to 57P05 operator intervention,
 * 53100 disk full, 53300 too many connections).
 */
@Component
class DatabaseOutages implements OutageFinder {
    private static final String DISK_FULL = "53100";

    static SQLException diskFull() {
        return new SQLException("disk full", DISK_FULL);
    }

    @Override
    public Optional<Outage> find(Throwable failure) {
        return Stream.iterate(failure, cause -> cause != null, Throwable::getCause)
                .filter(SQLException.class::isInstance)
                .map(SQLException.class::cast)
                .flatMap(said -> of(said).stream())
                .findFirst();
    }

    private static Optional<Outage> of(SQLException said) {
        String state = said.getSQLState();
        if (DISK_FULL.equals(state)) {
            return Optional.of(Outage.DISK_FULL);
        }
        // Without a state it is the pool that speaks, of a connection that is gone or never came.
        boolean away =
                state == null
                        || said instanceof SQLTransientConnectionException
                        || state.startsWith("08")
                        || state.startsWith("57P0")
                        || state.equals("53300");
        return away ? Optional.of(Outage.DATABASE_AWAY) : Optional.empty();
    }
}
