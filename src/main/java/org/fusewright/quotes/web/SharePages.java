package org.fusewright.quotes.web;

import io.swagger.v3.oas.annotations.Hidden;

import org.fusewright.quotes.QuoteShare;
import org.fusewright.quotes.Quotes;
import org.fusewright.quotes.Shares;
import org.fusewright.quotes.StoredQuote;
import org.fusewright.quotes.UnknownShareException;
import org.fusewright.web.Downloads;
import org.fusewright.web.Secret;
import org.fusewright.web.Words;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

import java.util.List;
import java.util.Map;

/** A quote as its customer sees it by a link: what the paper says, and the paper. */
@Controller
@Hidden
class SharePages {
    private final Shares shares;
    private final Quotes quotes;

    SharePages(Shares shares, Quotes quotes) {
        this.shares = shares;
        this.quotes = quotes;
    }

    @GetMapping("/shared/{secret}")
    ModelAndView show(@PathVariable String secret) {
        StoredQuote quote = quote(shares.get(new Secret(secret).hash()));
        QuoteView view =
                new QuoteView(
                        quote,
                        new QuoteForm(quote.wishes(), List.of(), List.of()),
                        List.of(),
                        "",
                        List.of(),
                        "");
        return new ModelAndView("quotes/shared", Map.of("view", view, "secret", secret));
    }

    @GetMapping("/shared/{secret}/quote.pdf")
    ResponseEntity<byte[]> pdf(
            @PathVariable String secret, @RequestParam(defaultValue = "a4") String paper) {
        QuoteShare share = shares.get(new Secret(secret).hash());
        String name =
                "%s revision %d.pdf".formatted(quote(share).quote().number(), share.revision());
        return Downloads.file(
                name,
                MediaType.APPLICATION_PDF,
                quotes.paper(share.quoteId(), share.revision(), QuoteForms.pdf(paper)));
    }

    private StoredQuote quote(QuoteShare share) {
        return quotes.get(share.quoteId(), share.revision());
    }

    @ExceptionHandler
    ModelAndView unknown(UnknownShareException unknown) {
        return new ModelAndView(
                "frame/error",
                Map.of(
                        "title",
                        Words.say("shared.unknown"),
                        "detail",
                        Words.say("shared.unknown-detail")),
                HttpStatus.NOT_FOUND);
    }
}
