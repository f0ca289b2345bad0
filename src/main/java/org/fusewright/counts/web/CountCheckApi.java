package org.fusewright.counts.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.fusewright.counts.FileCheck;
import org.fusewright.counts.KitFileChecks;
import org.fusewright.counts.load.CheckRequest;
import org.fusewright.counts.load.KitFile;
import org.fusewright.web.LimitedBody;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.server.ResponseStatusException;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.OptionalInt;

/** A kit from elsewhere counted in one call; nothing is kept. */
@RestController
@Tag(name = "Counts")
class CountCheckApi {
    private final KitFileChecks checks;

    CountCheckApi(KitFileChecks checks) {
        this.checks = checks;
    }

    @Operation(
            summary = "Check a kit from elsewhere",
            description =
                    "Takes a kit as CSV with the columns part and quantity (pieces, metres of wire;"
                        + " header row first, other columns are passed over) and answers with its"
                        + " differences to a job's parts list. Send JSON with csv and either jobId"
                        + " (and revision) or a whole job document as job; or send text/csv with"
                        + " jobId (and revision) in the query.",
            requestBody =
                    @RequestBody(
                            required = true,
                            content = {
                                @Content(
                                        mediaType = MediaType.APPLICATION_JSON_VALUE,
                                        schema = @Schema(type = "object"),
                                        examples =
                                                @ExampleObject(
                                                        "{\"jobId\": 1, \"csv\": \"part,quantity\\n"
                                                                + "WDB-4,1\\n"
                                                                + "\"}")),
                                @Content(
                                        mediaType = "text/csv",
                                        schema = @Schema(type = "string"),
                                        examples = @ExampleObject("part,quantity\nWDB-4,1\n"))
                            }))
    @PostMapping(
            path = "/api/counts/check",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    CountDocument.Check check(InputStream body) throws IOException {
        CheckRequest request = CheckRequest.read(LimitedBody.read(body));
        FileCheck check =
                request.job().isPresent()
                        ? checks.check(request.job().get(), request.found())
                        : checks.check(
                                request.jobId().getAsInt(), request.revision(), request.found());
        return CountDocument.Check.of(check);
    }

    @PostMapping(
            path = "/api/counts/check",
            consumes = "text/csv",
            produces = MediaType.APPLICATION_JSON_VALUE)
    CountDocument.Check checkFile(
            @RequestParam long jobId,
            @RequestParam(required = false) @Nullable Integer revision,
            InputStream body)
            throws IOException {
        return CountDocument.Check.of(
                checks.check(
                        jobId,
                        revision == null ? OptionalInt.empty() : OptionalInt.of(revision),
                        KitFile.read(decode(LimitedBody.read(body)), "")));
    }

    private static String decode(byte[] bytes) {
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
        } catch (CharacterCodingException e) {
            throw new ResponseStatusException(
                    HttpStatus.BAD_REQUEST, "the file must be text in UTF-8");
        }
    }
}
