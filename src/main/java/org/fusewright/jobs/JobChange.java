package org.fusewright.jobs;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.util.List;
import java.util.Optional;

/**
 * One thing that differs between two revisions of a job, in shop language.
 *
 * @param kind whether a field changed, or a row came or went
 * @param subject what it is of, such as "circuit pump", and within that "load Pump"; empty for the
 *     whole job
 * @param field what changed of it; empty for a whole row
 * @param before its value with its unit; empty for a whole row
 * @param after as before
 */
public record JobChange(
        Kind kind,
        List<Text> subject,
        Optional<Text> field,
        Optional<Text> before,
        Optional<Text> after) {
    /** What happened. */
    public enum Kind {
        CHANGED,
        ADDED,
        REMOVED
    }

    public JobChange {
        subject = List.copyOf(subject);
    }

    static JobChange of(List<Text> subject, Text field, Text before, Text after) {
        return new JobChange(
                Kind.CHANGED, subject, Optional.of(field), Optional.of(before), Optional.of(after));
    }

    static JobChange row(Kind kind, List<Text> subject) {
        return new JobChange(kind, subject, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** In words: "circuit pump: run 1.1 m → 1.3 m". */
    public Text says() {
        Text of = Text.listed(subject);
        return switch (kind) {
            case ADDED -> Phrase.of("change.added", of);
            case REMOVED -> Phrase.of("change.removed", of);
            case CHANGED -> {
                Text change =
                        Phrase.of(
                                "change.changed",
                                field.orElseThrow(),
                                before.orElseThrow(),
                                after.orElseThrow());
                yield subject.isEmpty() ? change : Phrase.of("change.of", of, change);
            }
        };
    }
}
