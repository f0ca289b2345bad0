package org.fusewright.jobs;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import tools.jackson.databind.JsonNode;

import java.util.List;
import java.util.Optional;

/**
 * A thing that two people changed in different ways, starting from the same revision.
 *
 * @param kind what each of them did
 * @param pointer where it stands in the merged document: the field, the row that one of them
 *     removed, or the list that the removed row was in
 * @param subject what it is of, as for {@link JobChange}
 * @param field what of it clashes; empty for a whole row
 * @param mine the value that was not taken; empty for a whole row
 * @param theirs the value that stands, as before
 * @param value the value that was not taken, as the document has it; a row where the other one
 *     removed it
 */
public record JobClash(
        Kind kind,
        String pointer,
        List<Text> subject,
        Optional<Text> field,
        Optional<Text> mine,
        Optional<Text> theirs,
        JsonNode value) {
    /** What the two did. */
    public enum Kind {
        BOTH_CHANGED,
        I_REMOVED_IT,
        THEY_REMOVED_IT
    }

    public JobClash {
        subject = List.copyOf(subject);
    }

    static JobClash ofRow(Kind kind, List<Text> subject, JsonNode value) {
        return new JobClash(
                kind, "", subject, Optional.empty(), Optional.empty(), Optional.empty(), value);
    }

    JobClash at(String place) {
        return new JobClash(kind, place, subject, field, mine, theirs, value);
    }

    /** What it is about, such as "run of circuit pump". */
    public Text about() {
        Text of = Text.listed(subject);
        if (field.isEmpty()) {
            return of;
        }
        return subject.isEmpty() ? field.get() : Phrase.of("change.field-of", field.get(), of);
    }
}
