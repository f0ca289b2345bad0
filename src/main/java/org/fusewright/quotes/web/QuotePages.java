package org.fusewright.quotes.web;

import io.swagger.v3.oas.annotations.Hidden;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.StaleJobException;
import org.fusewright.quotes.QuotePapers;
import org.fusewright.quotes.QuoteRefusedException;
import org.fusewright.quotes.Quotes;
import org.fusewright.quotes.Shares;
import org.fusewright.quotes.StaleQuoteException;
import org.fusewright.quotes.StoredQuote;
import org.fusewright.web.Asked;
import org.fusewright.web.ChangedBy;
import org.fusewright.web.Downloads;
import org.fusewright.web.Secret;
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
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/** The pages of quotes: plain forms that work without a script. */
@Controller
@Hidden
class QuotePages {
    private static final int PAGE_LENGTH = 50;

    private final Quotes quotes;
    private final Shares shares;
    private final Jobs jobs;

    QuotePages(Quotes quotes, Shares shares, Jobs jobs) {
        this.quotes = quotes;
        this.shares = shares;
        this.jobs = jobs;
    }

    @GetMapping("/quotes")
    ModelAndView list(
            @RequestParam(defaultValue = "") String q,
            @RequestParam(required = false) @Nullable Long job,
            @RequestParam(required = false) @Nullable Long after) {
        return new ModelAndView(
                "quotes/list",
                Map.of(
                        "page",
                        quotes.list(
                                q, QuoteApi.optional(job), QuoteApi.optional(after), PAGE_LENGTH),
                        "text",
                        q,
                        "job",
                        job == null ? "" : job.toString()));
    }

    @GetMapping("/quotes/new")
    ModelAndView start(@RequestParam long job) {
        var taxes = quotes.listTaxes();
        return newPage(job, new QuoteForm(QuoteForm.usual(taxes), taxes, List.of()), HttpStatus.OK);
    }

    @PostMapping("/quotes")
    ModelAndView create(
            @RequestParam long job, @RequestParam MultiValueMap<String, String> fields) {
        ObjectNode wishes = QuoteForm.read(fields);
        try {
            return redirect(quotes.create(job, wishes, List.of()).id());
        } catch (MalformedJobException malformed) {
            return newPage(job, form(wishes, malformed.problems()), HttpStatus.BAD_REQUEST);
        }
    }

    @GetMapping("/quotes/{id}")
    ModelAndView show(
            @PathVariable long id, @RequestParam(required = false) @Nullable Integer revision) {
        StoredQuote quote = revision == null ? quotes.get(id) : quotes.get(id, revision);
        return page(quote, form(quote.wishes(), List.of()), "", HttpStatus.OK);
    }

    @PostMapping("/quotes/{id}")
    ModelAndView change(
            @PathVariable long id,
            @RequestParam long version,
            @RequestParam MultiValueMap<String, String> fields) {
        ObjectNode wishes = QuoteForm.read(fields);
        try {
            return act(id, () -> Optional.of(quotes.change(id, version, wishes, List.of())));
        } catch (MalformedJobException malformed) {
            return page(
                    quotes.get(id), form(wishes, malformed.problems()), "", HttpStatus.BAD_REQUEST);
        }
    }

    @PostMapping("/quotes/{id}/refresh")
    ModelAndView refresh(@PathVariable long id, @RequestParam long version) {
        return act(id, () -> Optional.of(quotes.refresh(id, version)));
    }

    @PostMapping("/quotes/{id}/discard")
    ModelAndView discard(@PathVariable long id, @RequestParam long version) {
        return act(id, () -> quotes.discard(id, version));
    }

    @PostMapping("/quotes/{id}/send")
    ModelAndView send(@PathVariable long id, @RequestParam long version) {
        return act(id, () -> Optional.of(quotes.send(id, version)));
    }

    @PostMapping("/quotes/{id}/accept")
    ModelAndView accept(
            @PathVariable long id,
            @RequestParam long version,
            @RequestParam(defaultValue = "") String variant) {
        Optional<String> chosen = Optional.of(variant).filter(code -> !code.isEmpty());
        return act(id, () -> Optional.of(quotes.accept(id, version, chosen)));
    }

    @PostMapping("/quotes/{id}/decline")
    ModelAndView decline(@PathVariable long id, @RequestParam long version) {
        return act(id, () -> Optional.of(quotes.decline(id, version)));
    }

    @PostMapping("/quotes/{id}/revise")
    ModelAndView revise(@PathVariable long id, @RequestParam long version) {
        return act(id, () -> Optional.of(quotes.revise(id, version)));
    }

    @PostMapping("/quotes/{id}/fulfil")
    ModelAndView fulfil(@PathVariable long id, @RequestParam long version) {
        return act(id, () -> Optional.of(quotes.fulfil(id, version)));
    }

