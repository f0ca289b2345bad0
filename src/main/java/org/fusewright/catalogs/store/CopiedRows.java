package org.fusewright.catalogs.store;

import org.jspecify.annotations.Nullable;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyIn;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;

/**
 * Rows on their way into a table by PostgreSQL's COPY, in its text format. Values are written in
 * the order of the columns; each row is ended.
 */
final class CopiedRows {

    private static final int CHARS_AT_ONCE = 1 << 16;

    private final CopyIn copy;
    private final StringBuilder rows = new StringBuilder(CHARS_AT_ONCE + 1_000);
    private boolean atRowStart = true;

    private CopiedRows(CopyIn copy) {
        this.copy = copy;
    }

    /** Writes all the rows of one table, or none. */
    interface Writer {
        void write(CopiedRows rows) throws SQLException;
    }

    /** Copies rows in the transaction of the connection. */
    static void copy(Connection connection, String table, String columns, Writer writer)
            throws SQLException {
        CopyIn copy =
                connection
                        .unwrap(PGConnection.class)
                        .getCopyAPI()
                        .copyIn("copy " + table + " (" + columns + ") from stdin");
        try {
            CopiedRows rows = new CopiedRows(copy);
            writer.write(rows);
            rows.send();
            copy.endCopy();
        } finally {
            if (copy.isActive()) {
                copy.cancelCopy();
            }
        }
    }

    CopiedRows text(@Nullable String value) {
        separate();
        if (value == null) {
            rows.append("\\N");
        } else {
            for (int i = 0; i < value.length(); i++) {
                append(value.charAt(i));
            }
        }
        return this;
    }

    private void append(char c) {
        switch (c) {
            case '\\' -> rows.append("\\\\");
            case '\t' -> rows.append("\\t");
            case '\n' -> rows.append("\\n");
            case '\r' -> rows.append("\\r");
            default -> rows.append(c);
        }
    }

    CopiedRows whole(int value) {
        separate();
        rows.append(value);
        return this;
    }

    CopiedRows number(double value) {
        separate();
        rows.append(value);
        return this;
    }

    CopiedRows decimal(@Nullable BigDecimal value) {
        return text(value == null ? null : value.toPlainString());
    }

    private void separate() {
        if (!atRowStart) {
            rows.append('\t');
        }
        atRowStart = false;
    }

    void endRow() throws SQLException {
        rows.append('\n');
        atRowStart = true;
        if (rows.length() >= CHARS_AT_ONCE) {
            send();
        }
    }

    private void send() throws SQLException {
        byte[] bytes = rows.toString().getBytes(StandardCharsets.UTF_8);
        copy.writeToCopy(bytes, 0, bytes.length);
        rows.setLength(0);
    }
}
