package org.fusewright.catalogs;

import org.fusewright.catalogs.store.CatalogStore;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionException;
import org.springframework.transaction.support.TransactionTemplate;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The shop's catalog. The one in force is kept in memory; an import by another service on the same
 * database is noticed within a second.
 */
@Service
public class Catalogs {

    private static final Logger log = LoggerFactory.getLogger(Catalogs.class);
    private static final Duration BETWEEN_LOOKS = Duration.ofSeconds(1);

    private final CatalogStore store;
    private final TransactionTemplate transaction;
    private final InstantSource time;

    private volatile @Nullable Known known;

    private record Known(CatalogStore.Loaded loaded, Instant lookedAt) {}

    @Autowired
    Catalogs(CatalogStore store, PlatformTransactionManager transactions) {
        this(store, transactions, InstantSource.system());
    }

    Catalogs(CatalogStore store, PlatformTransactionManager transactions, InstantSource time) {
        this.store = store;
        this.transaction = new TransactionTemplate(transactions);
        this.time = time;
    }

    /**
     * The catalog in force.
     *
     * @throws IllegalStateException before the first import
     */
    public Catalog current() {
        return currentContent().catalog();
    }

    /**
     * The catalog in force with suppliers and labour, without stock.
     *
     * @throws IllegalStateException before the first import
     */
    public CatalogContent currentContent() {
        return findContent()
                .orElseThrow(() -> new IllegalStateException("no catalog has been imported"));
    }

    public Optional<CatalogContent> findContent() {
        Known last = known;
        if (last != null && time.instant().isBefore(last.lookedAt().plus(BETWEEN_LOOKS))) {
            return Optional.of(last.loaded().content());
        }
        Optional<CatalogStore.Loaded> loaded = look(last);
        known = loaded.map(found -> new Known(found, time.instant())).orElse(null);
        return loaded.map(CatalogStore.Loaded::content);
    }

    private Optional<CatalogStore.Loaded> look(@Nullable Known last) {
        if (last == null) {
            return store.findCatalog();
        }
        try {
            return store.findNewestRelease().filter(last.loaded().release()::equals).isPresent()
                    ? Optional.of(last.loaded())
                    : store.findCatalog();
        } catch (DataAccessException | TransactionException unreachable) {
            // Kits need nothing but the catalog: they go on with the one that was in force.
            log.warn("The database cannot be asked for the catalog: {}", unreachable.getMessage());
            return Optional.of(last.loaded());
        }
    }

    /** How many parts of each kind the catalog in force has. */
    public Map<PartKind, Integer> countParts() {
        return CatalogImport.countByKind(current());
    }

    /** What lies on the shelf now, by part number. */
    public List<StockLevel> listStock() {
        return store.listStock();
    }

    /**
     * Looks for parts whose number, title or brand holds all words of the query.
     *
     * @param kinds parts of these kinds only
     * @param after parts behind this number only, to go on from an earlier page
     */
    public List<Part> listParts(
            Set<PartKind> kinds, String query, Optional<PartNumber> after, int limit) {
        List<String> words = List.of(query.toLowerCase(Locale.ROOT).strip().split("\\s+"));
        return current().listParts().stream()
                .filter(part -> after.isEmpty() || part.number().compareTo(after.get()) > 0)
                .filter(part -> kinds.contains(PartKind.of(part)))
                .filter(part -> words.stream().allMatch(searchText(part)::contains))
                .limit(limit)
                .toList();
    }

    private static String searchText(Part part) {
        return String.join("\n", part.number().value(), part.title(), part.brand())
                .toLowerCase(Locale.ROOT);
    }

    /**
     * Puts a catalog in force, all of it or nothing. Parts that it does not hold are removed, with
     * their offers and stock: jobs and everything issued keep what they need of a part themselves.
     * When it brings no stock, the stock of the parts that stay is left as it is.
     *
     * @param expectedVersion the version in force that this import was made against; empty when
     *     there is none
     * @throws StaleCatalog when another version is in force
     */
    public CatalogImport importCatalog(CatalogContent content, Optional<String> expectedVersion) {
        return importCatalog(content, expectedVersion, false);
    }

    /** Does all that an import does, and takes it back. */
    public CatalogImport tryImport(CatalogContent content) {
        return importCatalog(content, Optional.empty(), true);
    }

    private CatalogImport importCatalog(
            CatalogContent content, Optional<String> expectedVersion, boolean takeBack) {
        CatalogImport result =
                transaction.execute(
                        status -> {
                            store.lockForImport();
                            Optional<Catalog> before =
                                    store.findCatalog().map(loaded -> loaded.content().catalog());
                            Optional<String> inForce = before.map(Catalog::version);
                            if (!takeBack && !inForce.equals(expectedVersion)) {
                                throw new StaleCatalog(inForce);
                            }
                            store.replace(content, time.instant());
                            if (takeBack) {
                                status.setRollbackOnly();
                            }
                            return CatalogImport.of(content, before);
                        });
        known = null;
        return result;
    }
}
