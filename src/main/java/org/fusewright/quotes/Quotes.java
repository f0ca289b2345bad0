package org.fusewright.quotes;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.Catalogs;
import org.fusewright.catalogs.StockLedger;
import org.fusewright.catalogs.StockMove;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.quote.PriceBook;
import org.fusewright.core.quote.Quote;
import org.fusewright.core.quote.QuoteAction;
import org.fusewright.core.quote.QuoteChanges;
import org.fusewright.core.quote.QuoteState;
import org.fusewright.core.quote.QuoteWishes;
import org.fusewright.core.quote.Quoting;
import org.fusewright.core.quote.TaxKind;
import org.fusewright.core.quote.Variant;
import org.fusewright.core.quote.VariantKind;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.NoCatalogException;
import org.fusewright.jobs.StoredJob;
import org.fusewright.jobs.load.JobReader;
import org.fusewright.quotes.store.QuoteDemand;
import org.fusewright.quotes.store.QuoteRow;
import org.fusewright.quotes.store.QuoteStore;
import org.fusewright.quotes.store.RevisionRow;
import org.fusewright.quotes.store.SummaryRow;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

import tools.jackson.databind.JsonNode;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedMap;

/**
 * The quotes that are kept. A draft is worked out when it is made, changed or brought up to date,
 * and stays so until then: what is sent is what was looked at. From sending on its document and its
 * papers are kept as they are, whatever becomes of catalog and job. Each change names the version
 * that it starts from.
 */
@Service
public class Quotes {
    private final QuoteStore store;
    private final QuoteDemand demand;
    private final Jobs jobs;
    private final Catalogs catalogs;
    private final StockLedger stock;
    private final TransactionTemplate transaction;
    private final TransactionTemplate reading;
    private final Clock clock;

    @Autowired
    Quotes(
            QuoteStore store,
            QuoteDemand demand,
            Jobs jobs,
            Catalogs catalogs,
            StockLedger stock,
            PlatformTransactionManager transactions) {
        this(store, demand, jobs, catalogs, stock, transactions, Clock.systemDefaultZone());
    }

    Quotes(
            QuoteStore store,
            QuoteDemand demand,
            Jobs jobs,
            Catalogs catalogs,
            StockLedger stock,
            PlatformTransactionManager transactions,
            Clock clock) {
        this.store = store;
        this.demand = demand;
        this.jobs = jobs;
        this.catalogs = catalogs;
        this.stock = stock;
        this.transaction = new TransactionTemplate(transactions);
        this.reading = new TransactionTemplate(transactions);
        reading.setReadOnly(true);
        reading.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
        this.clock = clock;
    }

    /**
     * What all accepted quotes together need of each part until their kits are delivered: metres of
     * wire, pieces of everything else.
     */
    @Transactional(readOnly = true)
    public SortedMap<PartNumber, BigDecimal> sumAcceptedDemand() {
        return demand.sum();
    }

    /** The kinds of customer that a quote can be for. */
    public List<TaxKind> listTaxes() {
        return content().taxes().orElse(List.of());
    }

    /**
     * Quotes with a text in their number, job, title or customer, newest first.
     *
     * @param job those of this job only
     * @param after where an earlier list ended
     */
    @Transactional(readOnly = true)
    public QuotePage list(String text, OptionalLong job, OptionalLong after, int limit) {
        List<SummaryRow> found =
                store.list(
                        after.orElse(Long.MAX_VALUE),
                        text.strip().toLowerCase(Locale.ROOT),
                        job.isPresent() ? Optional.of(job.getAsLong()) : Optional.empty(),
                        limit + 1);
        List<QuoteSummary> quotes = found.stream().limit(limit).map(this::summary).toList();
        return new QuotePage(
                quotes,
                found.size() > limit
                        ? OptionalLong.of(quotes.getLast().id())
                        : OptionalLong.empty());
    }

    /**
     * A quote in its newest revision.
     *
     * @throws UnknownQuoteException when there is none
     */
    public StoredQuote get(long id) {
        return reading.execute(
                _ -> {
                    QuoteRow row = row(id);
                    return stored(row, row.revision());
                });
    }

    /**
     * @throws UnknownQuoteException when there is no such quote or revision
     */
    public StoredQuote get(long id, int revision) {
        return reading.execute(_ -> stored(row(id), revision));
    }

    /** A revision's paper: as it was sent, or of a draft as it stands. */
    public byte[] paper(long id, int revision, QuotePapers paper) {
        return store.findPaper(id, revision, paper.column())
                .orElseGet(
                        () -> {
                            StoredQuote draft = get(id, revision);
                            return paper.print(draft.quote(), draft.changes(), true);
                        });
    }

