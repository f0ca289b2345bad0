package org.fusewright.orders.web;

import io.swagger.v3.oas.annotations.Hidden;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.orders.OrderPapers;
import org.fusewright.orders.OrderRefusedException;
import org.fusewright.orders.Orders;
import org.fusewright.orders.ReceivedLine;
import org.fusewright.orders.StaleOrderException;
import org.fusewright.orders.StoredOrder;
import org.fusewright.orders.WishesForm;
import org.fusewright.web.Downloads;
import org.fusewright.web.Words;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/** The pages of orders: what is needed, the proposal, the orders and their deliveries. */
@Controller
@Hidden
class OrderPages {
    private static final int PAGE_LENGTH = 50;
    private static final String CAME = "came-";

    private final Orders orders;

    OrderPages(Orders orders) {
        this.orders = orders;
    }

    @GetMapping("/orders")
    ModelAndView start(
            @RequestParam(defaultValue = "") String currency,
            @RequestParam(defaultValue = "") String wantedBy,
            @RequestParam(defaultValue = "") String wirePercent,
            @RequestParam(required = false) @Nullable Long after) {
        return startPage(new WishesForm(currency, wantedBy, wirePercent), after, "", HttpStatus.OK);
    }

    private ModelAndView startPage(
            WishesForm form, @Nullable Long after, String notice, HttpStatus status) {
        List<JobProblem> problems = List.of();
        var wishes = new WishesForm("", "", "").read(orders.listCurrencies(), orders.today());
        try {
            wishes = form.read(orders.listCurrencies(), orders.today());
        } catch (MalformedJobException malformed) {
            problems = malformed.problems();
        }
        ProposalView view =
                new ProposalView(
                        form,
                        problems,
                        orders.listCurrencies(),
                        orders.propose(wishes),
                        orders.list(
                                after == null ? OptionalLong.empty() : OptionalLong.of(after),
                                PAGE_LENGTH + 1),
                        PAGE_LENGTH,
                        notice);
        HttpStatus answered = problems.isEmpty() ? status : HttpStatus.BAD_REQUEST;
        return new ModelAndView("orders/start", Map.of("view", view), answered);
    }

    @PostMapping("/orders")
    ModelAndView create(
            @RequestParam(defaultValue = "") String currency,
            @RequestParam(defaultValue = "") String wantedBy,
            @RequestParam(defaultValue = "") String wirePercent,
            @RequestParam String version) {
        WishesForm form = new WishesForm(currency, wantedBy, wirePercent);
        try {
            List<StoredOrder> made =
                    orders.createDrafts(
                            form.read(orders.listCurrencies(), orders.today()), version);
            return new ModelAndView(
                    made.size() == 1
                            ? "redirect:/orders/" + made.getFirst().id()
                            : "redirect:/orders#orders");
        } catch (MalformedJobException malformed) {
            return startPage(form, null, "", HttpStatus.BAD_REQUEST);
        } catch (StaleOrderException stale) {
            return startPage(
                    form, null, Words.say("orders.stale-now"), HttpStatus.PRECONDITION_FAILED);
        } catch (OrderRefusedException refused) {
            return startPage(form, null, Words.say(refused.reason()), HttpStatus.CONFLICT);
        }
    }

    @GetMapping("/orders/{id}")
    ModelAndView show(@PathVariable long id) {
        return page(id, "", Map.of(), HttpStatus.OK);
    }

    @PostMapping("/orders/{id}/send")
    ModelAndView send(@PathVariable long id, @RequestParam long version) {
        return act(id, () -> Optional.of(orders.send(id, version)));
    }

    @PostMapping("/orders/{id}/cancel")
    ModelAndView cancel(@PathVariable long id, @RequestParam long version) {
        return act(id, () -> Optional.of(orders.cancel(id, version)));
    }

    @PostMapping("/orders/{id}/discard")
    ModelAndView discard(@PathVariable long id, @RequestParam long version) {
        return act(
                id,
                () -> {
                    orders.discard(id, version);
                    return Optional.empty();
                });
    }

