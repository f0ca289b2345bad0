package org.fusewright.counts.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.fusewright.core.count.WeighingTerms;
import org.fusewright.counts.BagCount;
import org.fusewright.counts.CountSummary;
import org.fusewright.counts.Counts;
import org.fusewright.counts.Heard;
import org.fusewright.counts.NewCount;
import org.fusewright.counts.Way;
import org.fusewright.counts.load.CountRequests;
import org.fusewright.papers.Paper;
import org.fusewright.web.Asked;
import org.fusewright.web.ChangedBy;
import org.fusewright.web.LimitedBody;
import org.fusewright.web.Problems;
import org.fusewright.web.Versions;
import org.fusewright.web.Words;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.time.Instant;
import java.util.List;

/** The counts of bags. */
@RestController
@RequestMapping("/api/counts")
@Tag(name = "Counts")
class CountApi {

    private final Counts counts;

    CountApi(Counts counts) {
        this.counts = counts;
    }

    /** A count in a list. */
    record Entry(
            long id,
            long jobId,
            String reference,
            String title,
            int revision,
            String startedBy,
            Instant startedAt,
            @Nullable String signedBy,
            @Nullable Instant signedAt) {
        static Entry of(CountSummary count) {
            return new Entry(
                    count.id(),
                    count.jobId(),
                    count.reference(),
                    count.title(),
                    count.revision(),
                    count.startedBy(),
                    count.startedAt(),
                    count.signedBy().orElse(null),
                    count.signedAt().orElse(null));
        }
    }

    /** Some entries, and what to ask before for the rest. */
    record Entries(List<Entry> counts, @Nullable Long next) {}

    /** What became of a code, and the count after it. */
    record Scanned(String kind, String sentence, CountDocument count) {}

    @Operation(
            summary = "List counts, newest first",
            description = "For the rest, give next as before.")
    @GetMapping(produces = MediaType.APPLICATION_JSON_VALUE)
    Entries list(
            @RequestParam(required = false) @Nullable Long before,
            @RequestParam(defaultValue = "50") int limit) {
        int length = Asked.limit(limit);
        List<CountSummary> found =
                counts.list(before == null ? Long.MAX_VALUE : before, length + 1);
        List<CountSummary> shown = found.stream().limit(length).toList();
        return new Entries(
                shown.stream().map(Entry::of).toList(),
                found.size() > length ? shown.getLast().id() : null);
    }

