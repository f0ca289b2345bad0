package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;

import org.fusewright.jobs.JobReading;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.StoredJob;
import org.fusewright.jobs.load.JobReader;
import org.fusewright.web.ByParameter;
import org.fusewright.web.ChangedBy;
import org.fusewright.web.LimitedBody;
import org.fusewright.web.Versions;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RestController;

import tools.jackson.databind.JsonNode;

import java.io.IOException;
import java.io.InputStream;

/** The arrangements of a job's blocks to pick from, and keeping the places of one. */
@RestController
class ArrangementApi {
    private static final String ANSWER =
            "Up to five that differ: the cheapest, the fewest blocks, most spare positions, the"
                    + " least current for a position of any block (both in no more blocks than the"
                    + " cheapest), and all blocks of one type. To pick one, name it in"
                    + " choices.arrangement of the job.";

    private final Jobs jobs;
    private final Kits kits;

    ArrangementApi(Jobs jobs, Kits kits) {
        this.jobs = jobs;
        this.kits = kits;
    }

    @Operation(
            tags = "Kits",
            summary = "List arrangements of blocks to pick from",
            description = ANSWER,
            requestBody =
                    @RequestBody(
                            required = true,
                            description = "The job; its schema is at /api/schema/job.",
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"))))
    @PostMapping(
            path = "/api/kits/arrangements",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> list(InputStream body) throws IOException {
        return answer(JobReader.read(LimitedBody.read(body)));
    }

    @Operation(
            tags = "Jobs",
            summary = "List arrangements of a kept job's blocks",
            description = ANSWER)
    @GetMapping(path = "/api/jobs/{id}/arrangements", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> list(@PathVariable long id) {
        return answer(JobReader.read(jobs.get(id).document()));
    }

    @Operation(
            tags = "Jobs",
            summary = "Keep the places of a job's kit",
            description =
                    "Writes where each device and relay sits into the job, to be kept as long as"
                            + " that makes the blocks no dearer and no more. If-Match must name the"
                            + " version that the change starts from.")
    @PostMapping(path = "/api/jobs/{id}/wired", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<JsonNode> keepPlaces(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @ByParameter ChangedBy by) {
        StoredJob job = jobs.get(id);
        long version = Versions.required(ifMatch, job.version(), JobErrors::stale);
        JsonNode wired =
                WiredPlaces.write(job.document(), kits.plan(JobReader.read(job.document())));
        StoredJob kept = jobs.change(id, version, JobReader.read(wired), by.name());
        return ResponseEntity.ok().eTag(Versions.print(kept.version())).body(kept.document());
    }

    private ResponseEntity<byte[]> answer(JobReading reading) {
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_JSON)
                .body(ArrangementsDocument.print(kits.listArrangements(reading)));
    }
}
