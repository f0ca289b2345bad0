package org.fusewright.orders;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.Catalogs;
import org.fusewright.catalogs.StockLedger;
import org.fusewright.catalogs.StockLevel;
import org.fusewright.catalogs.StockMove;
import org.fusewright.catalogs.Supplier;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.order.Cover;
import org.fusewright.core.order.Cover.CoverLine;
import org.fusewright.core.order.CoverPlanner;
import org.fusewright.core.order.CoverTask;
import org.fusewright.core.order.Need;
import org.fusewright.core.order.OrderState;
import org.fusewright.core.order.PartDemand;
import org.fusewright.core.order.PurchaseOrder;
import org.fusewright.core.order.PurchaseOrder.OrderLine;
import org.fusewright.core.pricing.PriceList;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;
import org.fusewright.orders.StoredOrder.Delivery;
import org.fusewright.orders.store.OrderRow;
import org.fusewright.orders.store.OrderRow.Received;
import org.fusewright.orders.store.OrderStore;
import org.fusewright.quotes.Quotes;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What is needed, what is ordered, and what came. Each change names the version that it starts
 * from: one that somebody else has changed since stays as it is.
 */
@Service
public class Orders {
    private static final int VERSION_DIGITS = 16;

    private final OrderStore store;
    private final Quotes quotes;
    private final Catalogs catalogs;
    private final StockLedger ledger;
    private final TransactionTemplate transaction;
    private final TransactionTemplate reading;
    private final Clock clock;
    private final String shop;

    @Autowired
    Orders(
            OrderStore store,
            Quotes quotes,
            Catalogs catalogs,
            StockLedger ledger,
            PlatformTransactionManager transactions,
            @Value("${fusewright.shop:The shop}") String shop) {
        this(store, quotes, catalogs, ledger, transactions, Clock.systemDefaultZone(), shop);
    }

    Orders(
            OrderStore store,
            Quotes quotes,
            Catalogs catalogs,
            StockLedger ledger,
            PlatformTransactionManager transactions,
            Clock clock,
            String shop) {
        this.store = store;
        this.quotes = quotes;
        this.catalogs = catalogs;
        this.ledger = ledger;
        this.transaction = new TransactionTemplate(transactions);
        this.reading = new TransactionTemplate(transactions);
        reading.setReadOnly(true);
        reading.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
        this.clock = clock;
        this.shop = shop;
    }

    /**
     * What each part is needed for, by part number: those that quotes need or that have a minimum.
     *
     * @param wirePercent waste on top of the wire that quotes need
     */
    public List<PartDemand> listDemand(BigDecimal wirePercent) {
        return reading.execute(_ -> demand(wirePercent));
    }

    private List<PartDemand> demand(BigDecimal wirePercent) {
        Map<PartNumber, BigDecimal> needed = quotes.sumAcceptedDemand();
        Map<PartNumber, BigDecimal> ordered = store.sumOpen();
        Map<PartNumber, StockLevel> stock = new HashMap<>();
        catalogs.listStock().forEach(level -> stock.put(level.part(), level));
        CatalogContent content = catalogs.currentContent();
        Set<PartNumber> parts = new TreeSet<>(needed.keySet());
        stock.values().stream()
                .filter(level -> level.minimum().signum() > 0)
                .forEach(level -> parts.add(level.part()));
        return parts.stream()
                .map(
                        part -> {
                            BigDecimal need = needed.getOrDefault(part, BigDecimal.ZERO);
                            StockLevel level =
                                    stock.getOrDefault(
                                            part,
                                            new StockLevel(part, BigDecimal.ZERO, BigDecimal.ZERO));
                            boolean wire = isWire(content, part);
                            return new PartDemand(
                                    part,
                                    need,
                                    wire ? PartDemand.wasteOf(need, wirePercent) : BigDecimal.ZERO,
                                    level.minimum(),
                                    level.onHand(),
                                    ordered.getOrDefault(part, BigDecimal.ZERO));
                        })
                .toList();
    }

