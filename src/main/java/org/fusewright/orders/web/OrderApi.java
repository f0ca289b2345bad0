package org.fusewright.orders.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.jobs.load.Fields;
import org.fusewright.jobs.load.JsonTree;
import org.fusewright.jobs.load.Range;
import org.fusewright.jobs.load.TextForm;
import org.fusewright.orders.OrderPapers;
import org.fusewright.orders.OrderSummary;
import org.fusewright.orders.Orders;
import org.fusewright.orders.Proposal;
import org.fusewright.orders.ProposalWishes;
import org.fusewright.orders.ReceivedLine;
import org.fusewright.orders.StoredOrder;
import org.fusewright.orders.web.OrderDocument.Entry;
import org.fusewright.orders.web.OrderDocument.Full;
import org.fusewright.orders.web.OrderDocument.ProposalDocument;
import org.fusewright.web.LimitedBody;
import org.fusewright.web.Problems;
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
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.server.ResponseStatusException;

import tools.jackson.databind.json.JsonMapper;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.LongFunction;

/** What is needed, orders as documents, and what becomes of them. */
@RestController
@RequestMapping("/api/orders")
@Tag(name = "Orders")
class OrderApi {
    private static final int MAX_LIMIT = 200;
    private static final String IF_MATCH = "If-Match must name the version that it starts from.";
    private static final Range PERCENT = Range.from(0, 100, "%");
    private static final Range LINES = Range.whole(1, 2_000, "lines");
    private static final Range QUANTITY = Range.above(0, 10_000_000, "");
    private static final int QUANTITY_DECIMALS = 3;
    private static final JsonMapper MAPPER = new JsonMapper();

    private final Orders orders;

    OrderApi(Orders orders) {
        this.orders = orders;
    }

    /** Some entries, and what to ask after for the rest. */
    record Entries(List<Entry> orders, @Nullable Long next) {}

    @Operation(
            summary = "List orders, newest first",
            description = "For the rest, give next as after.")
    @GetMapping(produces = MediaType.APPLICATION_JSON_VALUE)
    Entries list(
            @RequestParam(required = false) @Nullable Long after,
            @RequestParam(defaultValue = "50") int limit) {
        if (limit < 1 || limit > MAX_LIMIT) {
            throw new ResponseStatusException(
                    HttpStatus.BAD_REQUEST, "limit must be 1 to " + MAX_LIMIT);
        }
        List<OrderSummary> found =
                orders.list(
                        after == null ? OptionalLong.empty() : OptionalLong.of(after), limit + 1);
        List<Entry> entries = found.stream().limit(limit).map(Entry::of).toList();
        return new Entries(entries, found.size() > limit ? entries.getLast().id() : null);
    }

