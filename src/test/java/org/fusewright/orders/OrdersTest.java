package org.fusewright.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.fusewright.ServiceTest;
import org.fusewright.TestDatabase;
import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.Catalogs;
import org.fusewright.catalogs.SampleFiles;
import org.fusewright.catalogs.StockLevel;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.order.OrderState;
import org.fusewright.core.order.PartDemand;
import org.fusewright.core.order.PurchaseOrder.OrderLine;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

import java.math.BigDecimal;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Orders and deliveries on a real PostgreSQL. */
@ServiceTest
class OrdersTest {
    private static final BigDecimal FIVE = BigDecimal.valueOf(5);
    private static final ProposalWishes WISHES =
            new ProposalWishes(CurrencyUnit.EUR, Optional.empty(), FIVE);

    @Autowired private Orders orders;
    @Autowired private Catalogs catalogs;

    @BeforeEach
    void startAfresh() throws SQLException {
        forgetAll();
        importCatalog(new SampleFiles().read());
        execute(
                """
                insert into quote (number, job_id, job_reference, title, customer, revision,
                                   version, created_at, changed_at)
                values ('T-1', 1, 'T', 'T', 'T', 1, 0, now(), now())
                """,
                "insert into quote_demand select id, 'WDB-3', 40 from quote where number = 'T-1'",
                "insert into quote_demand select id, 'LTM-1.5-RD', 20.5 from quote where number ="
                        + " 'T-1'");
    }

    @AfterEach
    void forgetAll() throws SQLException {
        execute(
                "set session_replication_role = replica",
                "delete from delivery_line",
                "delete from delivery",
                "delete from purchase_order_line",
                "delete from purchase_order",
                "delete from quote_demand where quote_id in (select id from quote where number ="
                        + " 'T-1')",
                "delete from quote where number = 'T-1'");
    }

    private void importCatalog(CatalogContent content) {
        catalogs.importCatalog(
                content, catalogs.findContent().map(known -> known.catalog().version()));
    }

    @Test
    void needsWhatQuotesAndMinimumsNeedBeyondStockAndOrders() {
        // From stock.csv: 12 blocks on the shelf, at least 6 to be kept.
        assertThat(demandOf("WDB-3").open()).isEqualByComparingTo("34");
        StockLevel wire = stockOf("LTM-1.5-RD");
        // 20.5 m and 5 % of offcuts, 1.025 m.
        assertThat(demandOf("LTM-1.5-RD").waste()).isEqualByComparingTo("1.025");
        assertThat(demandOf("LTM-1.5-RD").open())
                .isEqualByComparingTo(
                        new BigDecimal("21.525")
                                .add(wire.minimum())
                                .subtract(wire.onHand())
                                .max(BigDecimal.ZERO));
        assertThat(demandOf("WDB-3").waste()).isZero();

        draftsOf();

        assertThat(demandOf("WDB-3").ordered()).isGreaterThanOrEqualTo(BigDecimal.valueOf(34));
        assertThat(demandOf("WDB-3").open()).isZero();
    }

    @Test
    void makesDraftsOfTheProposalThatWasLookedAtAndOnlyOnce() {
        Proposal proposal = orders.propose(WISHES);
        assertThat(proposal.cover().isOptimal()).isTrue();
        List<StoredOrder> drafts = orders.createDrafts(WISHES, proposal.version());
        assertThat(drafts)
                .hasSameSizeAs(proposal.cover().shares())
                .allMatch(draft -> draft.state() == OrderState.DRAFT);
        assertThat(drafts.stream().map(draft -> draft.order().total().getAmount()))
                .containsExactlyElementsOf(
                        proposal.cover().shares().stream()
                                .map(share -> share.value().getAmount())
                                .toList());
        assertThatExceptionOfType(StaleOrderException.class)
                .isThrownBy(() -> orders.createDrafts(WISHES, proposal.version()));
        String none = orders.propose(WISHES).version();
        assertThatExceptionOfType(OrderRefusedException.class)
                .isThrownBy(() -> orders.createDrafts(WISHES, none));
    }