    /**
     * Makes a draft for a job.
     *
     * @param wishes number of kits, variants, terms and so on
     * @param problems found in them so far
     * @throws MalformedJobException with all that is wrong with the wishes, or with the job by now
     * @throws org.fusewright.jobs.UnknownJobException when there is no such job
     */
    public StoredQuote create(long jobId, JsonNode wishes, List<JobProblem> problems) {
        Quote quote = workOut("?", 1, jobId, wishes, problems);
        Instant now = now();
        long id =
                transaction.execute(
                        _ -> {
                            int year = quote.quotedOn().getYear();
                            String number = "Q-%d-%04d".formatted(year, store.nextNumber(year));
                            Quote numbered = quote.numbered(number);
                            long made = store.insert(row(numbered, jobId, now));
                            store.insertDraft(made, draft(numbered, wishes));
                            return made;
                        });
        return get(id);
    }

    /**
     * Changes what a draft asks for, and works it out anew from the job and the catalog of now.
     *
     * @throws StaleQuoteException when the quote has another version by now
     * @throws QuoteRefusedException when its newest revision is no draft
     * @throws MalformedJobException as {@link #create}
     */
    public StoredQuote change(long id, long version, JsonNode wishes, List<JobProblem> problems) {
        StoredQuote known = requireAllowed(id, version, QuoteAction.CHANGE);
        Quote quote =
                workOut(
                        known.quote().number(),
                        known.quote().revision(),
                        known.jobId(),
                        wishes,
                        problems);
        return keep(id, version, () -> keepDraft(id, quote, wishes));
    }

    /** Works a draft out anew from the job and the catalog of now; as {@link #change}. */
    public StoredQuote refresh(long id, long version) {
        return change(
                id, version, requireAllowed(id, version, QuoteAction.CHANGE).wishes(), List.of());
    }

    /** Takes a draft back: the quote, or the revision if one went out before. */
    public Optional<StoredQuote> discard(long id, long version) {
        StoredQuote known = requireAllowed(id, version, QuoteAction.DISCARD);
        int revision = known.quote().revision();
        if (revision == 1) {
            change(id, version, () -> store.delete(id));
            return Optional.empty();
        }
        return Optional.of(
                keep(
                        id,
                        version,
                        () -> {
                            store.deleteRevision(id, revision);
                            describe(id, get(id, revision - 1).quote());
                        }));
    }

    /**
     * Sends a draft: dated today, its papers printed once and for all.
     *
     * @throws QuoteRefusedException when it is no draft, or offers what must not be built
     */
    public StoredQuote send(long id, long version) {
        StoredQuote known = requireAllowed(id, version, QuoteAction.SEND);
        for (Variant variant : known.quote().variants()) {
            if (variant.fails() > 0) {
                throw new QuoteRefusedException(
                        Phrase.counted(
                                "quote.refused.variant-fails",
                                variant.fails(),
                                Phrase.of("variant." + variant.kind().code())));
            }
        }
        Quote quote = known.quote().dated(today());
        Optional<QuoteChanges> changes = changes(id, quote);
        var papers = QuotePapers.printAll(quote, changes);
        return keep(
                id,
                version,
                () -> {
                    keepDraft(id, quote, known.wishes());
                    store.send(id, quote.revision(), now(), papers);
                });
    }

    /**
     * Keeps that the customer accepts one of the variants; what its kits need counts from now on.
     *
     * @param variant may be left out when there is only one
     * @throws QuoteRefusedException when the quote is not open for it
     * @throws MalformedJobException when the variant is missing or not on the quote
     */
    public StoredQuote accept(long id, long version, Optional<String> variant) {
        StoredQuote known = requireAllowed(id, version, QuoteAction.ACCEPT);
        Variant chosen = choose(known.quote(), variant);
        return keep(
                id,
                version,
                () -> {
                    answer(known, QuoteState.ACCEPTED, Optional.of(chosen.kind().code()));
                    chosen.demand()
                            .forEach(
                                    (part, quantity) ->
                                            store.insertDemand(id, part.value(), quantity));
                });
    }

    /** Keeps that the customer declines. */
    public StoredQuote decline(long id, long version) {
        StoredQuote known = requireAllowed(id, version, QuoteAction.DECLINE);
        return keep(id, version, () -> answer(known, QuoteState.DECLINED, Optional.empty()));
    }

