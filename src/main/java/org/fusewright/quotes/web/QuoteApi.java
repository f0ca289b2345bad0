package org.fusewright.quotes.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.fusewright.jobs.StoredJob;
import org.fusewright.quotes.QuotePage;
import org.fusewright.quotes.QuotePapers;
import org.fusewright.quotes.QuoteRequest;
import org.fusewright.quotes.QuoteSummary;
import org.fusewright.quotes.Quotes;
import org.fusewright.quotes.StoredQuote;
import org.fusewright.web.Asked;
import org.fusewright.web.ByParameter;
import org.fusewright.web.ChangedBy;
import org.fusewright.web.LimitedBody;
import org.fusewright.web.Versions;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
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
import org.springframework.web.bind.annotation.RestController;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.net.URI;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.LongFunction;

/** Quotes as documents, and what becomes of them. */
@RestController
@RequestMapping("/api/quotes")
@Tag(name = "Quotes")
class QuoteApi {
    private static final String IF_MATCH = "If-Match must name the version that it starts from.";
    private static final String WISHES =
            "kits (1), variants (of as-asked, fuses, solid-state, cheapest; at most three),"
                    + " customerKind (of taxes.csv), shipping (true), validDays (30), terms and"
                    + " notIncluded (lists of texts).";

    private final Quotes quotes;

    QuoteApi(Quotes quotes) {
        this.quotes = quotes;
    }

    /** A quote in a list. */
    record Entry(
            long id,
            String number,
            int revision,
            String state,
            String jobReference,
            String title,
            String customer,
            LocalDate quotedOn,
            LocalDate validUntil,
            BigDecimal total,
            String currency,
            int variants,
            boolean fulfilled) {
        static Entry of(QuoteSummary quote) {
            return new Entry(
                    quote.id(),
                    quote.number(),
                    quote.revision(),
                    quote.state().code(),
                    quote.jobReference(),
                    quote.title(),
                    quote.customer(),
                    quote.quotedOn(),
                    quote.validUntil(),
                    quote.total().getAmount(),
                    quote.total().getCurrencyUnit().getCode(),
                    quote.variants(),
                    quote.fulfilled());
        }
    }

    /** Some entries, and what to ask after for the rest. */
    record Entries(List<Entry> quotes, @Nullable Long next) {}

    @Operation(
            summary = "List quotes, newest first",
            description =
                    "The total is that of the accepted variant, else the lowest. For the rest, give"
                            + " next as after.")
    @GetMapping(produces = MediaType.APPLICATION_JSON_VALUE)
    Entries list(
            @RequestParam(defaultValue = "") String q,
            @RequestParam(required = false) @Nullable Long job,
            @RequestParam(required = false) @Nullable Long after,
            @RequestParam(defaultValue = "50") int limit) {
        int length = Asked.limit(limit);
        QuotePage page = quotes.list(q, optional(job), optional(after), length);
        return new Entries(
                page.quotes().stream().map(Entry::of).toList(),
                page.next().isPresent() ? page.next().getAsLong() : null);
    }

    static OptionalLong optional(@Nullable Long value) {
        return value == null ? OptionalLong.empty() : OptionalLong.of(value);
    }