    @PostMapping("/quotes/{id}/take-over")
    ModelAndView takeOver(@PathVariable long id, ChangedBy by) {
        try {
            return new ModelAndView("redirect:/jobs/" + quotes.takeOver(id, by.name()).id());
        } catch (QuoteRefusedException refused) {
            return again(id, Words.say(refused.reason()), HttpStatus.CONFLICT);
        } catch (StaleJobException stale) {
            return again(id, Words.say("job.stale"), HttpStatus.PRECONDITION_FAILED);
        } catch (MalformedJobException malformed) {
            return again(id, Words.say("quotes.take-over.job-faulty"), HttpStatus.CONFLICT);
        }
    }

    /** The link stands on this answer alone. */
    @PostMapping("/quotes/{id}/shares")
    ModelAndView share(@PathVariable long id, @RequestParam int revision, @RequestParam int days) {
        int holds =
                Asked.value(
                        "days",
                        Optional.of(days).filter(d -> d >= 1 && d <= Shares.MOST_DAYS),
                        Words.say("error.limit", Shares.MOST_DAYS));
        Secret secret = Secret.draw();
        try {
            shares.create(id, revision, secret.hash(), holds);
        } catch (QuoteRefusedException refused) {
            return again(id, Words.say(refused.reason()), HttpStatus.CONFLICT);
        }
        StoredQuote quote = quotes.get(id, revision);
        String link =
                ServletUriComponentsBuilder.fromCurrentContextPath()
                        .path("/shared/" + secret.text())
                        .toUriString();
        return page(quote, form(quote.wishes(), List.of()), "", link, HttpStatus.CREATED);
    }

    @PostMapping("/quotes/{id}/shares/{share}/revoke")
    String revoke(@PathVariable long id, @PathVariable long share, @RequestParam int revision) {
        shares.revoke(id, share);
        return "redirect:/quotes/" + id + "?revision=" + revision;
    }

    /** To the quote as it is then, to the list when it is gone, or back with the reason why not. */
    private ModelAndView act(long id, Supplier<Optional<StoredQuote>> action) {
        try {
            return action.get()
                    .map(quote -> redirect(quote.id()))
                    .orElseGet(() -> new ModelAndView("redirect:/quotes"));
        } catch (StaleQuoteException stale) {
            return again(id, Words.say("quotes.stale-now"), HttpStatus.PRECONDITION_FAILED);
        } catch (QuoteRefusedException refused) {
            return again(id, Words.say(refused.reason()), HttpStatus.CONFLICT);
        }
    }

    private ModelAndView again(long id, String notice, HttpStatus status) {
        StoredQuote quote = quotes.get(id);
        return page(quote, form(quote.wishes(), List.of()), notice, status);
    }

    @GetMapping("/quotes/{id}/quote.pdf")
    ResponseEntity<byte[]> pdf(
            @PathVariable long id,
            @RequestParam(required = false) @Nullable Integer revision,
            @RequestParam(defaultValue = "a4") String paper) {
        return download(id, revision, QuoteForms.pdf(paper), MediaType.APPLICATION_PDF, "pdf");
    }

    @GetMapping("/quotes/{id}/quote.csv")
    ResponseEntity<byte[]> csv(
            @PathVariable long id, @RequestParam(required = false) @Nullable Integer revision) {
        return download(id, revision, QuotePapers.CSV, QuoteForms.CSV.type(), "csv");
    }

    private ResponseEntity<byte[]> download(
            long id, @Nullable Integer revision, QuotePapers paper, MediaType type, String ending) {
        StoredQuote quote = revision == null ? quotes.get(id) : quotes.get(id, revision);
        int number = quote.quote().revision();
        String name = "%s revision %d.%s".formatted(quote.quote().number(), number, ending);
        return Downloads.file(name, type, quotes.paper(id, number, paper));
    }

    private QuoteForm form(JsonNode wishes, List<JobProblem> problems) {
        return new QuoteForm(wishes, quotes.listTaxes(), problems);
    }

    private ModelAndView newPage(long job, QuoteForm form, HttpStatus status) {
        return new ModelAndView("quotes/new", Map.of("job", jobs.get(job), "form", form), status);
    }

    private ModelAndView page(StoredQuote quote, QuoteForm form, String notice, HttpStatus status) {
        return page(quote, form, notice, "", status);
    }

    private ModelAndView page(
            StoredQuote quote, QuoteForm form, String notice, String link, HttpStatus status) {
        QuoteView view =
                new QuoteView(
                        quote,
                        form,
                        quotes.listMovedOn(quote),
                        notice,
                        shares.list(quote.id(), quote.quote().revision()),
                        link);
        return new ModelAndView("quotes/quote", Map.of("view", view), status);
    }

    private static ModelAndView redirect(long id) {
        return new ModelAndView("redirect:/quotes/" + id);
    }
}
