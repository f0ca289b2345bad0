package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.fusewright.core.kit.Kit;
import org.fusewright.jobs.JobPage;
import org.fusewright.jobs.JobReading;
import org.fusewright.jobs.JobSummary;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.StoredJob;
import org.fusewright.jobs.load.JobReader;
import org.fusewright.web.Asked;
import org.fusewright.web.ByParameter;
import org.fusewright.web.ChangedBy;
import org.fusewright.web.LimitedBody;
import org.fusewright.web.Versions;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.HttpMediaTypeNotAcceptableException;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import tools.jackson.databind.JsonNode;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** The jobs that are kept, as documents. */
@RestController
@RequestMapping("/api/jobs")
@Tag(name = "Jobs")
class JobApi {

    private final Jobs jobs;
    private final Kits kits;

    JobApi(Jobs jobs, Kits kits) {
        this.jobs = jobs;
        this.kits = kits;
    }

    /** Some jobs, and what to ask after for the rest. */
    record Entries(List<JobSummary> jobs, @Nullable Long next) {}

    @Operation(
            summary = "List jobs, newest first",
            description = "For the rest, give next as after.")
    @GetMapping(produces = MediaType.APPLICATION_JSON_VALUE)
    Entries list(
            @RequestParam(defaultValue = "") String q,
            @RequestParam(required = false) @Nullable Long after,
            @RequestParam(defaultValue = "50") int limit) {
        int length = Asked.limit(limit);
        JobPage page =
                jobs.list(q, after == null ? OptionalLong.empty() : OptionalLong.of(after), length);
        return new Entries(page.jobs(), page.next().isPresent() ? page.next().getAsLong() : null);
    }

    @Operation(
            summary = "Keep a new job",
            requestBody =
                    @RequestBody(
                            required = true,
                            description = "The job; its schema is at /api/schema/job.",
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"))))
    @PostMapping(
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<JsonNode> create(@ByParameter ChangedBy by, InputStream body)
            throws IOException {
        StoredJob job = jobs.create(planned(body), by.name());
        return ResponseEntity.created(URI.create("/api/jobs/" + job.id()))
                .eTag(Versions.print(job.version()))
                .body(job.document());
    }

    @Operation(summary = "Get a job's document")
    @GetMapping(path = "/{id}", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<JsonNode> get(@PathVariable long id) {
        return answer(jobs.get(id));
    }

    @Operation(
            summary = "Change a job",
            description = "If-Match must name the version that the change starts from.",
            requestBody =
                    @RequestBody(
                            required = true,
                            description = "The whole job; its schema is at /api/schema/job.",
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"))))
    @PutMapping(
            path = "/{id}",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<JsonNode> change(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @ByParameter ChangedBy by,
            InputStream body)
            throws IOException {
        long version = Versions.required(ifMatch, jobs.get(id).version(), JobErrors::stale);
        return answer(jobs.change(id, version, planned(body), by.name()));
    }

    @Operation(
            summary = "Delete a job with its revisions",
            description = "If-Match must name its version.")
    @DeleteMapping("/{id}")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void delete(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false)
                    @Nullable String ifMatch) {
        jobs.delete(id, Versions.required(ifMatch, jobs.get(id).version(), JobErrors::stale));
    }

    @Operation(
            summary = "Plan a job's kit",
            description = "The kit, its list (PDF) or its parts (CSV), by the Accept header.")
    @GetMapping(
            path = "/{id}/kit",
            produces = {
                MediaType.APPLICATION_JSON_VALUE,
                MediaType.APPLICATION_PDF_VALUE,
                "text/csv"
            })
    ResponseEntity<byte[]> kit(
            @PathVariable long id,
            @RequestParam(defaultValue = AskedPaper.USUAL_SHEET) String paper,
            @Parameter(description = AskedPaper.LANGUAGE_MEANING)
                    @RequestParam(defaultValue = AskedPaper.USUAL_LANGUAGE)
                    String language,
            @RequestHeader HttpHeaders headers)
            throws HttpMediaTypeNotAcceptableException {
        KitPapers form = KitPapers.preferred(headers.getAccept());
        AskedPaper asked = AskedPaper.of(paper, language);
        StoredJob job = jobs.get(id);
        Kit kit = kits.plan(JobReader.read(job.document()));
        return form.answer(kit, OptionalInt.of(job.revision()), asked);
    }

    /** A job to keep: one that a kit can be planned for, buildable or not. */
    private JobReading planned(InputStream body) throws IOException {
        JobReading reading = JobReader.read(LimitedBody.read(body));
        kits.plan(reading);
        return reading;
    }

    private static ResponseEntity<JsonNode> answer(StoredJob job) {
        return ResponseEntity.ok().eTag(Versions.print(job.version())).body(job.document());
    }
}