    @Operation(
            summary = "Quote a job",
            description = "Makes a draft, worked out from the job and the catalog of now.",
            requestBody =
                    @RequestBody(
                            required = true,
                            description = "job (its id), " + WISHES,
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"))))
    @PostMapping(
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> create(InputStream body) throws IOException {
        QuoteRequest request = QuoteRequest.readWithJob(LimitedBody.read(body));
        StoredQuote made = quotes.create(request.job(), request.wishes(), request.problems());
        return ResponseEntity.created(URI.create("/api/quotes/" + made.id()))
                .eTag(Versions.print(made.version()))
                .contentType(MediaType.APPLICATION_JSON)
                .body(QuoteDocument.print(made));
    }

    @Operation(
            summary = "Get a quote",
            description =
                    "Its newest revision as document, paper (PDF) or table (CSV), by the Accept"
                            + " header. From sending on, paper and table never change.")
    @GetMapping(
            path = "/{id}",
            produces = {
                MediaType.APPLICATION_JSON_VALUE,
                MediaType.APPLICATION_PDF_VALUE,
                "text/csv"
            })
    ResponseEntity<byte[]> get(
            @PathVariable long id,
            @RequestParam(defaultValue = "a4") String paper,
            @RequestHeader HttpHeaders headers)
            throws HttpMediaTypeNotAcceptableException {
        return answer(quotes.get(id), paper, headers);
    }

    @Operation(summary = "Get a revision of a quote", description = "As for the newest one.")
    @GetMapping(
            path = "/{id}/revisions/{revision}",
            produces = {
                MediaType.APPLICATION_JSON_VALUE,
                MediaType.APPLICATION_PDF_VALUE,
                "text/csv"
            })
    ResponseEntity<byte[]> getRevision(
            @PathVariable long id,
            @PathVariable int revision,
            @RequestParam(defaultValue = "a4") String paper,
            @RequestHeader HttpHeaders headers)
            throws HttpMediaTypeNotAcceptableException {
        return answer(quotes.get(id, revision), paper, headers);
    }

    private ResponseEntity<byte[]> answer(StoredQuote quote, String paper, HttpHeaders headers)
            throws HttpMediaTypeNotAcceptableException {
        QuoteForms form = QuoteForms.preferred(headers.getAccept());
        QuotePapers pdf = QuoteForms.pdf(paper);
        int revision = quote.quote().revision();
        byte[] body =
                switch (form) {
                    case JSON -> QuoteDocument.print(quote);
                    case PDF -> quotes.paper(quote.id(), revision, pdf);
                    case CSV -> quotes.paper(quote.id(), revision, QuotePapers.CSV);
                };
        return ResponseEntity.ok()
                .eTag(Versions.print(quote.version()))
                .contentType(form.type())
                .body(body);
    }

    @Operation(
            summary = "Change a draft",
            description =
                    IF_MATCH + " The draft is worked out anew from the job and the catalog of now.",
            requestBody =
                    @RequestBody(
                            required = true,
                            description = WISHES,
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"))))
    @PutMapping(
            path = "/{id}",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> change(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            InputStream body)
            throws IOException {
        QuoteRequest request = QuoteRequest.read(LimitedBody.read(body));
        return act(
                id,
                ifMatch,
                version -> quotes.change(id, version, request.wishes(), request.problems()));
    }

    @Operation(
            summary = "Bring a draft up to date",
            description = IF_MATCH + " It is worked out anew from the job and the catalog of now.")
    @PostMapping(path = "/{id}/refresh", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> refresh(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false)
                    @Nullable String ifMatch) {
        return act(id, ifMatch, version -> quotes.refresh(id, version));
    }

    @Operation(
            summary = "Discard a draft",
            description =
                    IF_MATCH + " A quote that never went out is gone; else its last revision is.")
    @DeleteMapping("/{id}")
    ResponseEntity<Void> discard(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false)
                    @Nullable String ifMatch) {
        quotes.discard(id, required(id, ifMatch));
        return ResponseEntity.noContent().build();
    }

    @Operation(
            summary = "Send a draft",
            description =
                    IF_MATCH
                            + " From then on the quote is frozen. One that offers what must not be"
                            + " built is refused.")
    @PostMapping(path = "/{id}/send", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> send(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false)
                    @Nullable String ifMatch) {
        return act(id, ifMatch, version -> quotes.send(id, version));
    }

    @Operation(
            summary = "Accept a quote",
            description = IF_MATCH + " What its kits need counts as demand from then on.",
            requestBody =
                    @RequestBody(
                            description =
                                    "{\"variant\": \"fuses\"}; may be left out when there is one.",
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"))))
    @PostMapping(path = "/{id}/accept", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> accept(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            InputStream body)
            throws IOException {
        Optional<String> variant = QuoteRequest.readVariant(LimitedBody.read(body));
        return act(id, ifMatch, version -> quotes.accept(id, version, variant));
    }

    @Operation(summary = "Decline a quote", description = IF_MATCH)
    @PostMapping(path = "/{id}/decline", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> decline(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false)
                    @Nullable String ifMatch) {
        return act(id, ifMatch, version -> quotes.decline(id, version));
    }

    @Operation(
            summary = "Start a new revision of a quote",
            description = IF_MATCH + " It is a draft, worked out from the job and catalog of now.")
    @PostMapping(path = "/{id}/revisions", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> revise(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false)
                    @Nullable String ifMatch) {
        return act(id, ifMatch, version -> quotes.revise(id, version));
    }

    @Operation(
            summary = "Say that the kits of an accepted quote are delivered",
            description = IF_MATCH + " Their parts leave stock and are no demand any more.")
    @PostMapping(path = "/{id}/fulfil", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> fulfil(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false)
                    @Nullable String ifMatch) {
        return act(id, ifMatch, version -> quotes.fulfil(id, version));
    }

    /** The job after it took over a variant. */
    record TakenOver(long jobId, int revision) {}

    @Operation(
            summary = "Take the accepted variant over into the job",
            description =
                    "Each circuit of the job then asks for the kind of device that the variant has,"
                            + " as a new revision of the job. The quote stays as it is.")
    @PostMapping(path = "/{id}/take-over", produces = MediaType.APPLICATION_JSON_VALUE)
    TakenOver takeOver(@PathVariable long id, @ByParameter ChangedBy by) {
        StoredJob job = quotes.takeOver(id, by.name());
        return new TakenOver(job.id(), job.revision());
    }

    private ResponseEntity<byte[]> act(
            long id, @Nullable String ifMatch, LongFunction<StoredQuote> action) {
        StoredQuote after = action.apply(required(id, ifMatch));
        return ResponseEntity.ok()
                .eTag(Versions.print(after.version()))
                .contentType(MediaType.APPLICATION_JSON)
                .body(QuoteDocument.print(after));
    }

    private long required(long id, @Nullable String ifMatch) {
        return Versions.required(ifMatch, quotes.get(id).version(), QuoteErrors::stale);
    }
}
