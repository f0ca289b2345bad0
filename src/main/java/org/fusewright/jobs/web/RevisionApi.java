package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.fusewright.core.words.Text;
import org.fusewright.jobs.JobChange;
import org.fusewright.jobs.JobRevision;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.KitDifference;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.RevisionComparison;
import org.fusewright.jobs.StoredJob;
import org.fusewright.jobs.load.JobReader;
import org.fusewright.web.ByParameter;
import org.fusewright.web.ChangedBy;
import org.fusewright.web.Versions;
import org.joda.money.Money;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.HttpMediaTypeNotAcceptableException;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import tools.jackson.databind.JsonNode;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/** The revisions of a kept job, as documents. */
@RestController
@RequestMapping("/api/jobs/{id}")
@Tag(name = "Jobs")
class RevisionApi {
    private final Jobs jobs;
    private final Kits kits;
    private final Revisions revisions;

    RevisionApi(Jobs jobs, Kits kits, Revisions revisions) {
        this.jobs = jobs;
        this.kits = kits;
        this.revisions = revisions;
    }

    /** What a revision changed. */
    record Change(
            String kind, String subject, String field, String before, String after, String says) {
        static Change of(JobChange change) {
            return new Change(
                    change.kind().name().toLowerCase(Locale.ROOT),
                    Text.listed(change.subject()).english(),
                    english(change.field()),
                    english(change.before()),
                    english(change.after()),
                    change.says().english());
        }

        private static String english(Optional<Text> text) {
            return text.map(Text::english).orElse("");
        }

        static List<Change> of(List<JobChange> changes) {
            return changes.stream().map(Change::of).toList();
        }
    }

    /** A revision with what it changed of the one before. */
    record Entry(
            int revision,
            Instant changedAt,
            String changedBy,
            List<Change> changes,
            JsonNode document) {
        static Entry of(Revisions.Entry entry) {
            JobRevision revision = entry.revision();
            return new Entry(
                    revision.revision(),
                    revision.changedAt(),
                    revision.changedBy(),
                    Change.of(entry.changes()),
                    revision.document());
        }
    }

    /**
     * The sums of two parts lists, null for those who may not see prices; the difference is left
     * out between different currencies.
     */
    record Totals(
            @Nullable BigDecimal before,
            String currencyBefore,
            @Nullable BigDecimal after,
            String currencyAfter,
            @Nullable BigDecimal difference) {}

    /** A part of which another quantity is needed, or at another price. */
    record Part(
            String part,
            String title,
            String group,
            String unit,
            BigDecimal before,
            BigDecimal after,
            @Nullable BigDecimal extendedBefore,
            @Nullable BigDecimal extendedAfter) {}

    /** A check with another verdict; null where it was not made. */
    record Verdict(
            String code,
            String subject,
            @Nullable String before,
            @Nullable String after,
            String says) {}

    /** Two revisions beside each other; totals are null where one of them has no kit. */
    record Comparison(
            int from,
            int to,
            List<Change> fields,
            @Nullable Totals totals,
            List<Part> parts,
            List<Verdict> verdicts) {
        static Comparison of(RevisionComparison comparison) {
            return new Comparison(
                    comparison.from().revision(),
                    comparison.to().revision(),
                    Change.of(comparison.fields()),
                    comparison.kit().map(Comparison::totals).orElse(null),
                    comparison.kit().map(Comparison::parts).orElse(List.of()),
                    comparison.kit().map(Comparison::verdicts).orElse(List.of()));
        }

        private static Totals totals(KitDifference kit) {
            return new Totals(
                    kit.priced() ? kit.before().getAmount() : null,
                    kit.before().getCurrencyUnit().getCode(),
                    kit.priced() ? kit.after().getAmount() : null,
                    kit.after().getCurrencyUnit().getCode(),
                    kit.dearer().map(Money::getAmount).orElse(null));
        }

        private static List<Part> parts(KitDifference kit) {
            return kit.parts().stream()
                    .map(
                            change ->
                                    new Part(
                                            change.part(),
                                            change.title(),
                                            change.group().code(),
                                            change.unit(),
                                            change.before(),
                                            change.after(),
                                            kit.priced()
                                                    ? change.extendedBefore().getAmount()
                                                    : null,
                                            kit.priced()
                                                    ? change.extendedAfter().getAmount()
                                                    : null))
                    .toList();
        }

        private static List<Verdict> verdicts(KitDifference kit) {
            return kit.verdicts().stream()
                    .map(
                            change ->
                                    new Verdict(
                                            change.code(),
                                            change.subject().english(),
                                            change.before().map(v -> v.code()).orElse(null),
                                            change.after().map(v -> v.code()).orElse(null),
                                            change.says().english()))
                    .toList();
        }
    }

    @Operation(
            summary = "List a job's revisions, newest first",
            description = "Each with who made it, when, and what it changed of the one before.")
    @GetMapping(path = "/revisions", produces = MediaType.APPLICATION_JSON_VALUE)
    List<Entry> list(@PathVariable long id) {
        return revisions.list(id).stream().map(Entry::of).toList();
    }

    @Operation(summary = "Get a revision of a job")
    @GetMapping(path = "/revisions/{revision}", produces = MediaType.APPLICATION_JSON_VALUE)
    Entry get(@PathVariable long id, @PathVariable int revision) {
        jobs.getRevision(id, revision);
        return Entry.of(revisions.list(id, revision, 1).getFirst());
    }

    @Operation(
            summary = "Plan the kit of a revision",
            description =
                    "From the catalog of today: the kit, its list (PDF) or its parts (CSV), by the"
                            + " Accept header.")
    @GetMapping(
            path = "/revisions/{revision}/kit",
            produces = {
                MediaType.APPLICATION_JSON_VALUE,
                MediaType.APPLICATION_PDF_VALUE,
                "text/csv"
            })
    ResponseEntity<byte[]> kit(
            @PathVariable long id,
            @PathVariable int revision,
            @RequestParam(defaultValue = AskedPaper.USUAL_SHEET) String paper,
            @Parameter(description = AskedPaper.LANGUAGE_MEANING)
                    @RequestParam(defaultValue = AskedPaper.USUAL_LANGUAGE)
                    String language,
            @RequestHeader HttpHeaders headers)
            throws HttpMediaTypeNotAcceptableException {
        KitPapers form = KitPapers.preferred(headers.getAccept());
        AskedPaper asked = AskedPaper.of(paper, language);
        JsonNode document = jobs.getRevision(id, revision).document();
        return form.answer(kits.plan(JobReader.read(document)), OptionalInt.of(revision), asked);
    }

    @Operation(
            summary = "Compare two revisions of a job",
            description =
                    "Which fields differ, and what that does to parts, price and verdicts; both"
                            + " kits are planned from the catalog of today.")
    @GetMapping(path = "/comparison", produces = MediaType.APPLICATION_JSON_VALUE)
    Comparison compare(@PathVariable long id, @RequestParam int from, @RequestParam int to) {
        return Comparison.of(revisions.compare(id, from, to));
    }

    @Operation(
            summary = "Restore a revision",
            description =
                    "Makes a new revision that says what this one said. If-Match must name the"
                            + " job's version.")
    @PostMapping(
            path = "/revisions/{revision}/restore",
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<JsonNode> restore(
            @PathVariable long id,
            @PathVariable int revision,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @ByParameter ChangedBy by) {
        long version = Versions.required(ifMatch, jobs.get(id).version(), JobErrors::stale);
        StoredJob job = revisions.restore(id, revision, version, by.name());
        return ResponseEntity.ok().eTag(Versions.print(job.version())).body(job.document());
    }
}