    @Test
    void keepsASentOrderToTheByteWhileTheCatalogMovesOn() throws SQLException {
        StoredOrder draft = orderWith("WDB-3");
        StoredOrder sent = orders.send(draft.id(), draft.version());
        Map<OrderPapers, byte[]> papers = new HashMap<>();
        for (OrderPapers paper : OrderPapers.values()) {
            papers.put(paper, orders.paper(sent.id(), paper));
            assertThat(papers.get(paper)).hasSizeGreaterThan(300);
        }
        SampleFiles files = new SampleFiles();
        files.texts()
                .replaceAll(
                        (name, text) ->
                                text.replace("Skerrow Loom", "Skerry Loom")
                                        .replace("1=9.40", "1=19.40"));
        importCatalog(files.read());

        for (OrderPapers paper : OrderPapers.values()) {
            assertThat(orders.paper(sent.id(), paper)).isEqualTo(papers.get(paper));
            if (paper != OrderPapers.UBL) {
                assertThat(paper.print(orders.get(sent.id()).order())).isEqualTo(papers.get(paper));
            }
        }
        assertThatThrownBy(
                        () -> execute("update purchase_order set csv = '' where id = " + sent.id()))
                .hasMessageContaining("was sent and stays as it is");
        assertThatThrownBy(
                        () ->
                                execute(
                                        "update purchase_order_line set quantity = pack_size where"
                                                + " order_id = "
                                                + sent.id()))
                .hasMessageContaining("a sent order stays as it is");
        assertThatThrownBy(() -> execute("delete from purchase_order where id = " + sent.id()))
                .hasMessageContaining("was sent and stays as it is");
        assertThatExceptionOfType(OrderRefusedException.class)
                .isThrownBy(() -> orders.discard(sent.id(), sent.version()));
    }

    @Test
    void putsStockUpByWhatCameAndKnowsWhatIsStillToCome() {
        StoredOrder sent = sentWith("WDB-3");
        OrderLine line = lineOf(sent, "WDB-3");
        BigDecimal before = stockOf("WDB-3").onHand();

        StoredOrder partly =
                orders.receive(sent.id(), sent.version(), "N-1", List.of(came("WDB-3", 4)));

        assertThat(partly.state()).isEqualTo(OrderState.PARTLY_RECEIVED);
        assertThat(stockOf("WDB-3").onHand().subtract(before)).isEqualByComparingTo("4");
        assertThat(partly.openOf(line)).isEqualByComparingTo(String.valueOf(line.quantity() - 4));

        List<ReceivedLine> rest =
                partly.order().lines().stream()
                        .filter(open -> partly.openOf(open).signum() > 0)
                        .map(open -> new ReceivedLine(open.part().value(), partly.openOf(open)))
                        .toList();
        StoredOrder whole = orders.receive(sent.id(), partly.version(), "N-2", rest);

        assertThat(whole.state()).isEqualTo(OrderState.RECEIVED);
        assertThat(stockOf("WDB-3").onHand().subtract(before))
                .isEqualByComparingTo(String.valueOf(line.quantity()));
        assertThat(whole.deliveries())
                .extracting(StoredOrder.Delivery::note)
                .containsExactly("N-1", "N-2");
        assertThatExceptionOfType(OrderRefusedException.class)
                .isThrownBy(
                        () ->
                                orders.receive(
                                        whole.id(),
                                        whole.version(),
                                        "N-3",
                                        List.of(came("WDB-3", 1))))
                .withMessageContaining("this one is received");
    }

