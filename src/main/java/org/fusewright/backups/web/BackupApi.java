package org.fusewright.backups.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.fusewright.backups.Backups;
import org.fusewright.backups.Restored;
import org.fusewright.backups.UnusableBackupException;
import org.fusewright.web.ByParameter;
import org.fusewright.web.ChangedBy;
import org.fusewright.web.Problems;
import org.fusewright.web.Words;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;

import java.io.IOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;

/** All that is kept, as one file, and back again. */
@RestController
@Tag(name = "Backup")
class BackupApi {
    private static final String ZIP = "application/zip";
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmm").withZone(ZoneOffset.UTC);

    private final Backups backups;

    BackupApi(Backups backups) {
        this.backups = backups;
    }

    @Operation(
            summary = "Back everything up",
            description =
                    "All that the service keeps, of one moment, as a zip archive with a CSV file"
                            + " for each table. Work goes on meanwhile.",
            responses = @ApiResponse(responseCode = "200", content = @Content(mediaType = ZIP)))
    @GetMapping(path = "/api/backup", produces = ZIP)
    void backUp(HttpServletResponse response) throws IOException {
        String name = "fusewright-" + STAMP.format(Instant.now()) + ".zip";
        response.setContentType(ZIP);
        response.setHeader(
                HttpHeaders.CONTENT_DISPOSITION,
                ContentDisposition.attachment().filename(name).build().toString());
        backups.write(response.getOutputStream());
    }

    @Operation(
            summary = "Restore a backup",
            description =
                    "Puts a backup in place of everything that is kept, all of it or nothing. What"
                        + " was there before stays in the schema that the answer names, until the"
                        + " next restore. The trail of changes is then that of the backup, and says"
                        + " who restored it.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            required = true,
                            content =
                                    @Content(
                                            mediaType = ZIP,
                                            schema = @Schema(type = "string", format = "binary"))))
    @PostMapping(path = "/api/restore", consumes = ZIP)
    Restored restore(@ByParameter ChangedBy by, HttpServletRequest request) throws IOException {
        try {
            return backups.restore(request.getInputStream(), by.name());
        } catch (UnusableBackupException e) {
            throw Problems.exception(
                    Problems.of(HttpStatus.UNPROCESSABLE_CONTENT, Words.say(e.reason())));
        }
    }
}
