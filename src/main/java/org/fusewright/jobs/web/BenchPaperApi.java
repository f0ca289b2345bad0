package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;

import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.StoredJob;
import org.fusewright.jobs.load.JobReader;
import org.fusewright.web.LimitedBody;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import java.io.IOException;
import java.io.InputStream;
import java.util.OptionalInt;

/** The papers of the bench, each by its name. */
@RestController
class BenchPaperApi {
    private static final String PAPERS =
            "name is kit-list, assembly-sheet, lid-legend, cut-list, bag-label or part-labels;"
                    + " paper is a4 or letter, language is en or de.";

    private final Jobs jobs;
    private final Kits kits;

    BenchPaperApi(Jobs jobs, Kits kits) {
        this.jobs = jobs;
        this.kits = kits;
    }

    @Operation(
            tags = "Kits",
            summary = "Print a paper of a kit (PDF)",
            description = PAPERS + " Nothing is kept, so the paper names no revision.",
            requestBody =
                    @RequestBody(
                            required = true,
                            description = "The job; its schema is at /api/schema/job.",
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"))))
    @PostMapping(
            path = "/api/kits/papers/{name}",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_PDF_VALUE)
    ResponseEntity<byte[]> print(
            @PathVariable String name,
            @RequestParam(defaultValue = AskedPaper.USUAL_SHEET) String paper,
            @Parameter(description = AskedPaper.LANGUAGE_MEANING)
                    @RequestParam(defaultValue = AskedPaper.USUAL_LANGUAGE)
                    String language,
            InputStream body)
            throws IOException {
        BenchPaperAnswer answer = BenchPaperAnswer.of(name, AskedPaper.of(paper, language));
        return answer.with(kits.plan(JobReader.read(LimitedBody.read(body))), OptionalInt.empty());
    }

    @Operation(tags = "Jobs", summary = "Print a paper of a job's kit (PDF)", description = PAPERS)
    @GetMapping(path = "/api/jobs/{id}/papers/{name}", produces = MediaType.APPLICATION_PDF_VALUE)
    ResponseEntity<byte[]> print(
            @PathVariable long id,
            @PathVariable String name,
            @RequestParam(defaultValue = AskedPaper.USUAL_SHEET) String paper,
            @Parameter(description = AskedPaper.LANGUAGE_MEANING)
                    @RequestParam(defaultValue = AskedPaper.USUAL_LANGUAGE)
                    String language) {
        BenchPaperAnswer answer = BenchPaperAnswer.of(name, AskedPaper.of(paper, language));
        StoredJob job = jobs.get(id);
        return answer.with(
                kits.plan(JobReader.read(job.document())), OptionalInt.of(job.revision()));
    }
}
