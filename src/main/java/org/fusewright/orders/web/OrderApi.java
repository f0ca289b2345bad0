package org.fusewright.orders.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.fusewright.orders.DeliveryNote;
import org.fusewright.orders.OrderPapers;
import org.fusewright.orders.OrderRequests;
import org.fusewright.orders.OrderSummary;
import org.fusewright.orders.Orders;
import org.fusewright.orders.Proposal;
import org.fusewright.orders.ProposalWishes;
import org.fusewright.orders.StoredOrder;
import org.fusewright.orders.WishesForm;
import org.fusewright.orders.web.OrderDocument.Entry;
import org.fusewright.orders.web.OrderDocument.Full;
import org.fusewright.orders.web.OrderDocument.ProposalDocument;
import org.fusewright.web.Asked;
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

import tools.jackson.databind.json.JsonMapper;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.LongFunction;

/** What is needed, orders as documents, and what becomes of them. */
@RestController
@RequestMapping("/api/orders")
@Tag(name = "Orders")
class OrderApi {
    private static final String IF_MATCH = "If-Match must name the version that it starts from.";
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
        int length = Asked.limit(limit);
        List<OrderSummary> found =
                orders.list(
                        after == null ? OptionalLong.empty() : OptionalLong.of(after), length + 1);
        List<Entry> entries = found.stream().limit(length).map(Entry::of).toList();
        return new Entries(entries, found.size() > length ? entries.getLast().id() : null);
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
        Proposal proposal =
                orders.propose(
                        new WishesForm(currency, wantedBy, wirePercent)
                                .read(orders.listCurrencies(), orders.today()));
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
        ProposalWishes wishes =
                OrderRequests.readWishes(
                        LimitedBody.read(body), orders.listCurrencies(), orders.today());
        if (ifMatch == null || ifMatch.isBlank()) {
            throw Problems.exception(
                    Problems.of(
                            HttpStatus.PRECONDITION_REQUIRED,
                            "Name the proposal that you start from: send its ETag as If-Match."));
        }
        List<StoredOrder> made = orders.createDrafts(wishes, ifMatch.replace("\"", "").strip());
        return ResponseEntity.status(HttpStatus.CREATED).body(made.stream().map(Full::of).toList());
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
        DeliveryNote note = OrderRequests.readDelivery(LimitedBody.read(body));
        long version = versionFor(id, ifMatch, note.number());
        return answer(orders.receive(id, version, note.number(), note.lines()));
    }

    /** A note that is booked already is answered again, whatever the version is by now. */
    private long versionFor(long id, @Nullable String ifMatch, String note) {
        StoredOrder order = orders.get(id);
        boolean booked = order.deliveries().stream().anyMatch(one -> one.note().equals(note));
        return booked && ifMatch != null
                ? order.version()
                : Versions.required(ifMatch, order.version(), OrderErrors::stale);
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
