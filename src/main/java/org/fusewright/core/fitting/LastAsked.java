package org.fusewright.core.fitting;

import org.jspecify.annotations.Nullable;

import java.util.LinkedHashMap;
import java.util.Map;

/** The answers to what was asked for last. Several threads may ask at once. */
final class LastAsked<Q, A> {

    /** Each question with its answer takes some 2 KB. */
    private static final int MOST = 256;

    private final Map<Q, A> answers =
            new LinkedHashMap<>(16, 0.75f, true) {
                @Override
                protected boolean removeEldestEntry(Map.Entry<Q, A> eldest) {
                    return size() > MOST;
                }
            };

    synchronized @Nullable A find(Q asked) {
        return answers.get(asked);
    }

    synchronized void keep(Q asked, A answer) {
        answers.put(asked, answer);
    }
}
