package org.fusewright.counts.load;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.job.MalformedJobException;

import tools.jackson.databind.JsonNode;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A kit from elsewhere and the job that it is for: a kept one or a whole document.
 *
 * @param job a job document; empty when a kept job is named
 * @param jobId of the kept job
 */
public record CheckRequest(
        Optional<JsonNode> job,
        OptionalInt jobId,
        OptionalInt revision,
        Map<PartNumber, BigDecimal> found) {

    /**
     * @throws MalformedJobException with all that is wrong
     */
    public static CheckRequest read(byte[] json) {
        JsonFields fields = JsonFields.of(json);
        Optional<JsonNode> job =
                fields.has("job") ? Optional.of(fields.tree("job")) : Optional.empty();
        OptionalInt jobId = fields.findWhole("jobId", 1, Integer.MAX_VALUE);
        OptionalInt revision = fields.findWhole("revision", 1, Integer.MAX_VALUE);
        if (fields.has("job") == fields.has("jobId")) {
            fields.report("jobId", "wrong.job-or-id");
        }
        if (fields.has("revision") && !fields.has("jobId")) {
            fields.report("revision", "wrong.revision-without-job");
        }
        String csv = fields.text("csv");
        if (!csv.isEmpty()) {
            try {
                Map<PartNumber, BigDecimal> found = KitFile.read(csv, "/csv");
                return fields.finish(() -> new CheckRequest(job, jobId, revision, found));
            } catch (MalformedJobException e) {
                e.problems()
                        .forEach(
                                problem ->
                                        fields.report(
                                                problem.pointer().substring(1), problem.detail()));
            }
        } else if (fields.tree("csv").isString()) {
            fields.report("csv", "kit-file.empty");
        }
        return fields.finish(
                () -> {
                    throw new IllegalStateException("without a kit there is a problem");
                });
    }
}