    @Test
    void rejectsEveryLineThatWasNeverOrderedOrNotSoMany() {
        StoredOrder sent = sentWith("WDB-3");
        int ordered = lineOf(sent, "WDB-3").quantity();
        List<StockLevel> before = catalogs.listStock();

        assertThatExceptionOfType(MalformedJobException.class)
                .isThrownBy(
                        () ->
                                orders.receive(
                                        sent.id(),
                                        sent.version(),
                                        "N-1",
                                        List.of(
                                                came("WDB-3", 1),
                                                came("XX-9", 1),
                                                came("YY-9", 2))))
                .satisfies(
                        malformed ->
                                assertThat(malformed.problems())
                                        .extracting(JobProblem::pointer)
                                        .containsExactly("/lines/1/part", "/lines/2/part"))
                .satisfies(
                        malformed ->
                                assertThat(malformed.problems().getFirst().detail().english())
                                        .startsWith("XX-9 was never ordered with P-"));
        assertThatExceptionOfType(MalformedJobException.class)
                .isThrownBy(
                        () ->
                                orders.receive(
                                        sent.id(),
                                        sent.version(),
                                        "N-1",
                                        List.of(came("WDB-3", ordered + 1))))
                .satisfies(
                        malformed ->
                                assertThat(malformed.problems())
                                        .singleElement()
                                        .satisfies(
                                                wrong -> {
                                                    assertThat(wrong.pointer())
                                                            .isEqualTo("/lines/0/quantity");
                                                    assertThat(wrong.detail().english())
                                                            .isEqualTo(
                                                                    "%d of WDB-3 came, but only %d are still to come"
                                                                            .formatted(
                                                                                    ordered + 1,
                                                                                    ordered));
                                                }));
        assertThat(catalogs.listStock()).isEqualTo(before);
        assertThat(orders.get(sent.id()).deliveries()).isEmpty();
    }

    @Test
    void losesAndDoublesNothingWhenManyReceiveAtOnce() throws Exception {
        StoredOrder sent = sentWith("WDB-3");
        BigDecimal before = stockOf("WDB-3").onHand();
        int people = 4;
        int ordered = lineOf(sent, "WDB-3").quantity();
        assertThat(ordered).isGreaterThan(2 * people);
        List<String> stale = new ArrayList<>();

        // Each books two notes of its own; whoever comes late looks again, as a person would.
        atOnce(
                people,
                person -> {
                    for (int n = 0; n < 2; n++) {
                        long version = sent.version();
                        String note = "N-" + person + "-" + n;
                        while (true) {
                            try {
                                orders.receive(sent.id(), version, note, List.of(came("WDB-3", 1)));
                                break;
                            } catch (StaleOrderException late) {
                                synchronized (stale) {
                                    stale.add(note);
                                }
                                version = orders.get(sent.id()).version();
                            }
                        }
                    }
                });

        assertThat(stale).isNotEmpty();
        assertThat(stockOf("WDB-3").onHand().subtract(before))
                .isEqualByComparingTo(String.valueOf(2 * people));
        StoredOrder after = orders.get(sent.id());
        assertThat(after.deliveries()).hasSize(2 * people);
        assertThat(after.openOf(lineOf(after, "WDB-3")))
                .isEqualByComparingTo(String.valueOf(ordered - 2 * people));
    }

    @Test
    void booksTheSameNoteOnceHoweverManySendIt() throws Exception {
        StoredOrder sent = sentWith("WDB-3");
        BigDecimal before = stockOf("WDB-3").onHand();

        atOnce(4, _ -> orders.receive(sent.id(), sent.version(), "N-1", List.of(came("WDB-3", 3))));

        assertThat(stockOf("WDB-3").onHand().subtract(before)).isEqualByComparingTo("3");
        assertThat(orders.get(sent.id()).deliveries()).hasSize(1);
        assertThatExceptionOfType(OrderRefusedException.class)
                .isThrownBy(
                        () ->
                                orders.receive(
                                        sent.id(),
                                        sent.version(),
                                        "N-1",
                                        List.of(came("WDB-3", 2))))
                .withMessageContaining("booked already, with other goods");
    }

