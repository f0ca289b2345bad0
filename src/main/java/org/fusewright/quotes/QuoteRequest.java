package org.fusewright.quotes;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.jobs.load.Fields;
import org.fusewright.jobs.load.JsonTree;
import org.fusewright.jobs.load.TextForm;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a program asks for, as read from JSON.
 *
 * @param job the id of the job to quote; 0 where none is named
 * @param wishes what the quote shall offer, unread
 * @param problems found so far
 */
public record QuoteRequest(long job, JsonNode wishes, List<JobProblem> problems) {
    private static final String JOB = "job";

    public QuoteRequest {
        problems = List.copyOf(problems);
    }

    /**
     * For a quote that exists.
     *
     * @throws MalformedJobException when this is no JSON at all
     */
    public static QuoteRequest read(byte[] json) {
        JsonTree tree = JsonTree.parse(json);
        return new QuoteRequest(0, tree.root(), tree.problems());
    }

    /** For a new quote: with its {@code job}; as {@link #read}. */
    public static QuoteRequest readWithJob(byte[] json) {
        QuoteRequest request = read(json);
        if (!(request.wishes instanceof ObjectNode document)) {
            return request;
        }
        JsonNode id = document.path(JOB);
        document.remove(JOB);
        if (id.isIntegralNumber() && id.canConvertToLong()) {
            return new QuoteRequest(id.longValue(), document, request.problems);
        }
        List<JobProblem> problems = new ArrayList<>(request.problems);
        problems.add(JobProblem.of("/" + JOB, "wrong.not-a-kept-job"));
        return new QuoteRequest(0, document, problems);
    }

    /**
     * The {@code variant} that is accepted; empty where nothing is said.
     *
     * @throws MalformedJobException with all that is wrong with it
     */
    public static Optional<String> readVariant(byte[] json) {
        if (json.length == 0) {
            return Optional.empty();
        }
        JsonTree tree = JsonTree.parse(json);
        List<JobProblem> problems = new ArrayList<>(tree.problems());
        Optional<String> variant;
        try (Fields fields = Fields.of(tree.root(), "", problems)) {
            variant = fields.findText("variant", TextForm.ID);
        }
        if (!problems.isEmpty()) {
            throw new MalformedJobException(problems);
        }
        return variant;
    }
}
