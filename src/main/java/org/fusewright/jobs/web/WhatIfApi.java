package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;

import org.fusewright.jobs.JobReading;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.WhatIfAnswers;
import org.fusewright.jobs.WhatIfQuestion;
import org.fusewright.jobs.load.JobReader;
import org.fusewright.jobs.load.QuestionReader;
import org.fusewright.web.LimitedBody;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;

import java.io.IOException;
import java.io.InputStream;

/** What becomes of a design when something differs from what it was made for; nothing is kept. */
@RestController
class WhatIfApi {
    private static final String ANSWER =
            "Devices and wires stay as they are chosen for the job; only the verdicts are worked"
                    + " out anew, for this circuit and its feed. vary is ambientC (-60 to 200; the"
                    + " block gets as much hotter), runM (above 0 and at most 100), gauge or kind;"
                    + " values are up to 50 of them, or the usual ones when left out. Each point"
                    + " tells its verdict, whether any check is worse than in the design, and the"
                    + " nearest check: the worst of those, or else the one with least left before"
                    + " its limit. Numbers come with unchangedTo, up to which no verdict is worse"
                    + " than in the design, and standsTo, up to which nothing fails that does not"
                    + " fail in the design.";

    private final Jobs jobs;
    private final WhatIfAnswers answers;

    WhatIfApi(Jobs jobs, WhatIfAnswers answers) {
        this.jobs = jobs;
        this.answers = answers;
    }

    @Operation(
            tags = "Kits",
            summary =
                    "Ask what becomes of a circuit that is hotter, longer, thinner or of another"
                            + " kind",
            description = ANSWER,
            requestBody =
                    @RequestBody(
                            required = true,
                            description =
                                    "The job (its schema is at /api/schema/job), the circuit's id,"
                                            + " vary, and perhaps values.",
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"),
                                            examples =
                                                    @ExampleObject(
                                                            """
                                                            {"job": {}, "circuit": "pump",
                                                             "vary": "runM", "values": [1, 2.5]}
                                                            """))))
    @PostMapping(
            path = "/api/kits/what-if",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> ask(InputStream body) throws IOException {
        return answer(QuestionReader.read(LimitedBody.read(body)));
    }

    @Operation(
            tags = "Jobs",
            summary = "Ask what becomes of a circuit of a kept job",
            description = ANSWER,
            requestBody =
                    @RequestBody(
                            required = true,
                            description = "The circuit's id, vary, and perhaps values.",
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"),
                                            examples =
                                                    @ExampleObject(
                                                            """
                                                            {"circuit": "pump", "vary": "kind"}
                                                            """))))
    @PostMapping(
            path = "/api/jobs/{id}/what-if",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> ask(@PathVariable long id, InputStream body) throws IOException {
        JobReading job = JobReader.read(jobs.get(id).document());
        return answer(QuestionReader.read(LimitedBody.read(body), job));
    }

    private ResponseEntity<byte[]> answer(WhatIfQuestion question) {
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_JSON)
                .body(WhatIfDocument.print(answers.answer(question)));
    }
}