    @Test
    void neverBooksMoreThanWasOrderedWhenTwoReceiveAllAtOnce() throws Exception {
        StoredOrder sent = sentWith("WDB-3");
        int ordered = lineOf(sent, "WDB-3").quantity();
        BigDecimal before = stockOf("WDB-3").onHand();
        List<Class<?>> refused = new ArrayList<>();

        atOnce(
                2,
                person -> {
                    try {
                        orders.receive(
                                sent.id(),
                                sent.version(),
                                "N-" + person,
                                List.of(came("WDB-3", ordered)));
                    } catch (StaleOrderException late) {
                        synchronized (refused) {
                            refused.add(late.getClass());
                        }
                    }
                });

        assertThat(refused).hasSize(1);
        assertThat(stockOf("WDB-3").onHand().subtract(before))
                .isEqualByComparingTo(String.valueOf(ordered));
    }

    @Test
    void countsACancelledOrderNoMore() {
        StoredOrder sent = sentWith("WDB-3");
        StoredOrder cancelled = orders.cancel(sent.id(), sent.version());
        assertThat(cancelled.state()).isEqualTo(OrderState.CANCELLED);
        assertThat(demandOf("WDB-3").open()).isEqualByComparingTo("34");
        assertThatExceptionOfType(OrderRefusedException.class)
                .isThrownBy(() -> orders.cancel(cancelled.id(), cancelled.version()));
    }

    @Test
    void addsToTheLedgerAndNeverChangesIt() throws SQLException {
        StoredOrder sent = sentWith("WDB-3");
        orders.receive(sent.id(), sent.version(), "N-1", List.of(came("WDB-3", 4)));
        SampleFiles files = new SampleFiles();
        importCatalog(files.replaceFirst("stock.csv", "WDB-3,12,6", "WDB-3,15,6").read());

        assertThat(stockOf("WDB-3").onHand()).isEqualByComparingTo("15");
        assertThatThrownBy(() -> execute("update stock_move set quantity = 1"))
                .hasMessageContaining("rows of stock_move are only added");
        assertThatThrownBy(() -> execute("delete from stock_move"))
                .hasMessageContaining("rows of stock_move are only added");
        assertThatThrownBy(() -> execute("truncate stock_move"))
                .hasMessageContaining("rows of stock_move are only added");
    }

    private PartDemand demandOf(String part) {
        return orders.listDemand(FIVE).stream()
                .filter(demand -> demand.part().value().equals(part))
                .findFirst()
                .orElseThrow();
    }

    private StockLevel stockOf(String part) {
        return catalogs.listStock().stream()
                .filter(level -> level.part().value().equals(part))
                .findFirst()
                .orElseThrow();
    }

    private List<StoredOrder> draftsOf() {
        return orders.createDrafts(WISHES, orders.propose(WISHES).version());
    }

    private StoredOrder orderWith(String part) {
        return draftsOf().stream()
                .filter(draft -> draft.order().lines().stream().anyMatch(l -> isOf(l, part)))
                .findFirst()
                .orElseThrow();
    }

    private StoredOrder sentWith(String part) {
        StoredOrder draft = orderWith(part);
        return orders.send(draft.id(), draft.version());
    }

    private static OrderLine lineOf(StoredOrder order, String part) {
        return order.order().lines().stream()
                .filter(line -> isOf(line, part))
                .findFirst()
                .orElseThrow();
    }

    private static boolean isOf(OrderLine line, String part) {
        return line.part().value().equals(part);
    }

    private static ReceivedLine came(String part, int quantity) {
        return new ReceivedLine(part, BigDecimal.valueOf(quantity));
    }

    private interface Person {
        void act(int number) throws Exception;
    }

    private static void atOnce(int people, Person person) throws Exception {
        CyclicBarrier start = new CyclicBarrier(people);
        try (ExecutorService threads = Executors.newFixedThreadPool(people)) {
            List<Callable<Void>> tasks = new ArrayList<>();
            for (int number = 0; number < people; number++) {
                int own = number;
                tasks.add(
                        () -> {
                            start.await();
                            person.act(own);
                            return null;
                        });
            }
            for (Future<Void> done : threads.invokeAll(tasks)) {
                done.get();
            }
        }
    }

    private static void execute(String... commands) throws SQLException {
        try (Connection connection = TestDatabase.connect();
                Statement statement = connection.createStatement()) {
            for (String command : commands) {
                statement.execute(command);
            }
        }
    }
}