    /** Starts a new revision as a draft, worked out from the job and the catalog of now. */
    public StoredQuote revise(long id, long version) {
        StoredQuote known = requireAllowed(id, version, QuoteAction.REVISE);
        Quote quote =
                workOut(
                        known.quote().number(),
                        known.quote().revision() + 1,
                        known.jobId(),
                        known.wishes(),
                        List.of());
        return keep(
                id,
                version,
                () -> {
                    store.insertDraft(id, draft(quote, known.wishes()));
                    describe(id, quote);
                });
    }

    /**
     * Keeps that the kits of an accepted quote are delivered: their parts have left the shelf, and
     * they need nothing any more.
     */
    public StoredQuote fulfil(long id, long version) {
        StoredQuote known = requireAllowed(id, version, QuoteAction.FULFIL);
        if (known.fulfilledAt().isPresent()) {
            throw new QuoteRefusedException(Phrase.of("quote.refused.delivered"));
        }
        return keep(
                id,
                version,
                () -> {
                    Instant now = now();
                    stock.book(used(demand.listOf(id), known.quote().number()), now);
                    store.fulfil(id, now);
                });
    }

    /**
     * Gives the job the kinds of device of the accepted variant, as a new revision of the job. The
     * quote stays as it is; circuits that the job has no more are left out.
     *
     * @param by who does that
     * @throws QuoteRefusedException when no variant is accepted, or the job is deleted or asks for
     *     just that already
     * @throws MalformedJobException when the job as it is kept can no longer be read
     */
    public StoredJob takeOver(long id, String by) {
        StoredQuote known = get(id);
        Variant accepted =
                known.accepted()
                        .flatMap(known.quote()::findVariant)
                        .orElseThrow(
                                () ->
                                        new QuoteRefusedException(
                                                Phrase.of("quotes.take-over.none-accepted")));
        StoredJob job =
                jobs.find(known.jobId())
                        .orElseThrow(
                                () ->
                                        new QuoteRefusedException(
                                                Phrase.of("quotes.take-over.job-deleted")));
        JsonNode document = TakenOver.into(job.document(), accepted);
        if (document.equals(job.document())) {
            throw new QuoteRefusedException(Phrase.of("quotes.take-over.already"));
        }
        return jobs.change(job.id(), job.version(), JobReader.read(document), by);
    }

    private static List<StockMove> used(Map<PartNumber, BigDecimal> parts, String quote) {
        return parts.entrySet().stream()
                .filter(part -> part.getValue().signum() != 0)
                .map(
                        part ->
                                new StockMove(
                                        part.getKey(),
                                        part.getValue().negate(),
                                        StockMove.Reason.USED,
                                        quote))
                .toList();
    }

    /** What has moved on since the quote was worked out, in sentences; it stays as it is. */
    public List<Text> listMovedOn(StoredQuote quote) {
        List<Text> moved = new ArrayList<>();
        Quote.QuotedJob job = quote.quote().job();
        jobs.find(quote.jobId())
                .ifPresentOrElse(
                        now -> {
                            if (now.revision() != job.revision()) {
                                moved.add(
                                        Phrase.of(
                                                "quote.moved.job", now.revision(), job.revision()));
                            }
                        },
                        () -> moved.add(Phrase.of("quote.moved.job-deleted")));
        String version = content().catalog().version();
        if (!version.equals(job.catalogVersion())) {
            moved.add(Phrase.of("quote.moved.catalog", version, job.catalogVersion()));
        }
        return moved;
    }

    private StoredQuote requireAllowed(long id, long version, QuoteAction action) {
        StoredQuote known = get(id);
        if (known.version() != version) {
            throw new StaleQuoteException(id);
        }
        if (!known.state().allows(action)) {
            throw new QuoteRefusedException(refusal(known, action));
        }
        return known;
    }

    private static Text refusal(StoredQuote known, QuoteAction action) {
        Text refused =
                Phrase.of(
                        "quote.refused." + action.code(),
                        known.quote().revision(),
                        known.quote().number(),
                        Phrase.of("quote.is." + known.state().code()));
        return known.state().allows(QuoteAction.REVISE)
                ? Text.sentences(List.of(refused, Phrase.of("quote.refused.make-revision")))
                : refused;
    }

    /** Does a change under the quote's next version, or nothing. */
    private void change(long id, long version, Runnable change) {
        transaction.executeWithoutResult(
                _ -> {
                    if (!store.touch(id, version, now())) {
                        throw new StaleQuoteException(id);
                    }
                    change.run();
                });
    }

    private StoredQuote keep(long id, long version, Runnable change) {
        change(id, version, change);
        return get(id);
    }

