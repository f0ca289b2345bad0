package org.fusewright.core.check;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

/**
 * What a check speaks of.
 *
 * @param id the id of the circuit, feed or block; empty for the whole job
 * @param text the subject in words, unique for a code within one kit
 */
public record Subject(Scope scope, String id, Text text) {

    private static final Subject JOB = new Subject(Scope.JOB, "", Phrase.of("subject.job"));

    /** The kind of thing that a subject is. */
    public enum Scope {
        JOB,
        FEED,
        CIRCUIT,
        BLOCK
    }

    public static Subject job() {
        return JOB;
    }

    public static Subject feed(String id) {
        return new Subject(Scope.FEED, id, Phrase.of("subject.feed", id));
    }

    public static Subject circuit(String id) {
        return new Subject(Scope.CIRCUIT, id, Phrase.of("subject.circuit", id));
    }

    public static Subject block(String id) {
        return new Subject(Scope.BLOCK, id, Phrase.of("subject.block", id));
    }

    /** A detail of this subject: "circuit pump, load Pump". */
    public Subject detail(Text detail) {
        return new Subject(scope, id, Phrase.of("subject.detail", text, detail));
    }

    /** A detail that has a name: "circuit pump, pump/relay". */
    public Subject detail(String name) {
        return detail(Text.verbatim(name));
    }
}
