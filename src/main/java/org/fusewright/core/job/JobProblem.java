package org.fusewright.core.job;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

/**
 * One thing that is wrong with a job.
 *
 * @param pointer where, as an RFC 6901 pointer into the job document
 * @param detail what is wrong and what is allowed
 */
public record JobProblem(String pointer, Text detail) {

    /** With a text of the bundle; see {@link Phrase}. */
    public static JobProblem of(String pointer, String key, Object... values) {
        return new JobProblem(pointer, Phrase.of(key, values));
    }
}
