package org.fusewright.core.job;

import java.util.List;

/** A job that cannot be worked on, with all that is wrong with it. */
public final class MalformedJobException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient List<JobProblem> problems;

    public MalformedJobException(List<JobProblem> problems) {
        super(problems.size() + " problems in the job");
        this.problems = List.copyOf(problems);
    }

    public List<JobProblem> problems() {
        return problems;
    }
}