    @Operation(
            summary = "Begin a count",
            description =
                    "Plans the kit of a kept job, in its newest revision or the one given, and"
                            + " keeps what the bag should hold. With sets \"opened\" the content of"
                            + " bagged sets is counted, otherwise a set counts as one piece.",
            requestBody =
                    @RequestBody(
                            required = true,
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"),
                                            examples =
                                                    @ExampleObject(
                                                            "{\"jobId\": 1, \"revision\": 2,"
                                                                + " \"sets\": \"closed\", \"by\":"
                                                                + " \"Ada\"}"))))
    @PostMapping(
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<CountDocument> create(InputStream body) throws IOException {
        NewCount wish = CountRequests.readNewCount(LimitedBody.read(body));
        BagCount count =
                counts.create(
                        new NewCount(
                                wish.jobId(),
                                wish.revision(),
                                wish.sets(),
                                ChangedBy.orGiven(wish.by())));
        return ResponseEntity.created(URI.create("/api/counts/" + count.id()))
                .eTag(Versions.print(count.version()))
                .body(document(count));
    }

    @Operation(summary = "Get a count")
    @GetMapping(path = "/{id}", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<CountDocument> get(@PathVariable long id) {
        return answer(counts.get(id));
    }

    @Operation(
            summary = "Add pieces of a part",
            description =
                    "Adds to what others found; a negative number takes pieces out. Saved at once,"
                            + " without If-Match.",
            requestBody =
                    @RequestBody(
                            required = true,
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"),
                                            examples =
                                                    @ExampleObject(
                                                            "{\"part\": \"WDS-2\", \"pieces\": 1,"
                                                                    + " \"by\": \"Ada\"}"))))
    @PostMapping(
            path = "/{id}/pieces",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<CountDocument> addPieces(@PathVariable long id, InputStream body)
            throws IOException {
        CountRequests.Pieces pieces = CountRequests.readPieces(LimitedBody.read(body));
        return answer(
                counts.add(
                        id,
                        pieces.part(),
                        pieces.pieces(),
                        Way.TAPPED,
                        ChangedBy.orGiven(pieces.by())));
    }

    @Operation(
            summary = "Count what a scanner typed",
            description =
                    "A part number counts one piece; a bag label is compared with this count. Any"
                            + " other code counts nothing, and the answer says so.",
            requestBody =
                    @RequestBody(
                            required = true,
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"),
                                            examples =
                                                    @ExampleObject(
                                                            "{\"code\": \"WDS-2\", \"by\":"
                                                                    + " \"Ada\"}"))))
    @PostMapping(
            path = "/{id}/scans",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<Scanned> scan(@PathVariable long id, InputStream body) throws IOException {
        CountRequests.Code code = CountRequests.readCode(LimitedBody.read(body));
        Counts.Scan scan = counts.scan(id, code.code(), ChangedBy.orGiven(code.by()));
        Heard heard = scan.heard();
        return ResponseEntity.ok()
                .eTag(Versions.print(scan.count().version()))
                .body(
                        new Scanned(
                                heard.kind().code(),
                                heard.sentence().english(),
                                document(scan.count())));
    }

    @Operation(
            summary = "Agree to a substitute",
            description =
                    "A fuse in place of a breaker of the same rating, or a seal whose range takes"
                        + " every lead. What the rules do not allow is refused with the reason.",
            requestBody =
                    @RequestBody(
                            required = true,
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"),
                                            examples =
                                                    @ExampleObject(
                                                            "{\"wanted\": \"TNA-10\", \"offered\":"
                                                                    + " \"PYF-10\", \"pieces\": 1,"
                                                                    + " \"by\": \"Ada\"}"))))
    @PostMapping(
            path = "/{id}/substitutes",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<CountDocument> agree(@PathVariable long id, InputStream body)
            throws IOException {
        CountRequests.Agreement agreement = CountRequests.readAgreement(LimitedBody.read(body));
        return answer(
                counts.agree(
                        id,
                        agreement.wanted(),
                        agreement.offered(),
                        agreement.pieces(),
                        ChangedBy.orGiven(agreement.by())));
    }

    @Operation(
            summary = "Withdraw a substitute",
            description =
                    "Takes back all that was agreed for one part in place of another, until the"
                            + " count is signed. The agreement stays on file.",
            requestBody =
                    @RequestBody(
                            required = true,
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"),
                                            examples =
                                                    @ExampleObject(
                                                            "{\"wanted\": \"TNA-10\", \"offered\":"
                                                                    + " \"PYF-10\", \"by\":"
                                                                    + " \"Ada\"}"))))
    @PostMapping(
            path = "/{id}/withdrawals",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<CountDocument> withdraw(@PathVariable long id, InputStream body)
            throws IOException {
        CountRequests.Withdrawal back = CountRequests.readWithdrawal(LimitedBody.read(body));
        return answer(
                counts.withdraw(id, back.wanted(), back.offered(), ChangedBy.orGiven(back.by())));
    }

    @Operation(
            summary = "What a scale can tell of this bag",
            description =
                    "Keeps nothing. The scatter of each kind's masses, the number of pieces that"
                        + " its mean mass was found from and the acceptable error may be given; the"
                        + " answer states what was used.",
            requestBody =
                    @RequestBody(
                            required = true,
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"),
                                            examples =
                                                    @ExampleObject(
                                                            "{\"resolutionG\": 0.1,"
                                                                + " \"samplePieces\": 10,"
                                                                + " \"errorProbability\": 0.01,"
                                                                + " \"scatterPercent\": {\"seal\":"
                                                                + " 3}}"))))
    @PostMapping(
            path = "/{id}/weight-statement",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    CountDocument.Statement stateWeight(@PathVariable long id, InputStream body)
            throws IOException {
        WeighingTerms terms = CountRequests.readTerms(LimitedBody.read(body));
        return CountDocument.Statement.of(counts.stateWeight(counts.get(id), terms));
    }

    @Operation(
            summary = "Keep a weighing",
            description =
                    "As for the statement, with grossG, tareG and the parts left off the scale;"
                        + " when offScale is not given, those that the statement says to count by"
                        + " hand.",
            requestBody =
                    @RequestBody(
                            required = true,
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"),
                                            examples =
                                                    @ExampleObject(
                                                            "{\"resolutionG\": 0.1, \"tareG\": 6.2,"
                                                                    + " \"grossG\": 152.4,"
                                                                    + " \"offScale\": [\"WDB-4\"],"
                                                                    + " \"by\": \"Ada\"}"))))
    @PostMapping(
            path = "/{id}/weighings",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<CountDocument> weigh(@PathVariable long id, InputStream body)
            throws IOException {
        CountRequests.Weighed weighed = CountRequests.readWeighed(LimitedBody.read(body));
        return answer(
                counts.weigh(
                        id,
                        weighed.terms(),
                        weighed.offScale(),
                        weighed.reading(),
                        ChangedBy.orGiven(weighed.by())));
    }

    @Operation(
            summary = "Sign a count",
            description =
                    "Finishes it for good, complete or not. If-Match must name the version that the"
                            + " person saw.",
            requestBody =
                    @RequestBody(
                            required = true,
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"),
                                            examples =
                                                    @ExampleObject(
                                                            "{\"name\": \"Ada\", \"remark\":"
                                                                    + " \"\"}"))))
    @PostMapping(
            path = "/{id}/signature",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<CountDocument> sign(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            InputStream body)
            throws IOException {
        CountRequests.Signed signed = CountRequests.readSigned(LimitedBody.read(body));
        BagCount count = unsigned(id);
        return answer(
                counts.sign(
                        id,
                        required(ifMatch, count),
                        ChangedBy.orGiven(signed.name()),
                        signed.remark()));
    }

    @Operation(
            summary = "Delete a count that is not signed",
            description = "If-Match must name its version.")
    @DeleteMapping("/{id}")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void delete(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false)
                    @Nullable String ifMatch) {
        counts.delete(id, required(ifMatch, unsigned(id)));
    }

    @Operation(
            summary = "The record of a signed count",
            description = "The same bytes whenever it is asked for.")
    @GetMapping(path = "/{id}/record", produces = MediaType.APPLICATION_PDF_VALUE)
    ResponseEntity<byte[]> record(
            @PathVariable long id, @RequestParam(defaultValue = "a4") String paper) {
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_PDF)
                .body(record(counts, id, paper));
    }

    static byte[] record(Counts counts, long id, String paper) {
        Paper sheet = Asked.value("paper", Paper.parse(paper), Paper.NAMES);
        return counts.findRecord(id, sheet)
                .orElseThrow(
                        () ->
                                Problems.exception(
                                        Problems.of(
                                                HttpStatus.CONFLICT,
                                                "This count is not signed yet: its record is made"
                                                        + " when it is.")));
    }

    private static long required(@Nullable String ifMatch, BagCount count) {
        return Versions.required(
                ifMatch,
                count.version(),
                CountErrors::stale,
                "Name the version that you saw: send its ETag as If-Match.");
    }

    /** A signed count is refused as such, whatever version is named. */
    private BagCount unsigned(long id) {
        BagCount count = counts.get(id);
        if (count.isSigned()) {
            throw Problems.exception(
                    Problems.of(HttpStatus.CONFLICT, Words.say("counts.is-signed")));
        }
        return count;
    }

    private ResponseEntity<CountDocument> answer(BagCount count) {
        return ResponseEntity.ok().eTag(Versions.print(count.version())).body(document(count));
    }

    private CountDocument document(BagCount count) {
        return CountDocument.of(
                count,
                count.isSigned() ? List.of() : counts.listPossibleSubstitutes(count),
                counts.findLater(count));
    }
}
