package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.fusewright.core.kit.Kit;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.load.JobReader;
import org.fusewright.web.LimitedBody;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.web.HttpMediaTypeNotAcceptableException;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;

import java.io.IOException;
import java.util.Collections;
import java.util.List;
import java.util.Objects;

/** From a job document straight to its kit; nothing is kept. */
@RestController
@Tag(name = "Kits")
class KitApi {
    private static final String PAPER = "paper";
    private static final String LANGUAGE = "language";

    private final Kits kits;

    KitApi(Kits kits) {
        this.kits = kits;
    }

    @Operation(
            summary = "Plan a kit",
            description =
                    "Takes a job document and answers with its kit, kit list (PDF) or parts list"
                            + " (CSV), by the Accept header. A job that cannot be built has a kit"
                            + " too: its checks say so.",
            parameters = {
                @Parameter(
                        name = PAPER,
                        in = ParameterIn.QUERY,
                        description = "The paper of the kit list.",
                        schema =
                                @Schema(
                                        type = "string",
                                        allowableValues = {AskedPaper.USUAL_SHEET, "letter"},
                                        defaultValue = AskedPaper.USUAL_SHEET)),
                @Parameter(
                        name = LANGUAGE,
                        in = ParameterIn.QUERY,
                        description = AskedPaper.LANGUAGE_MEANING,
                        schema =
                                @Schema(
                                        type = "string",
                                        allowableValues = {AskedPaper.USUAL_LANGUAGE, "de"},
                                        defaultValue = AskedPaper.USUAL_LANGUAGE))
            },
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            required = true,
                            description = "The job; its schema is at /api/schema/job.",
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"))),
            responses =
                    @ApiResponse(
                            responseCode = "200",
                            description = "The kit.",
                            content = {
                                @Content(
                                        mediaType = MediaType.APPLICATION_JSON_VALUE,
                                        schema = @Schema(type = "object")),
                                @Content(mediaType = MediaType.APPLICATION_PDF_VALUE),
                                @Content(mediaType = "text/csv")
                            }))
    @PostMapping(
            path = "/api/kits",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = {
                MediaType.APPLICATION_JSON_VALUE,
                MediaType.APPLICATION_PDF_VALUE,
                "text/csv"
            })
    void plan(HttpServletRequest request, HttpServletResponse response)
            throws IOException, HttpMediaTypeNotAcceptableException {
        // Asked of the request itself: binding three parameters costs as much as reading the job.
        List<String> accept = Collections.list(request.getHeaders(HttpHeaders.ACCEPT));
        String paper =
                Objects.requireNonNullElse(request.getParameter(PAPER), AskedPaper.USUAL_SHEET);
        String language =
                Objects.requireNonNullElse(
                        request.getParameter(LANGUAGE), AskedPaper.USUAL_LANGUAGE);
        KitPapers form = KitPapers.preferred(MediaType.parseMediaTypes(accept));
        AskedPaper asked = AskedPaper.of(paper, language);
        Kit kit = kits.plan(JobReader.read(LimitedBody.read(request.getInputStream())));
        form.send(kit, asked, response);
    }
}
