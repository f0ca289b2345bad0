package org.fusewright.web;

import org.fusewright.core.job.JobProblem;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponseException;

import java.util.List;

/** Makes problem details (RFC 9457) in the form that this service gives them. */
public final class Problems {
    private static final String ERRORS = "errors";

    private Problems() {}

    public static ProblemDetail of(HttpStatusCode status, String detail) {
        return ProblemDetail.forStatusAndDetail(status, detail);
    }

    /** With each error named by its pointer into the document that was sent. */
    public static ProblemDetail of(HttpStatusCode status, String detail, List<JobProblem> errors) {
        ProblemDetail problem = of(status, detail);
        problem.setProperty(
                ERRORS,
                errors.stream()
                        .map(each -> new Fault(each.pointer(), each.detail().english()))
                        .toList());
        return problem;
    }

    /** One error as the document names it: documents speak one language. */
    private record Fault(String pointer, String detail) {}

    /** The problem as an exception, answered wherever it is thrown. */
    public static ErrorResponseException exception(ProblemDetail problem) {
        return new ErrorResponseException(
                HttpStatusCode.valueOf(problem.getStatus()), problem, null);
    }
}
