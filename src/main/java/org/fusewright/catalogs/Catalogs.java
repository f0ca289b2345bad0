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
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.ReentrantLock;

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

    private final AtomicReference<@Nullable Known> known = new AtomicReference<>();
    private final Lock loading = new ReentrantLock();

    private record Known(CatalogStore.Loaded loaded, Instant lookedAt, SearchOnce search) {

        Known(CatalogStore.Loaded loaded, Instant lookedAt) {
            this(loaded, lookedAt, new SearchOnce(loaded.content().catalog()));
        }

        boolean isOf(CatalogStore.Release release) {
            return loaded.release().equals(release);
        }

        Known lookedAt(Instant time) {
            return new Known(loaded, time, search);
        }
    }

    /** Kits do not wait for what only those who search need. */
    private static final class SearchOnce {

        private final Catalog catalog;
        private @Nullable PartSearch made;

        SearchOnce(Catalog catalog) {
            this.catalog = catalog;
        }

        synchronized PartSearch get() {
            PartSearch search = made == null ? PartSearch.of(catalog.listParts()) : made;
            made = search;
            return search;
        }
    }

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
        return findContent().orElseThrow(Catalogs::noCatalog);
    }

    private static IllegalStateException noCatalog() {
        return new IllegalStateException("no catalog has been imported");
    }

    public Optional<CatalogContent> findContent() {
        return findKnown().map(inForce -> inForce.loaded().content());
    }

    private Optional<Known> findKnown() {
        Known last = known.get();
        if (last != null && time.instant().isBefore(last.lookedAt().plus(BETWEEN_LOOKS))) {
            return Optional.of(last);
        }
        Optional<Known> found = look(last);
        // Who puts an import in force meanwhile knows better.
        known.compareAndSet(last, found.orElse(null));
        return found;
    }

    private Optional<Known> look(@Nullable Known last) {
        if (last == null) {
            return load();
        }
        try {
            return store.findNewestRelease().filter(last::isOf).isPresent()
                    ? Optional.of(last.lookedAt(time.instant()))
                    : load();
        } catch (DataAccessException | TransactionException unreachable) {
            // Kits need nothing but the catalog: they go on with the one that was in force.
            log.warn("The database cannot be asked for the catalog: {}", unreachable.getMessage());
            return Optional.of(last.lookedAt(time.instant()));
        }
    }

    /** One loads, and those who came meanwhile take what it found. */
    private Optional<Known> load() {
        loading.lock();
        try {
            Known loaded = known.get();
            Optional<CatalogStore.Release> newest = store.findNewestRelease();
            if (loaded != null && newest.filter(loaded::isOf).isPresent()) {
                return Optional.of(loaded.lookedAt(time.instant()));
            }
            Optional<Known> found =
                    store.findCatalog().map(catalog -> new Known(catalog, time.instant()));
            known.compareAndSet(loaded, found.orElse(null));
            return found;
        } finally {
            loading.unlock();
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
        return findKnown()
                .orElseThrow(Catalogs::noCatalog)
                .search()
                .get()
                .list(kinds, query, after, limit);
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

    private record Imported(CatalogImport result, CatalogStore.Loaded inForce) {}

    private CatalogImport importCatalog(
            CatalogContent content, Optional<String> expectedVersion, boolean takeBack) {
        Imported imported =
                Objects.requireNonNull(
                        transaction.execute(
                                status -> {
                                    store.lockForImport();
                                    Optional<Catalog> before = findCatalogInForce();
                                    Optional<String> inForce = before.map(Catalog::version);
                                    if (!takeBack && !inForce.equals(expectedVersion)) {
                                        throw new StaleCatalog(inForce);
                                    }
                                    CatalogStore.Loaded loaded =
                                            store.replace(content, time.instant());
                                    if (takeBack) {
                                        status.setRollbackOnly();
                                    }
                                    return new Imported(CatalogImport.of(content, before), loaded);
                                }));
        if (!takeBack) {
            // Another import may have come behind this one: whoever asks first looks again.
            known.set(new Known(imported.inForce(), Instant.MIN));
        }
        return imported.result();
    }

    /** Within the lock of an import, so that it stays the one in force. */
    private Optional<Catalog> findCatalogInForce() {
        Known last = known.get();
        Optional<CatalogStore.Release> newest = store.findNewestRelease();
        return last != null && newest.filter(last::isOf).isPresent()
                ? Optional.of(last.loaded().content().catalog())
                : store.findCatalog().map(loaded -> loaded.content().catalog());
    }
}
