package org.fusewright.backups.store;

import org.fusewright.backups.UnusableBackupException;
import org.fusewright.core.words.Phrase;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The form of a backup: a zip archive with one CSV file (RFC 4180, a header row, an empty field for
 * no value, quotes around an empty text) for each table, and a last entry that tells what there is.
 */
final class BackupFile {
    /** The last entry: a file without it was cut off. */
    static final String CONTENT = "content.txt";

    private static final String FORM = "fusewright backup 1";
    private static final int HEAD_LINES = 3;

    private BackupFile() {}

    static String entryOf(String table) {
        return table + ".csv";
    }

    /**
     * What a backup holds.
     *
     * @param schema the version of the schema that the tables had
     * @param rows how many, by table
     */
    record Content(String schema, Instant takenAt, Map<String, Long> rows) {
        Content {
            rows = Collections.unmodifiableMap(new LinkedHashMap<>(rows));
        }

        /** A line for the form, the schema and the time, then one for each table. */
        String print() {
            StringBuilder text = new StringBuilder();
            text.append(FORM).append('\n');
            text.append("schema ").append(schema).append('\n');
            text.append("taken ").append(takenAt).append('\n');
            rows.forEach(
                    (table, count) -> text.append(table).append(' ').append(count).append('\n'));
            return text.toString();
        }

        static Content parse(String text) {
            List<String> lines = text.lines().toList();
            if (lines.size() < HEAD_LINES || !lines.getFirst().equals(FORM)) {
                throw notABackup();
            }
            try {
                Map<String, Long> rows = new LinkedHashMap<>();
                for (String line : lines.subList(HEAD_LINES, lines.size())) {
                    rows.put(value(line, 0), Long.parseLong(value(line, 1)));
                }
                return new Content(
                        value(lines.get(1), 1), Instant.parse(value(lines.get(2), 1)), rows);
            } catch (NumberFormatException | DateTimeParseException e) {
                throw notABackup();
            }
        }

        private static String value(String line, int at) {
            String[] words = line.split(" ");
            if (words.length != 2) {
                throw notABackup();
            }
            return words[at];
        }
    }

    static UnusableBackupException notABackup() {
        return new UnusableBackupException(Phrase.of("restore.not-a-backup"));
    }
}