    private static boolean isWire(CatalogContent content, PartNumber part) {
        return content.catalog().findPart(part).filter(Wire.class::isInstance).isPresent();
    }

    /** The currencies in which there are offers. */
    public List<CurrencyUnit> listCurrencies() {
        return PriceList.listCurrencies(catalogs.currentContent().catalog());
    }

    public LocalDate today() {
        return LocalDate.now(clock);
    }

    /** What is needed now, and the cheapest way to buy it. */
    public Proposal propose(ProposalWishes wishes) {
        return reading.execute(_ -> proposal(wishes));
    }

    private Proposal proposal(ProposalWishes wishes) {
        CatalogContent content = catalogs.currentContent();
        List<PartDemand> demands = demand(wishes.wirePercent());
        List<Text> notes = new ArrayList<>();
        Map<String, Money> minimums = new HashMap<>();
        for (Supplier supplier : content.suppliers()) {
            supplier.minimumOrder()
                    .ifPresent(
                            least -> {
                                if (least.getCurrencyUnit().equals(wishes.currency())) {
                                    minimums.put(supplier.code(), least);
                                } else {
                                    notes.add(
                                            Phrase.of(
                                                    "order.note.minimum-left-aside",
                                                    supplier.title(),
                                                    least.toString()));
                                }
                            });
        }
        OptionalInt daysLeft =
                wishes.wantedBy().isPresent()
                        ? OptionalInt.of(
                                (int)
                                        ChronoUnit.DAYS.between(
                                                today(), wishes.wantedBy().orElseThrow()))
                        : OptionalInt.empty();
        List<Need> needs =
                demands.stream()
                        .filter(demand -> demand.toBuy() > 0)
                        .map(demand -> new Need(demand.part(), demand.toBuy()))
                        .toList();
        Cover cover =
                CoverPlanner.plan(
                        new CoverTask(
                                wishes.currency(),
                                needs,
                                content.catalog().listOffers(),
                                minimums,
                                daysLeft));
        Map<PartNumber, String> titles = new HashMap<>();
        for (PartDemand demand : demands) {
            content.catalog()
                    .findPart(demand.part())
                    .ifPresent(part -> titles.put(part.number(), part.title()));
        }
        Map<String, String> suppliers = new HashMap<>();
        content.suppliers().forEach(one -> suppliers.put(one.code(), one.title()));
        return new Proposal(
                wishes, demands, cover, notes, titles, suppliers, version(wishes, demands, cover));
    }

