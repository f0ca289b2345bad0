package org.fusewright.catalogs.store;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.StockLevel;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.quote.MarkUp;
import org.springframework.jdbc.core.ConnectionCallback;
import org.springframework.jdbc.core.JdbcOperations;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

import java.math.BigDecimal;
import java.sql.Timestamp;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The catalog's rows. Parts and offers are read whole: a catalog fits in memory many times over.
 */
@Repository
public class CatalogStore {

    /** An import may wait for another one, and work on all rows in one statement. */
    private static final Duration PATIENCE = Duration.ofMinutes(15);

    private static final String MEMORY_FOR_SORTING = "64MB";

    private final JdbcOperations jdbc;
    private final CatalogRows rows;
    private final StockMoves moves;

    CatalogStore(JdbcOperations jdbc, StockMoves moves) {
        this.jdbc = jdbc;
        this.rows = new CatalogRows(jdbc);
        this.moves = moves;
    }

    /** One import: its number, rising, and the version that it brought. */
    public record Release(long number, String version) {}

    /** The import in force; empty before the first one. */
    @Transactional(readOnly = true)
    public Optional<Release> findNewestRelease() {
        return jdbc
                .query(
                        "select id, version from catalog_release order by id desc limit 1",
                        (row, _) -> new Release(row.getLong(1), row.getString(2)))
                .stream()
                .findFirst();
    }

    /** Everything of the import in force but the stock; empty before the first one. */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Optional<Loaded> findCatalog() {
        return findNewestRelease().map(release -> new Loaded(release, load(release.version())));
    }

    /** A catalog and the import that brought it. */
    public record Loaded(Release release, CatalogContent content) {}

    private CatalogContent load(String version) {
        return new CatalogContent(
                Catalog.of(version, rows.listParts(), rows.listOffers()),
                rows.listSuppliers(),
                rows.listLabour(),
                Optional.empty(),
                Optional.of(rows.listMarkUps()),
                Optional.of(rows.listShipping()),
                Optional.of(rows.listTaxes()));
    }

    @Transactional(readOnly = true)
    public List<StockLevel> listStock() {
        Map<PartNumber, BigDecimal> onHand = moves.sum();
        Map<PartNumber, BigDecimal> minimums = rows.findMinimums();
        jdbc.queryForList("select number from part", String.class).stream()
                .map(PartNumber::new)
                .filter(onHand::containsKey)
                .forEach(part -> minimums.putIfAbsent(part, BigDecimal.ZERO));
        return minimums.entrySet().stream()
                .map(
                        entry ->
                                new StockLevel(
                                        entry.getKey(),
                                        onHand.getOrDefault(entry.getKey(), BigDecimal.ZERO),
                                        entry.getValue()))
                .toList();
    }

    /**
     * Keeps other imports out until the transaction ends, and waits as long as one takes; readers
     * are not held up.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void lockForImport() {
        jdbc.execute(
                (ConnectionCallback<Void>)
                        connection -> {
                            // The pool sets it back when the transaction is over.
                            connection.setNetworkTimeout(
                                    Runnable::run, Math.toIntExact(PATIENCE.toMillis()));
                            return null;
                        });
        jdbc.execute("set local work_mem = '" + MEMORY_FOR_SORTING + "'");
        // A table that was short until now would be looked through for each row of a long one.
        jdbc.execute("set local enable_nestloop = off");
        jdbc.execute("lock table catalog_release in exclusive mode");
    }

    /**
     * Puts this catalog in the place of the one in force. Parts that it does not hold are removed,
     * with their stock; what it does not bring of stock, mark-ups, shipping and taxes is left as it
     * is for the parts that stay.
     *
     * @return what is in force now, as {@link #findCatalog} would read it
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public Loaded replace(CatalogContent content, Instant importedAt) {
        Catalog catalog = content.catalog();
        CatalogContent whole =
                new CatalogContent(
                        catalog,
                        content.suppliers(),
                        content.labour(),
                        Optional.empty(),
                        content.markUps().or(() -> Optional.of(listMarkUpsOf(catalog))),
                        content.shipping().or(() -> Optional.of(rows.listShipping())),
                        content.taxes().or(() -> Optional.of(rows.listTaxes())));
        List<StockLevel> stock = content.stock().orElseGet(() -> listStockOf(catalog));
        exchange(whole, stock);
        moves.remove(
                catalog.listParts().stream().map(Part::number).collect(Collectors.toSet()),
                importedAt);
        content.stock().ifPresent(counted -> moves.takeStock(counted, importedAt));
        return new Loaded(addRelease(catalog.version(), importedAt), whole);
    }

    private void exchange(CatalogContent whole, List<StockLevel> stock) {
        TableExchange parts = rows.bringParts(whole.catalog().listParts());
        TableExchange suppliers = rows.bringSuppliers(whole.suppliers());
        // Offers and minimums refer to these: what is new comes first, what is gone goes last.
        parts.put();
        suppliers.put();
        List.of(
                        rows.bringOffers(whole.catalog().listOffers()),
                        rows.bringMinimums(stock),
                        rows.bringLabour(whole.labour()),
                        rows.bringMarkUps(whole.markUps().orElseThrow()),
                        rows.bringShipping(whole.shipping().orElseThrow()),
                        rows.bringTaxes(whole.taxes().orElseThrow()))
                .forEach(
                        table -> {
                            table.remove();
                            table.put();
                        });
        parts.remove();
        suppliers.remove();
    }

    private Release addRelease(String version, Instant importedAt) {
        Long number =
                jdbc.queryForObject(
                        "insert into catalog_release (version, imported_at) values (?, ?)"
                                + " returning id",
                        Long.class,
                        version,
                        Timestamp.from(importedAt));
        return new Release(Objects.requireNonNull(number), version);
    }

    private List<StockLevel> listStockOf(Catalog catalog) {
        return listStock().stream()
                .filter(level -> catalog.findPart(level.part()).isPresent())
                .toList();
    }

    private List<MarkUp> listMarkUpsOf(Catalog catalog) {
        return rows.listMarkUps().stream()
                .filter(
                        row ->
                                row.part()
                                        .map(catalog::findPart)
                                        .map(Optional::isPresent)
                                        .orElse(true))
                .toList();
    }
}