    private void keepDraft(long id, Quote quote, JsonNode wishes) {
        store.updateDraft(id, draft(quote, wishes));
        describe(id, quote);
    }

    private void describe(long id, Quote quote) {
        store.describe(
                id,
                quote.revision(),
                quote.job().reference(),
                quote.job().title(),
                quote.job().customer());
    }

    private void answer(StoredQuote known, QuoteState state, Optional<String> variant) {
        store.answer(known.id(), known.quote().revision(), state.code(), now(), variant);
    }

    private static Variant choose(Quote quote, Optional<String> code) {
        List<VariantKind> offered = quote.variants().stream().map(Variant::kind).toList();
        if (code.isEmpty() && offered.size() == 1) {
            return quote.variants().getFirst();
        }
        return code.flatMap(VariantKind::parse)
                .flatMap(quote::findVariant)
                .orElseThrow(
                        () ->
                                new MalformedJobException(
                                        List.of(
                                                JobProblem.of(
                                                        "/variant",
                                                        "wrong.must-be-one-of",
                                                        String.join(
                                                                ", ",
                                                                offered.stream()
                                                                        .map(VariantKind::code)
                                                                        .toList())))));
    }

    private Quote workOut(
            String number, int revision, long jobId, JsonNode wishes, List<JobProblem> problems) {
        CatalogContent content = content();
        QuoteWishes read = WishesReader.read(wishes, problems, content.taxes().orElse(List.of()));
        StoredJob stored = jobs.get(jobId);
        Job job = JobReader.read(stored.document()).getJob();
        PriceBook book =
                new PriceBook(
                        content.catalog(),
                        content.labour(),
                        content.markUps().orElse(List.of()),
                        content.shipping().orElse(List.of()));
        return Quoting.quote(number, revision, today(), job, stored.revision(), book, read);
    }

    private CatalogContent content() {
        return catalogs.findContent().orElseThrow(NoCatalogException::new);
    }

    private static QuoteRow row(Quote quote, long jobId, Instant now) {
        return new QuoteRow(
                0,
                quote.number(),
                jobId,
                quote.job().reference(),
                quote.job().title(),
                quote.job().customer(),
                quote.revision(),
                0,
                null,
                now,
                now);
    }

    private static RevisionRow draft(Quote quote, JsonNode wishes) {
        return new RevisionRow(
                quote.revision(),
                QuoteState.DRAFT.code(),
                quote.quotedOn(),
                quote.validUntil(),
                QuoteText.printWishes(wishes),
                QuoteText.print(quote),
                QuoteText.SCHEMA_VERSION,
                null,
                null,
                null);
    }

    private QuoteRow row(long id) {
        return store.find(id).orElseThrow(() -> new UnknownQuoteException(id));
    }

    private StoredQuote stored(QuoteRow row, int revision) {
        RevisionRow kept =
                store.findRevision(row.id(), revision)
                        .orElseThrow(() -> new UnknownQuoteException(row.id()));
        Quote quote = QuoteText.parse(kept.document());
        return new StoredQuote(
                row.id(),
                row.jobId(),
                row.version(),
                row.revision(),
                state(kept.state(), kept.validUntil()),
                quote,
                kept.document(),
                QuoteText.parseWishes(kept.wishes()),
                changes(row.id(), quote),
                Optional.ofNullable(kept.variant()).flatMap(VariantKind::parse),
                row.createdAt(),
                row.changedAt(),
                Optional.ofNullable(kept.sentAt()),
                Optional.ofNullable(kept.decidedAt()),
                Optional.ofNullable(row.fulfilledAt()));
    }

    private Optional<QuoteChanges> changes(long id, Quote quote) {
        return quote.revision() == 1
                ? Optional.empty()
                : store.findRevision(id, quote.revision() - 1)
                        .map(
                                before ->
                                        QuoteChanges.between(
                                                QuoteText.parse(before.document()), quote));
    }

    private QuoteSummary summary(SummaryRow row) {
        return new QuoteSummary(
                row.id(),
                row.number(),
                row.revision(),
                state(row.state(), row.validUntil()),
                row.jobReference(),
                row.title(),
                row.customer(),
                row.quotedOn(),
                row.validUntil(),
                Money.of(CurrencyUnit.of(row.currency()), row.total()),
                row.variants(),
                row.fulfilled());
    }

    private QuoteState state(String kept, LocalDate validUntil) {
        return QuoteState.parse(kept).orElseThrow().on(today(), validUntil);
    }

    private LocalDate today() {
        return LocalDate.now(clock);
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
