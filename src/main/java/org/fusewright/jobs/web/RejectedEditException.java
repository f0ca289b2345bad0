package org.fusewright.jobs.web;

import org.fusewright.core.job.JobProblem;
import org.springframework.http.HttpStatus;

import tools.jackson.databind.JsonNode;

import java.util.List;

/** A change that cannot be kept as it is: what the job would say, and what is wrong with that. */
final class RejectedEditException extends RuntimeException {
    private final transient JsonNode document;
    private final transient List<JobProblem> problems;
    private final HttpStatus status;

    RejectedEditException(JsonNode document, List<JobProblem> problems, HttpStatus status) {
        super(problems.toString());
        this.document = document;
        this.problems = List.copyOf(problems);
        this.status = status;
    }

    JsonNode document() {
        return document;
    }

    List<JobProblem> problems() {
        return problems;
    }

    HttpStatus status() {
        return status;
    }
}
