package org.fusewright.changes.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.fusewright.changes.Change;
import org.fusewright.changes.ChangeHead;
import org.fusewright.changes.ChangePage;
import org.fusewright.changes.Changes;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.server.ResponseStatusException;

import tools.jackson.databind.JsonNode;

import java.time.Instant;
import java.util.List;

/** The trail of changes, to be read. */
@RestController
@RequestMapping("/api/changes")
@Tag(name = "Changes")
class ChangeApi {
    private final Changes changes;

    ChangeApi(Changes changes) {
        this.changes = changes;
    }

    /**
     * One change of one row.
     *
     * @param before the columns that differ, or the whole row when it was removed; null when added
     * @param after likewise; null when removed
     */
    record Entry(
            long id,
            Instant at,
            String by,
            String what,
            String record,
            String table,
            String row,
            String action,
            @Schema(type = "object") @Nullable JsonNode before,
            @Schema(type = "object") @Nullable JsonNode after) {
        static Entry of(Change change) {
            ChangeHead head = change.head();
            return new Entry(
                    head.id(),
                    head.at(),
                    head.by(),
                    head.kind().code(),
                    head.record(),
                    head.table(),
                    head.row(),
                    head.action().code(),
                    change.before().orElse(null),
                    change.after().orElse(null));
        }
    }

    /** Some entries, and what to ask after for the rest. */
    record Entries(List<Entry> changes, @Nullable Long next) {}

    @Operation(
            summary = "List changes, newest first",
            description =
                    "Every change of everything that is kept: who, when, what, before and after. Of"
                        + " a changed row only the columns that differ; files by length and"
                        + " SHA-256. Nothing changes or removes an entry. For the rest, give next"
                        + " as after.")
    @GetMapping(produces = MediaType.APPLICATION_JSON_VALUE)
    Entries list(
            @Parameter(
                            description = "changes of one kind of record",
                            schema =
                                    @Schema(
                                            allowableValues = {
                                                "job", "quote", "order", "count", "part",
                                                "supplier", "labour", "mark-up", "shipping", "tax",
                                                "catalog", "restore", "person"
                                            }))
                    @RequestParam(defaultValue = "")
                    String what,
            @Parameter(
                            description =
                                    "changes of this one: an id, or a part's number; only with"
                                            + " what")
                    @RequestParam(defaultValue = "")
                    String record,
            @Parameter(description = "changes by this person, by the whole name")
                    @RequestParam(defaultValue = "")
                    String who,
            @RequestParam(required = false) @Nullable Long after,
            @RequestParam(defaultValue = "50") int limit) {
        ChangePage<Change> page = changes.list(ChangeAsked.query(what, record, who, after, limit));
        return new Entries(
                page.changes().stream().map(Entry::of).toList(),
                page.next().isPresent() ? page.next().getAsLong() : null);
    }

    @Operation(summary = "Get a change")
    @GetMapping(path = "/{id}", produces = MediaType.APPLICATION_JSON_VALUE)
    Entry get(@PathVariable long id) {
        return Entry.of(
                changes.find(id)
                        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND)));
    }
}
