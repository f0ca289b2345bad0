package org.fusewright.setup;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Shows a {@link StartProblem} as one sentence and its remedy, without a stack trace. */
final class StartProblemReport extends AbstractFailureAnalyzer<StartProblem> {
    @Override
    protected FailureAnalysis analyze(Throwable rootFailure, StartProblem problem) {
        return new FailureAnalysis(problem.getMessage(), problem.remedy(), problem);
    }
}
