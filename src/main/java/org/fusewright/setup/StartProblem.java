package org.fusewright.setup;

import org.jspecify.annotations.Nullable;

/** The service cannot start, for a reason that the person who started it can do something about. */
final class StartProblem extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final String remedy;

    StartProblem(String problem, String remedy, @Nullable Throwable cause) {
        super(problem, cause);
        this.remedy = remedy;
    }

    String remedy() {
        return remedy;
    }
}