    @Operation(
            summary = "Propose what to order",
            description =
                    "What accepted quotes and stock minimums need beyond stock and orders, and the"
                        + " cheapest way to buy it: packs, price breaks, minimum orders and lead"
                        + " times looked at. The ETag names this proposal for making drafts of it.")
    @GetMapping(path = "/proposal", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<ProposalDocument> propose(
            @RequestParam(defaultValue = "") String currency,
            @RequestParam(defaultValue = "") String wantedBy,
            @RequestParam(defaultValue = "") String wirePercent) {
        Proposal proposal = orders.propose(read(new WishesForm(currency, wantedBy, wirePercent)));
        return ResponseEntity.ok()
                .eTag("\"" + proposal.version() + "\"")
                .body(ProposalDocument.of(proposal));
    }

    @Operation(
            summary = "Make drafts of a proposal, one for each supplier",
            description =
                    "If-Match must name the proposal; when stock, orders, quotes or offers have"
                            + " changed it since, nothing is made.",
            requestBody =
                    @RequestBody(
                            required = true,
                            description = "currency, wantedBy, wirePercent, as for the proposal.",
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"))))
    @PostMapping(
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<List<Full>> create(
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            InputStream body)
            throws IOException {
        JsonTree tree = JsonTree.parse(LimitedBody.read(body));
        List<JobProblem> problems = new ArrayList<>(tree.problems());
        WishesForm form;
        try (Fields fields = Fields.of(tree.root(), "", problems)) {
            form =
                    new WishesForm(
                            fields.findText("currency", TextForm.ID).orElse(""),
                            fields.findText("wantedBy", TextForm.ID).orElse(""),
                            percent(fields));
        }
        ProposalWishes wishes = readAfter(form, problems);
        if (ifMatch == null || ifMatch.isBlank()) {
            throw Problems.exception(
                    Problems.of(
                            HttpStatus.PRECONDITION_REQUIRED,
                            "Name the proposal that you start from: send its ETag as If-Match."));
        }
        List<StoredOrder> made = orders.createDrafts(wishes, ifMatch.replace("\"", "").strip());
        return ResponseEntity.status(HttpStatus.CREATED).body(made.stream().map(Full::of).toList());
    }

    private static String percent(Fields fields) {
        var percent = fields.findNumber("wirePercent", PERCENT);
        return percent.isPresent()
                ? BigDecimal.valueOf(percent.getAsDouble())
                        .setScale(2, RoundingMode.HALF_UP)
                        .toPlainString()
                : "";
    }

    private ProposalWishes read(WishesForm form) {
        return form.read(orders.listCurrencies(), orders.today());
    }

    private ProposalWishes readAfter(WishesForm form, List<JobProblem> problems) {
        Optional<ProposalWishes> wishes = Optional.empty();
        try {
            wishes = Optional.of(read(form));
        } catch (MalformedJobException malformed) {
            problems.addAll(malformed.problems());
        }
        if (!problems.isEmpty()) {
            throw new MalformedJobException(problems);
        }
        return wishes.orElseThrow();
    }

    @Operation(
            summary = "Get an order",
            description =
                    "As document, paper (PDF), table (CSV) or UBL 2.1 Order (XML), by the Accept"
                            + " header. From sending on, paper, table and XML never change.")
    @GetMapping(
            path = "/{id}",
            produces = {
                MediaType.APPLICATION_JSON_VALUE,
                MediaType.APPLICATION_PDF_VALUE,
                "text/csv",
                MediaType.APPLICATION_XML_VALUE
            })
    ResponseEntity<byte[]> get(
            @PathVariable long id,
            @RequestParam(defaultValue = "a4") String paper,
            @RequestHeader HttpHeaders headers)
            throws HttpMediaTypeNotAcceptableException {
        OrderForms form = OrderForms.preferred(headers.getAccept());
        OrderPapers pdf = OrderForms.pdf(paper);
        StoredOrder order = orders.get(id);
        byte[] body =
                switch (form) {
                    case JSON -> print(order);
                    case PDF -> orders.paper(id, pdf);
                    case CSV -> orders.paper(id, OrderPapers.CSV);
                    case UBL -> orders.paper(id, OrderPapers.UBL);
                };
        return ResponseEntity.ok()
                .eTag(Versions.print(order.version()))
                .contentType(form.type())
                .body(body);
    }

    private static byte[] print(StoredOrder order) {
        return MAPPER.writeValueAsBytes(Full.of(order));
    }

    @Operation(
            summary = "Send a draft",
            description = IF_MATCH + " From then on the order is frozen.")
    @PostMapping(path = "/{id}/send", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> send(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false)
                    @Nullable String ifMatch) {
        return act(id, ifMatch, version -> orders.send(id, version));
    }

    @Operation(summary = "Give up what has not come of a sent order", description = IF_MATCH)
    @PostMapping(path = "/{id}/cancel", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> cancel(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false)
                    @Nullable String ifMatch) {
        return act(id, ifMatch, version -> orders.cancel(id, version));
    }

    @Operation(summary = "Discard a draft", description = IF_MATCH)
    @DeleteMapping("/{id}")
    ResponseEntity<Void> discard(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false)
                    @Nullable String ifMatch) {
        orders.discard(id, required(id, ifMatch));
        return ResponseEntity.noContent().build();
    }

    @Operation(
            summary = "Receive a delivery, whole or part",
            description =
                    IF_MATCH
                            + " What came goes to stock. The same delivery note is booked once,"
                            + " however often it is sent; a line that was never ordered, or not so"
                            + " many, is refused.",
            requestBody =
                    @RequestBody(
                            required = true,
                            description =
                                    "{\"note\": \"DN-118\", \"lines\": [{\"part\": \"WDB-3\","
                                            + " \"quantity\": 10}]}",
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_JSON_VALUE,
                                            schema = @Schema(type = "object"))))
    @PostMapping(
            path = "/{id}/deliveries",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> receive(
            @PathVariable long id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            InputStream body)
            throws IOException {
        JsonTree tree = JsonTree.parse(LimitedBody.read(body));
        List<JobProblem> problems = new ArrayList<>(tree.problems());
        String note;
        List<ReceivedLine> lines;
        try (Fields fields = Fields.of(tree.root(), "", problems)) {
            note = fields.getText("note", TextForm.TITLE, "?");
            lines =
                    fields.list(
                            "lines",
                            LINES,
                            (node, at) -> {
                                try (Fields line = Fields.of(node, at, problems)) {
                                    return line(line);
                                }
                            });
            fields.require("lines", "the parts that came");
        }
        if (!problems.isEmpty()) {
            throw new MalformedJobException(problems);
        }
        long version = versionFor(id, ifMatch, note);
        return answer(orders.receive(id, version, note.strip(), lines));
    }

    /** A note that is booked already is answered again, whatever the version is by now. */
    private long versionFor(long id, @Nullable String ifMatch, String note) {
        StoredOrder order = orders.get(id);
        boolean booked =
                order.deliveries().stream().anyMatch(one -> one.note().equals(note.strip()));
        return booked && ifMatch != null
                ? order.version()
                : Versions.required(ifMatch, order.version(), OrderErrors::stale);
    }

    private static ReceivedLine line(Fields line) {
        String part = line.getText("part", TextForm.TITLE, "?");
        BigDecimal quantity = BigDecimal.valueOf(line.getNumber("quantity", QUANTITY));
        if (quantity.stripTrailingZeros().scale() > QUANTITY_DECIMALS) {
            line.report("quantity", "must have at most 3 decimals");
        }
        return new ReceivedLine(part, quantity);
    }

    private ResponseEntity<byte[]> act(
            long id, @Nullable String ifMatch, LongFunction<StoredOrder> action) {
        return answer(action.apply(required(id, ifMatch)));
    }

    private static ResponseEntity<byte[]> answer(StoredOrder order) {
        return ResponseEntity.ok()
                .eTag(Versions.print(order.version()))
                .contentType(MediaType.APPLICATION_JSON)
                .body(print(order));
    }

    private long required(long id, @Nullable String ifMatch) {
        return Versions.required(ifMatch, orders.get(id).version(), OrderErrors::stale);
    }
}
