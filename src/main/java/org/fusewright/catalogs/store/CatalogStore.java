package org.fusewright.catalogs.store;

import jakarta.persistence.EntityManager;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.StockLevel;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.quote.MarkUp;
import org.fusewright.core.quote.ShippingClass;
import org.fusewright.core.quote.TaxKind;
import org.hibernate.Session;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The catalog's rows. Parts and offers are read whole: a catalog fits in memory many times over.
 */
@Repository
public class CatalogStore {

    private static final int ROWS_IN_A_BATCH = 200;
    private static final List<String> ROWS_OF_AN_IMPORT =
            List.of(
                    "StockRow",
                    "OfferRow",
                    "PartRow",
                    "SupplierRow",
                    "LabourRow",
                    "MarkUpRow",
                    "ShippingRow",
                    "TaxRow");

    private final EntityManager entities;
    private final StockMoves moves;

    CatalogStore(EntityManager entities, StockMoves moves) {
        this.entities = entities;
        this.moves = moves;
    }

    /** One import: its number, rising, and the version that it brought. */
    public record Release(long number, String version) {}

    /** The import in force; empty before the first one. */
    @Transactional(readOnly = true)
    public Optional<Release> findNewestRelease() {
        return entities
                .createQuery("from ReleaseRow order by id desc", ReleaseRow.class)
                .setMaxResults(1)
                .getResultList()
                .stream()
                .findFirst()
                .map(row -> new Release(row.id, row.version));
    }

    /** Everything of the import in force but the stock; empty before the first one. */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Optional<Loaded> findCatalog() {
        return findNewestRelease().map(release -> new Loaded(release, load(release.version())));
    }

    /** A catalog and the import that brought it. */
    public record Loaded(Release release, CatalogContent content) {}

    private CatalogContent load(String version) {
        List<Part> parts = listRows(PartRow.class).stream().map(PartRow::toPart).toList();
        List<Offer> offers =
                entities
                        .createQuery("from OfferRow offer join fetch offer.prices", OfferRow.class)
                        .getResultList()
                        .stream()
                        .map(OfferRow::toOffer)
                        .toList();
        return new CatalogContent(
                Catalog.of(version, parts, offers),
                listRows(SupplierRow.class).stream().map(SupplierRow::toSupplier).toList(),
                listRows(LabourRow.class).stream().map(LabourRow::toTask).toList(),
                Optional.empty(),
                Optional.of(listMarkUps()),
                Optional.of(listShipping()),
                Optional.of(listTaxes()));
    }

    @Transactional(readOnly = true)
    public List<StockLevel> listStock() {
        Map<PartNumber, BigDecimal> onHand = moves.sum();
        Map<PartNumber, BigDecimal> minimums = new TreeMap<>();
        listPartNumbers()
                .forEach(
                        part -> {
                            if (onHand.containsKey(part)) {
                                minimums.put(part, BigDecimal.ZERO);
                            }
                        });
        listRows(StockRow.class).forEach(row -> minimums.put(row.part(), row.minimum()));
        return minimums.entrySet().stream()
                .map(
                        entry ->
                                new StockLevel(
                                        entry.getKey(),
                                        onHand.getOrDefault(entry.getKey(), BigDecimal.ZERO),
                                        entry.getValue()))
                .toList();
    }

    private List<PartNumber> listPartNumbers() {
        return entities
                .createQuery("select number from PartRow", String.class)
                .getResultList()
                .stream()
                .map(PartNumber::new)
                .toList();
    }

    /** Keeps other imports out until the transaction ends; readers are not held up. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void lockForImport() {
        entities.createNativeQuery("lock table catalog_release in exclusive mode").executeUpdate();
    }

    /**
     * Puts this catalog in the place of the one in force. Parts that it does not hold are removed,
     * with their stock; what it does not bring of stock, mark-ups, shipping and taxes is left as it
     * is for the parts that stay.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void replace(CatalogContent content, Instant importedAt) {
        List<StockLevel> stock = content.stock().orElseGet(() -> listStockOf(content.catalog()));
        List<MarkUp> markUps = content.markUps().orElseGet(() -> listMarkUpsOf(content.catalog()));
        List<ShippingClass> shipping = content.shipping().orElseGet(this::listShipping);
        List<TaxKind> taxes = content.taxes().orElseGet(this::listTaxes);
        for (String row : ROWS_OF_AN_IMPORT) {
            entities.createQuery("delete from " + row).executeUpdate();
        }
        entities.clear();
        entities.unwrap(Session.class).setJdbcBatchSize(ROWS_IN_A_BATCH);
        persistAll(content.catalog().listParts().stream().map(PartRow::new).toList());
        persistAll(content.suppliers().stream().map(SupplierRow::new).toList());
        long place = 0;
        for (Offer offer : content.catalog().listOffers()) {
            entities.persist(new OfferRow(++place, offer));
        }
        persistAll(content.labour().stream().map(LabourRow::new).toList());
        persistAll(stock.stream().map(StockRow::new).toList());
        moves.remove(
                content.catalog().listParts().stream()
                        .map(Part::number)
                        .collect(Collectors.toSet()),
                importedAt);
        content.stock().ifPresent(counted -> moves.takeStock(counted, importedAt));
        long markUp = 0;
        for (MarkUp row : markUps) {
            entities.persist(new MarkUpRow(++markUp, row));
        }
        persistAll(shipping.stream().map(ShippingRow::new).toList());
        persistAll(taxes.stream().map(TaxRow::new).toList());
        entities.persist(new ReleaseRow(content.catalog().version(), importedAt));
        entities.flush();
    }

    private List<StockLevel> listStockOf(Catalog catalog) {
        return listStock().stream()
                .filter(level -> catalog.findPart(level.part()).isPresent())
                .toList();
    }

    private List<MarkUp> listMarkUpsOf(Catalog catalog) {
        return listMarkUps().stream()
                .filter(
                        row ->
                                row.part()
                                        .map(catalog::findPart)
                                        .map(Optional::isPresent)
                                        .orElse(true))
                .toList();
    }

    private List<MarkUp> listMarkUps() {
        return listRows(MarkUpRow.class).stream().map(MarkUpRow::toMarkUp).toList();
    }

    private List<ShippingClass> listShipping() {
        return listRows(ShippingRow.class).stream().map(ShippingRow::toClass).toList();
    }

    private List<TaxKind> listTaxes() {
        return listRows(TaxRow.class).stream().map(TaxRow::toKind).toList();
    }

    private void persistAll(Collection<?> rows) {
        rows.forEach(entities::persist);
    }

    private <T> List<T> listRows(Class<T> type) {
        return entities.createQuery("from " + type.getSimpleName(), type).getResultList();
    }
}
