package org.fusewright.quotes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.fusewright.ServiceTest;
import org.fusewright.TestDatabase;
import org.fusewright.catalogs.Catalogs;
import org.fusewright.catalogs.SampleFiles;
import org.fusewright.catalogs.StockLedger;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.quote.QuoteChanges;
import org.fusewright.core.quote.QuoteState;
import org.fusewright.core.quote.Variant;
import org.fusewright.core.quote.VariantKind;
import org.fusewright.core.words.Text;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.StoredJob;
import org.fusewright.jobs.load.JobReader;
import org.fusewright.quotes.store.QuoteDemand;
import org.fusewright.quotes.store.QuoteStore;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.PlatformTransactionManager;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/** Quotes in a real PostgreSQL, on days of the test's choice. */
@ServiceTest
class QuotesTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final AtomicInteger NUMBER = new AtomicInteger();

    @Autowired private QuoteStore store;
    @Autowired private QuoteDemand demand;
    @Autowired private Jobs jobs;
    @Autowired private Catalogs catalogs;
    @Autowired private StockLedger stock;
    @Autowired private PlatformTransactionManager transactions;

    private LocalDate today = LocalDate.of(2031, 3, 2);
    private boolean restocked;
    private Quotes quotes;

    @BeforeEach
    void setTheClock() {
        Clock clock =
                new Clock() {
                    @Override
                    public ZoneOffset getZone() {
                        return ZoneOffset.UTC;
                    }

                    @Override
                    public Clock withZone(ZoneId zone) {
                        throw new UnsupportedOperationException();
                    }

                    @Override
                    public Instant instant() {
                        return today.atTime(12, 0).toInstant(ZoneOffset.UTC);
                    }
                };
        quotes = new Quotes(store, demand, jobs, catalogs, stock, transactions, clock);
    }

    /** Also puts the prices and the stock back that other tests expect. */
    @AfterEach
    void cleanUp() throws SQLException {
        if (restocked) {
            importCatalog(new SampleFiles());
        }
        execute("truncate quote, quote_revision, quote_demand, quote_count");
    }

    private void importCatalog(SampleFiles files) {
        catalogs.importCatalog(
                files.read(), catalogs.findContent().map(content -> content.catalog().version()));
    }

    private static void execute(String command) throws SQLException {
        try (Connection connection = TestDatabase.connect();
                Statement statement = connection.createStatement()) {
            statement.execute(command);
        }
    }

    private StoredJob job(double watts) {
        return jobs.create(JobReader.read(document("QT-" + NUMBER.incrementAndGet(), watts)));
    }

    private static byte[] document(String reference, double watts) {
        return """
        {"reference": "%s", "title": "Bench test", "customer": "Tamarisk Cycles",
         "supply": {"nominalV": 12},
         "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.6, "sourceDistanceM": 0.1}],
         "circuits": [{"id": "lamp", "feed": "battery", "runM": 1.5,
                       "loads": [{"kind": "led", "watts": %s}]}]}
        """
                .formatted(reference, watts)
                .getBytes(StandardCharsets.UTF_8);
    }

    private static JsonNode wishes(int kits, String... variants) {
        return MAPPER.readTree(
                """
                {"kits": %d, "variants": ["%s"], "customerKind": "private", "validDays": 30}
                """
                        .formatted(kits, String.join("\", \"", variants)));
    }

    private StoredQuote draft() {
        return quotes.create(job(24).id(), wishes(2, "fuses"), List.of());
    }

    private StoredQuote sent() {
        StoredQuote draft = draft();
        return quotes.send(draft.id(), draft.version());
    }

    private Map<QuotePapers, byte[]> papers(StoredQuote quote) {
        Map<QuotePapers, byte[]> papers = new EnumMap<>(QuotePapers.class);
        for (QuotePapers paper : QuotePapers.values()) {
            papers.put(paper, quotes.paper(quote.id(), quote.quote().revision(), paper));
        }
        return papers;
    }

    /** Dearer parts, another mark-up, another tax, another parcel. */
    private void changeAllPrices() {
        restocked = true;
        SampleFiles files = new SampleFiles();
        files.texts().computeIfPresent("offers.csv", (_, text) -> text.replace("=0.", "=1."));
        files.replaceFirst("margins.csv", ",,35", ",,95");
        files.replaceFirst("taxes.csv", "private,Private customer,20", "private,Private,7");
        files.replaceFirst("shipping.csv", "6.90", "9.60");
        importCatalog(files);
    }

    @Test
    void keepsASentQuoteToTheByteWhateverBecomesOfCatalogAndJob() {
        StoredQuote sent = sent();
        Map<QuotePapers, byte[]> before = papers(sent);
        changeAllPrices();
        StoredJob job = jobs.get(sent.jobId());
        StoredJob changed =
                jobs.change(
                        job.id(),
                        job.version(),
                        JobReader.read(document(job.reference(), 240)),
                        "shop");
        today = today.plusDays(3);

        StoredQuote after = quotes.get(sent.id());
        assertThat(after.document()).isEqualTo(sent.document());
        assertThat(after.quote()).isEqualTo(sent.quote());
        assertThat(papers(after)).containsExactlyEntriesOf(before);
        assertThat(quotes.listMovedOn(after)).hasSize(2);

        jobs.delete(changed.id(), changed.version());
        assertThat(papers(quotes.get(sent.id()))).containsExactlyEntriesOf(before);
        assertThat(quotes.listMovedOn(after))
                .extracting(Text::english)
                .contains("The job is deleted.");
    }

    /** The same catalog and job, worked out anew, do make another quote by then. */
    @Test
    void bringsADraftUpToDateOnlyWhenAsked() {
        StoredQuote draft = draft();
        changeAllPrices();
        assertThat(quotes.get(draft.id()).quote()).isEqualTo(draft.quote());
        StoredQuote refreshed = quotes.refresh(draft.id(), draft.version());
        assertThat(total(refreshed)).isNotEqualTo(total(draft));
        assertThat(refreshed.quote().tax().percent()).isEqualByComparingTo("7");
        assertThat(refreshed.quote().number()).isEqualTo(draft.quote().number());
    }

    private static BigDecimal total(StoredQuote quote) {
        return quote.quote().variants().getFirst().total().getAmount();
    }

    @Test
    void datesAQuoteWhenItIsSent() {
        StoredQuote draft = draft();
        today = LocalDate.of(2031, 3, 20);
        StoredQuote sent = quotes.send(draft.id(), draft.version());
        assertThat(sent.quote().quotedOn()).isEqualTo("2031-03-20");
        assertThat(sent.quote().validUntil()).isEqualTo("2031-04-19");
        assertThat(sent.quote().variants()).isEqualTo(draft.quote().variants());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update quote_revision set document = '{}'",
                "update quote_revision set pdf_a4 = 'x'",
                "update quote_revision set pdf_letter = 'x'",
                "update quote_revision set csv = 'x'",
                "update quote_revision set valid_until = '2099-01-01'",
                "update quote_revision set state = 'draft', sent_at = null, pdf_a4 = null,"
                        + " pdf_letter = null, csv = null",
                "update quote_revision set state = 'accepted', variant = 'fuses',"
                        + " decided_at = now(), wishes = '{}'",
                "delete from quote_revision",
                "delete from quote"
            })
    void keepsASentQuoteEvenFromTheDatabasesOwnCommands(String command) {
        StoredQuote sent = sent();
        assertThatExceptionOfType(SQLException.class)
                .isThrownBy(() -> execute(command))
                .withMessageContaining("was sent and stays as it is");
        assertThat(quotes.get(sent.id()).document()).isEqualTo(sent.document());
    }

    @Test
    void keepsAnAnswerForGood() {
        StoredQuote sent = sent();
        quotes.decline(sent.id(), sent.version());
        assertThatExceptionOfType(SQLException.class)
                .isThrownBy(
                        () ->
                                execute(
                                        "update quote_revision set state = 'accepted',"
                                                + " variant = 'fuses'"))
                .withMessageContaining("was sent and stays as it is");
    }

    @Test
    void givesEachOfManyAtOnceANumberOfItsOwnWithoutGaps() throws Exception {
        long job = job(24).id();
        int many = 24;
        List<Callable<String>> calls = new ArrayList<>();
        for (int i = 0; i < many; i++) {
            calls.add(() -> quotes.create(job, wishes(1, "fuses"), List.of()).quote().number());
        }
        List<String> numbers = new ArrayList<>();
        try (ExecutorService threads = Executors.newFixedThreadPool(8)) {
            for (Future<String> made : threads.invokeAll(calls)) {
                numbers.add(made.get());
            }
        }
        List<String> expected = new ArrayList<>();
        for (int i = 1; i <= many; i++) {
            expected.add("Q-2031-%04d".formatted(i));
        }
        assertThat(numbers).containsExactlyInAnyOrderElementsOf(expected);
    }

    @Test
    void countsEachYearFromOneAndLosesNoNumberWithARefusedQuote() {
        long job = job(24).id();
        assertThat(number(job)).isEqualTo("Q-2031-0001");
        assertThatExceptionOfType(RuntimeException.class)
                .isThrownBy(() -> quotes.create(job, wishes(0, "fuses"), List.of()));
        assertThat(number(job)).isEqualTo("Q-2031-0002");
        today = LocalDate.of(2032, 1, 1);
        assertThat(number(job)).isEqualTo("Q-2032-0001");
    }

    private String number(long job) {
        return quotes.create(job, wishes(1, "fuses"), List.of()).quote().number();
    }

    @Test
    void letsOneOfTwoAnswersAtOnceWin() throws Exception {
        StoredQuote sent = sent();
        List<Callable<String>> answers =
                List.of(
                        () -> tried(() -> quotes.accept(sent.id(), 1, Optional.empty())),
                        () -> tried(() -> quotes.decline(sent.id(), 1)),
                        () -> tried(() -> quotes.accept(sent.id(), 1, Optional.empty())),
                        () -> tried(() -> quotes.revise(sent.id(), 1)));
        List<String> outcomes = new ArrayList<>();
        try (ExecutorService threads = Executors.newFixedThreadPool(4)) {
            for (Future<String> outcome : threads.invokeAll(answers)) {
                outcomes.add(outcome.get());
            }
        }
        assertThat(outcomes).containsExactlyInAnyOrder("done", "stale", "stale", "stale");
        assertThat(quotes.get(sent.id()).version()).isEqualTo(2);
    }

    private static String tried(Callable<StoredQuote> action) throws Exception {
        try {
            action.call();
            return "done";
        } catch (StaleQuoteException stale) {
            return "stale";
        }
    }

    @Test
    void expiresAfterItsLastDay() {
        StoredQuote sent = sent();
        today = sent.quote().validUntil();
        assertThat(quotes.get(sent.id()).state()).isEqualTo(QuoteState.SENT);
        today = today.plusDays(1);
        assertThat(quotes.get(sent.id()).state()).isEqualTo(QuoteState.EXPIRED);
        assertThat(quotes.list("", OptionalLong.empty(), OptionalLong.empty(), 1).quotes())
                .singleElement()
                .satisfies(one -> assertThat(one.state()).isEqualTo(QuoteState.EXPIRED));
        assertThatExceptionOfType(QuoteRefusedException.class)
                .isThrownBy(() -> quotes.accept(sent.id(), sent.version(), Optional.empty()))
                .withMessage(
                        "Revision 1 of quote Q-2031-0001 is expired and cannot be accepted. Make a"
                                + " new revision of it.");
    }

    private interface Act {
        Object on(Quotes quotes, long id, long version);
    }

    private enum Action {
        CHANGE((quotes, id, version) -> quotes.change(id, version, wishes(3, "fuses"), List.of())),
        REFRESH(Quotes::refresh),
        SEND(Quotes::send),
        DISCARD(Quotes::discard),
        ACCEPT((quotes, id, version) -> quotes.accept(id, version, Optional.empty())),
        DECLINE(Quotes::decline),
        REVISE(Quotes::revise),
        FULFIL(Quotes::fulfil);

        private final Act act;

        Action(Act act) {
            this.act = act;
        }
    }

    /**
     * What each state allows, tried out for real; everything else is refused and changes nothing.
     */
    @ParameterizedTest
    @EnumSource(Action.class)
    void doesInEachStateWhatTheTableAllows(Action action) {
        restocked = action == Action.FULFIL;
        Map<String, List<Action>> allowed =
                Map.of(
                        "draft",
                                List.of(Action.CHANGE, Action.REFRESH, Action.SEND, Action.DISCARD),
                        "sent", List.of(Action.ACCEPT, Action.DECLINE, Action.REVISE),
                        "accepted", List.of(Action.FULFIL),
                        "declined", List.of(Action.REVISE),
                        "expired", List.of(Action.DECLINE, Action.REVISE));
        allowed.forEach(
                (state, actions) -> {
                    StoredQuote quote = in(state);
                    if (actions.contains(action)) {
                        action.act.on(quotes, quote.id(), quote.version());
                    } else {
                        assertThatExceptionOfType(QuoteRefusedException.class)
                                .describedAs(action + " in state " + state)
                                .isThrownBy(
                                        () -> action.act.on(quotes, quote.id(), quote.version()));
                        assertThat(quotes.get(quote.id())).isEqualTo(quote);
                    }
                });
    }

    private StoredQuote in(String state) {
        today = LocalDate.of(2031, 3, 2);
        StoredQuote quote =
                switch (state) {
                    case "draft" -> draft();
                    case "accepted" -> {
                        StoredQuote sent = sent();
                        yield quotes.accept(sent.id(), sent.version(), Optional.empty());
                    }
                    case "declined" -> {
                        StoredQuote sent = sent();
                        yield quotes.decline(sent.id(), sent.version());
                    }
                    default -> sent();
                };
        if (state.equals("expired")) {
            today = LocalDate.of(2031, 6, 1);
        }
        assertThat(quotes.get(quote.id()).state().code()).isEqualTo(state);
        return quotes.get(quote.id());
    }

    @ParameterizedTest
    @EnumSource(Action.class)
    void refusesAStaleVersion(Action action) {
        StoredQuote draft = draft();
        quotes.refresh(draft.id(), draft.version());
        assertThatExceptionOfType(StaleQuoteException.class)
                .isThrownBy(() -> action.act.on(quotes, draft.id(), draft.version()));
    }

    @Test
    void refusesToSendWhatMustNotBeBuilt() {
        StoredJob job =
                jobs.create(
                        JobReader.read(
                                """
                                {"reference": "QT-F%d", "supply": {"nominalV": 12},
                                 "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.6,
                                            "sourceDistanceM": 0.1}],
                                 "circuits": [{"id": "lamp", "feed": "battery", "runM": 1.5,
                                               "devices": ["fuse"], "ratingA": 2,
                                               "loads": [{"kind": "led", "watts": 120}]}]}
                                """
                                        .formatted(NUMBER.incrementAndGet())
                                        .getBytes(StandardCharsets.UTF_8)));
        StoredQuote draft = quotes.create(job.id(), wishes(1, "as-asked"), List.of());
        assertThatExceptionOfType(QuoteRefusedException.class)
                .isThrownBy(() -> quotes.send(draft.id(), draft.version()))
                .withMessageContaining("The variant \"As asked for\" must not be built");
        assertThat(quotes.get(draft.id())).isEqualTo(draft);
    }

    @Test
    void addsTheDemandOfAcceptedQuotesUntilTheirKitsAreDelivered() {
        assertThat(quotes.sumAcceptedDemand()).isEmpty();
        StoredQuote two = quotes.create(job(24).id(), wishes(2, "fuses", "solid-state"), List.of());
        two = quotes.send(two.id(), two.version());
        StoredQuote other = sent();
        assertThat(quotes.sumAcceptedDemand()).isEmpty();

        two = quotes.accept(two.id(), two.version(), Optional.of("solid-state"));
        Variant chosen = two.quote().findVariant(VariantKind.SOLID_STATE).orElseThrow();
        assertSame(quotes.sumAcceptedDemand(), chosen.demand());

        other = quotes.accept(other.id(), other.version(), Optional.empty());
        SortedMap<PartNumber, BigDecimal> both = new TreeMap<>(chosen.demand());
        other.quote()
                .variants()
                .getFirst()
                .demand()
                .forEach((part, quantity) -> both.merge(part, quantity, BigDecimal::add));
        assertSame(quotes.sumAcceptedDemand(), both);

        restocked = true;
        Map<PartNumber, BigDecimal> before = onHand();
        StoredQuote done = quotes.fulfil(two.id(), two.version());
        chosen.demand()
                .forEach(
                        (part, quantity) -> before.merge(part, quantity.negate(), BigDecimal::add));
        assertThat(onHand())
                .usingComparatorForType(BigDecimal::compareTo, BigDecimal.class)
                .usingRecursiveComparison()
                .isEqualTo(before);
        assertThat(done.fulfilledAt()).isPresent();
        assertSame(quotes.sumAcceptedDemand(), other.quote().variants().getFirst().demand());
        assertThatExceptionOfType(QuoteRefusedException.class)
                .isThrownBy(() -> quotes.fulfil(done.id(), done.version()))
                .withMessageContaining("delivered already");
    }

    private Map<PartNumber, BigDecimal> onHand() {
        Map<PartNumber, BigDecimal> onHand = new TreeMap<>();
        catalogs.listStock().forEach(level -> onHand.put(level.part(), level.onHand()));
        return onHand;
    }

    private static void assertSame(
            SortedMap<PartNumber, BigDecimal> found, SortedMap<PartNumber, BigDecimal> expected) {
        assertThat(found.keySet()).isEqualTo(expected.keySet()).isNotEmpty();
        found.forEach(
                (part, quantity) -> assertThat(quantity).isEqualByComparingTo(expected.get(part)));
    }

    @Test
    void showsLineByLineWhatANewRevisionChanges() {
        StoredQuote first = sent();
        Map<QuotePapers, byte[]> papers = papers(first);
        changeAllPrices();
        StoredQuote second = quotes.revise(first.id(), first.version());
        assertThat(second.quote().revision()).isEqualTo(2);
        assertThat(second.quote().number()).isEqualTo(first.quote().number());
        assertThat(second.state()).isEqualTo(QuoteState.DRAFT);
        QuoteChanges changes = second.changes().orElseThrow();
        assertThat(changes.facts())
                .anySatisfy(
                        fact -> {
                            assertThat(fact.what().english()).isEqualTo("Tax");
                            assertThat(fact.before().english()).isEqualTo("20 %");
                            assertThat(fact.after().english()).isEqualTo("7 %");
                        })
                .extracting(fact -> fact.what().english())
                .contains("All fuses, total");
        assertThat(changes.lines()).isNotEmpty();
        assertThat(papers(quotes.get(first.id(), 1))).containsExactlyEntriesOf(papers);

        StoredQuote back = quotes.discard(second.id(), second.version()).orElseThrow();
        assertThat(back.quote()).isEqualTo(first.quote());
        assertThat(back.state()).isEqualTo(QuoteState.SENT);

        StoredQuote again = quotes.revise(back.id(), back.version());
        StoredQuote sentAgain = quotes.send(again.id(), again.version());
        assertThat(sentAgain.changes().orElseThrow().lines()).isEqualTo(changes.lines());
        assertThat(papers(quotes.get(first.id(), 1))).containsExactlyEntriesOf(papers);
        assertThat(papers(sentAgain).get(QuotePapers.PDF_A4))
                .isNotEqualTo(papers.get(QuotePapers.PDF_A4));
    }

    @Test
    void discardsAQuoteThatNeverWentOut() {
        StoredQuote draft = draft();
        assertThat(quotes.discard(draft.id(), draft.version())).isEmpty();
        assertThatExceptionOfType(UnknownQuoteException.class)
                .isThrownBy(() -> quotes.get(draft.id()));
    }

    @Test
    void listsQuotesPageByPageNewestFirst() {
        List<String> made = new ArrayList<>();
        long job = job(24).id();
        for (int i = 0; i < 5; i++) {
            made.addFirst(number(job));
        }
        number(job(36).id());
        List<String> listed = new ArrayList<>();
        OptionalLong after = OptionalLong.empty();
        do {
            QuotePage page = quotes.list("tamarisk", OptionalLong.of(job), after, 2);
            page.quotes().forEach(quote -> listed.add(quote.number()));
            after = page.next();
        } while (after.isPresent());
        assertThat(listed).isEqualTo(made);
        assertThat(quotes.list("%", OptionalLong.empty(), OptionalLong.empty(), 10).quotes())
                .isEmpty();
        assertThat(quotes.list("a\0b", OptionalLong.empty(), OptionalLong.empty(), 10).quotes())
                .isEmpty();
    }
}