    @PostMapping("/orders/{id}/receive")
    ModelAndView receive(
            @PathVariable long id,
            @RequestParam long version,
            @RequestParam(defaultValue = "") String note,
            @RequestParam MultiValueMap<String, String> fields) {
        Map<String, String> typed = fields.toSingleValueMap();
        List<String> faults = new ArrayList<>();
        List<ReceivedLine> lines = new ArrayList<>();
        if (note.isBlank() || note.strip().length() > 120) {
            faults.add(Words.say("orders.note-needed"));
        }
        typed.forEach(
                (name, text) -> {
                    if (name.startsWith(CAME) && !text.isBlank()) {
                        readLine(name.substring(CAME.length()), text.strip(), lines, faults);
                    }
                });
        String other = typed.getOrDefault("otherPart", "").strip();
        if (!other.isEmpty()) {
            readLine(other, typed.getOrDefault("otherQuantity", "").strip(), lines, faults);
        }
        if (lines.isEmpty() && faults.isEmpty()) {
            faults.add(Words.say("orders.nothing-came"));
        }
        if (!faults.isEmpty()) {
            return page(id, String.join(" ", faults), typed, HttpStatus.BAD_REQUEST);
        }
        try {
            return act(id, () -> Optional.of(orders.receive(id, version, note.strip(), lines)));
        } catch (MalformedJobException malformed) {
            String told =
                    malformed.problems().stream()
                                    .map(problem -> Words.say(problem.detail()))
                                    .collect(Collectors.joining(". ", "", ". "))
                            + Words.say("orders.nothing-booked");
            return page(id, told, typed, HttpStatus.BAD_REQUEST);
        }
    }

    private static void readLine(
            String part, String text, List<ReceivedLine> lines, List<String> faults) {
        String number = text.replace(',', '.');
        if (number.matches("\\d{1,8}(\\.\\d{1,3})?") && new BigDecimal(number).signum() > 0) {
            lines.add(new ReceivedLine(part, new BigDecimal(number)));
        } else if (!number.matches("0+(\\.0+)?")) {
            faults.add(Words.say("orders.came-form", part));
        }
    }

    @GetMapping("/orders/{id}/order.pdf")
    ResponseEntity<byte[]> pdf(
            @PathVariable long id, @RequestParam(defaultValue = "a4") String paper) {
        return download(id, OrderForms.pdf(paper), MediaType.APPLICATION_PDF, "pdf");
    }

    @GetMapping("/orders/{id}/order.csv")
    ResponseEntity<byte[]> csv(@PathVariable long id) {
        return download(id, OrderPapers.CSV, OrderForms.CSV.type(), "csv");
    }

    @GetMapping("/orders/{id}/order.xml")
    ResponseEntity<byte[]> xml(@PathVariable long id) {
        return download(id, OrderPapers.UBL, MediaType.APPLICATION_XML, "xml");
    }

    private ResponseEntity<byte[]> download(
            long id, OrderPapers paper, MediaType type, String ending) {
        String name = orders.get(id).order().number() + "." + ending;
        return Downloads.file(name, type, orders.paper(id, paper));
    }

    private ModelAndView act(long id, Supplier<Optional<StoredOrder>> action) {
        try {
            return new ModelAndView(
                    action.get().isPresent() ? "redirect:/orders/" + id : "redirect:/orders");
        } catch (StaleOrderException stale) {
            return page(
                    id, Words.say("orders.stale-now"), Map.of(), HttpStatus.PRECONDITION_FAILED);
        } catch (OrderRefusedException refused) {
            return page(id, Words.say(refused.reason()), Map.of(), HttpStatus.CONFLICT);
        }
    }

    private ModelAndView page(
            long id, String notice, Map<String, String> typed, HttpStatus status) {
        OrderView view = new OrderView(orders.get(id), notice, typed);
        return new ModelAndView("orders/order", Map.of("view", view), status);
    }
}
