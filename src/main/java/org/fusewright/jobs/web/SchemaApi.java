package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.springframework.core.io.ClassPathResource;
import org.springframework.core.io.Resource;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/** The form of a job document, for other programs. */
@RestController
@Tag(name = "Jobs")
class SchemaApi {
    private static final String SCHEMA_JSON = "application/schema+json";

    @Operation(summary = "Get the schema of a job document (JSON Schema 2020-12)")
    @GetMapping(
            path = "/api/schema/job",
            produces = {SCHEMA_JSON, MediaType.APPLICATION_JSON_VALUE})
    ResponseEntity<Resource> job() {
        return ResponseEntity.ok(new ClassPathResource("schema/job.schema.json"));
    }
}