    private static String version(ProposalWishes wishes, List<PartDemand> demands, Cover cover) {
        try {
            byte[] hash =
                    MessageDigest.getInstance("SHA-256")
                            .digest(
                                    List.of(wishes, demands, cover)
                                            .toString()
                                            .getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(hash).substring(0, VERSION_DIGITS);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /**
     * Makes a draft for each supplier of the proposal.
     *
     * @param version the proposal that was looked at
     * @throws StaleOrderException when it is another one by now
     * @throws OrderRefusedException when there is nothing to order
     */
    public List<StoredOrder> createDrafts(ProposalWishes wishes, String version) {
        return transaction.execute(
                _ -> {
                    store.lockDrafting();
                    Proposal proposal = proposal(wishes);
                    if (!proposal.version().equals(version)) {
                        throw new StaleOrderException("the proposal");
                    }
                    if (proposal.cover().lines().isEmpty()) {
                        throw new OrderRefusedException("order.refused.nothing");
                    }
                    return insertDrafts(proposal);
                });
    }

    private List<StoredOrder> insertDrafts(Proposal proposal) {
        CatalogContent content = catalogs.currentContent();
        Map<String, List<CoverLine>> bySupplier =
                proposal.cover().lines().stream()
                        .collect(
                                Collectors.groupingBy(
                                        line -> line.offer().supplier(),
                                        TreeMap::new,
                                        Collectors.toList()));
        List<StoredOrder> drafts = new ArrayList<>();
        bySupplier.forEach(
                (code, lines) -> {
                    String name =
                            content.suppliers().stream()
                                    .filter(supplier -> supplier.code().equals(code))
                                    .map(Supplier::title)
                                    .findFirst()
                                    .orElse(code);
                    int year = today().getYear();
                    String number = "P-%d-%04d".formatted(year, store.nextNumber(year));
                    ProposalWishes wishes = proposal.wishes();
                    long id =
                            store.insert(
                                    number,
                                    code,
                                    name,
                                    wishes.currency().getCode(),
                                    wishes.wantedBy().orElse(null),
                                    now());
                    int place = 0;
                    for (CoverLine line : lines) {
                        store.insertLine(id, row(content, ++place, line));
                    }
                    drafts.add(stored(id));
                });
        return drafts;
    }

    private static OrderRow.Line row(CatalogContent content, int place, CoverLine line) {
        Part part = content.catalog().getPart(line.offer().part());
        return new OrderRow.Line(
                place,
                part.number().value(),
                part.title(),
                part instanceof Wire ? "m" : "each",
                line.offer().packSize(),
                line.quantity(),
                line.offer().unitPriceAt(line.quantity()).getAmount(),
                line.extended().getAmount());
    }

    /**
     * Orders, newest first.
     *
     * @param after where an earlier list ended
     */
    public List<OrderSummary> list(OptionalLong after, int limit) {
        return store.list(after.orElse(Long.MAX_VALUE), limit).stream()
                .map(
                        row ->
                                new OrderSummary(
                                        row.order().id(),
                                        row.order().number(),
                                        state(row.order()),
                                        row.order().supplierName(),
                                        Optional.ofNullable(row.order().orderedOn()),
                                        Optional.ofNullable(row.order().wantedBy()),
                                        row.lines(),
                                        money(row.order().currency(), row.total())))
                .toList();
    }

    /**
     * @throws UnknownOrderException when there is none
     */
    public StoredOrder get(long id) {
        return reading.execute(_ -> stored(id));
    }

    /**
     * An order's paper: as it went out, or of a draft as it stands.
     *
     * @throws OrderRefusedException for the XML of a draft, which has no date yet
     */
    public byte[] paper(long id, OrderPapers paper) {
        StoredOrder order = get(id);
        if (paper == OrderPapers.UBL && order.order().orderedOn().isEmpty()) {
            throw new OrderRefusedException("order.refused.xml-of-draft");
        }
        return store.findPaper(id, paper.column()).orElseGet(() -> paper.print(order.order()));
    }

    /**
     * Sends a draft: from then on the order and its papers are frozen.
     *
     * @throws StaleOrderException when it has another version by now
     * @throws OrderRefusedException when it is no draft
     */
    public StoredOrder send(long id, long version) {
        return transaction.execute(
                _ -> {
                    StoredOrder order = held(id, version);
                    if (order.state() != OrderState.DRAFT) {
                        throw new OrderRefusedException("order.refused.send");
                    }
                    LocalDate today = today();
                    PurchaseOrder sent = sentOn(order.order(), today);
                    store.setSent(id, today, OrderPapers.printAll(sent), now());
                    return stored(id);
                });
    }

    private static PurchaseOrder sentOn(PurchaseOrder order, LocalDate day) {
        return new PurchaseOrder(
                order.number(),
                Optional.of(day),
                order.wantedBy(),
                order.buyer(),
                order.supplierCode(),
                order.supplierName(),
                order.currency(),
                order.lines());
    }

    /** Deletes a draft; as for {@link #send}. */
    public void discard(long id, long version) {
        transaction.executeWithoutResult(
                _ -> {
                    if (held(id, version).state() != OrderState.DRAFT) {
                        throw new OrderRefusedException("order.refused.discard");
                    }
                    store.delete(id);
                });
    }

    /** Gives up what has not come of a sent order; as for {@link #send}. */
    public StoredOrder cancel(long id, long version) {
        return transaction.execute(
                _ -> {
                    if (!held(id, version).state().isOpen()) {
                        throw new OrderRefusedException("order.refused.cancel");
                    }
                    store.setState(id, OrderState.CANCELLED.code(), now());
                    return stored(id);
                });
    }

    /**
     * Receives a delivery, whole or part: its pieces and metres go to stock. The same delivery note
     * is booked once, however often it is sent.
     *
     * @param note the number of the delivery note
     * @throws StaleOrderException when the order has another version by now
     * @throws OrderRefusedException when it is not sent, or has that note with other goods
     * @throws MalformedJobException with all lines that were not ordered, or not so many
     */
    public StoredOrder receive(long id, long version, String note, List<ReceivedLine> lines) {
        return transaction.execute(
                _ -> {
                    StoredOrder order = lock(id);
                    Map<Integer, BigDecimal> came = match(order, lines);
                    Optional<Delivery> before =
                            order.deliveries().stream()
                                    .filter(d -> d.note().equals(note))
                                    .findAny();
                    if (before.isPresent()) {
                        return repeated(order, before.get(), came);
                    }
                    check(order, version);
                    if (!order.state().isOpen()) {
                        throw new OrderRefusedException(
                                "order.refused.receive", order.state().title());
                    }
                    rejectTooMuch(order, lines);
                    book(order, note, came);
                    return stored(id);
                });
    }

    private static StoredOrder repeated(
            StoredOrder order, Delivery before, Map<Integer, BigDecimal> came) {
        boolean same =
                before.lines().keySet().equals(came.keySet())
                        && came.entrySet().stream()
                                .allMatch(
                                        line ->
                                                before.lines()
                                                                .get(line.getKey())
                                                                .compareTo(line.getValue())
                                                        == 0);
        if (same) {
            return order;
        }
        throw new OrderRefusedException("order.refused.note-booked", before.note());
    }

    /** What came by line of the order, a part on several lines filling one after the other. */
    private static Map<Integer, BigDecimal> match(StoredOrder order, List<ReceivedLine> lines) {
        List<JobProblem> problems = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        Map<Integer, BigDecimal> came = new LinkedHashMap<>();
        for (int i = 0; i < lines.size(); i++) {
            ReceivedLine received = lines.get(i);
            List<OrderLine> ordered = linesOf(order, received.part());
            if (ordered.isEmpty()) {
                problems.add(
                        JobProblem.of(
                                "/lines/" + i + "/part",
                                "wrong.never-ordered",
                                received.part(),
                                order.order().number()));
            } else if (!seen.add(received.part())) {
                problems.add(JobProblem.of("/lines/" + i + "/part", "wrong.stands-already"));
            } else {
                spread(order, ordered, received.quantity(), came);
            }
        }
        if (!problems.isEmpty()) {
            throw new MalformedJobException(problems);
        }
        return came;
    }

    private static List<OrderLine> linesOf(StoredOrder order, String part) {
        return order.order().lines().stream()
                .filter(line -> line.part().value().equals(part))
                .toList();
    }

    private static void spread(
            StoredOrder order,
            List<OrderLine> ordered,
            BigDecimal quantity,
            Map<Integer, BigDecimal> came) {
        BigDecimal left = quantity;
        for (OrderLine line : ordered) {
            BigDecimal taken = line.equals(ordered.getLast()) ? left : left.min(order.openOf(line));
            if (taken.signum() > 0) {
                came.put(line.line(), taken);
                left = left.subtract(taken);
            }
        }
    }

    private static void rejectTooMuch(StoredOrder order, List<ReceivedLine> lines) {
        List<JobProblem> problems = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            BigDecimal open =
                    linesOf(order, lines.get(i).part()).stream()
                            .map(order::openOf)
                            .reduce(BigDecimal.ZERO, BigDecimal::add);
            if (lines.get(i).quantity().compareTo(open) > 0) {
                problems.add(
                        JobProblem.of(
                                "/lines/" + i + "/quantity",
                                "wrong.too-much-came",
                                plain(lines.get(i).quantity()),
                                lines.get(i).part(),
                                plain(open)));
            }
        }
        if (!problems.isEmpty()) {
            throw new MalformedJobException(problems);
        }
    }

    private static Text plain(BigDecimal quantity) {
        return new Amount(quantity.doubleValue(), Unit.NONE, 3);
    }

    private void book(StoredOrder order, String note, Map<Integer, BigDecimal> came) {
        Instant now = now();
        long delivery = store.insertDelivery(order.id(), note, now);
        List<StockMove> moves = new ArrayList<>();
        boolean complete = true;
        for (OrderLine line : order.order().lines()) {
            BigDecimal quantity = came.getOrDefault(line.line(), BigDecimal.ZERO);
            if (quantity.signum() > 0) {
                store.insertDeliveryLine(delivery, order.id(), line.line(), quantity);
                moves.add(
                        new StockMove(
                                line.part(),
                                quantity,
                                StockMove.Reason.DELIVERY,
                                order.order().number() + " " + note));
            }
            complete &= order.openOf(line).compareTo(quantity) <= 0;
        }
        ledger.book(moves, now);
        OrderState state = complete ? OrderState.RECEIVED : OrderState.PARTLY_RECEIVED;
        store.setState(order.id(), state.code(), now);
    }

    /** The order, held so that others who change it wait, in the version that was looked at. */
    private StoredOrder held(long id, long version) {
        StoredOrder order = lock(id);
        check(order, version);
        return order;
    }

    private StoredOrder lock(long id) {
        store.findForUpdate(id).orElseThrow(() -> new UnknownOrderException(id));
        return stored(id);
    }

    private static void check(StoredOrder order, long version) {
        if (order.version() != version) {
            throw new StaleOrderException("order " + order.id());
        }
    }

    private StoredOrder stored(long id) {
        OrderRow row = store.find(id).orElseThrow(() -> new UnknownOrderException(id));
        CurrencyUnit currency = CurrencyUnit.of(row.currency());
        List<OrderLine> lines =
                store.listLines(id).stream()
                        .map(
                                line ->
                                        new OrderLine(
                                                line.line(),
                                                new PartNumber(line.part()),
                                                line.title(),
                                                line.unit(),
                                                line.packSize(),
                                                line.quantity(),
                                                price(currency, line.unitPrice()),
                                                money(row.currency(), line.price())))
                        .toList();
        Map<Integer, BigDecimal> received = new HashMap<>();
        Map<Long, Delivery> deliveries = new LinkedHashMap<>();
        for (Received came : store.listReceived(id)) {
            received.merge(came.line(), came.quantity(), BigDecimal::add);
            deliveries
                    .computeIfAbsent(
                            came.delivery(),
                            _ -> new Delivery(came.note(), came.receivedAt(), new TreeMap<>()))
                    .lines()
                    .put(came.line(), came.quantity());
        }
        PurchaseOrder order =
                new PurchaseOrder(
                        row.number(),
                        Optional.ofNullable(row.orderedOn()),
                        Optional.ofNullable(row.wantedBy()),
                        shop,
                        row.supplierCode(),
                        row.supplierName(),
                        currency,
                        lines);
        return new StoredOrder(
                id,
                row.version(),
                state(row),
                order,
                received,
                List.copyOf(deliveries.values()),
                row.changedAt());
    }

    private static OrderState state(OrderRow row) {
        return OrderState.parse(row.state())
                .orElseThrow(() -> new IllegalStateException("unknown state " + row.state()));
    }

    private static BigMoney price(CurrencyUnit currency, BigDecimal amount) {
        BigDecimal plain = amount.stripTrailingZeros();
        return BigMoney.of(
                currency, plain.setScale(Math.max(plain.scale(), currency.getDecimalPlaces())));
    }

    private static Money money(String currency, BigDecimal amount) {
        return Money.of(CurrencyUnit.of(currency), amount, RoundingMode.HALF_UP);
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
