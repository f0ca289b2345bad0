package org.fusewright.catalogs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.fusewright.ServiceTest;
import org.fusewright.TestDatabase;
import org.fusewright.catalogs.store.CatalogStore;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.PartNumber;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.PlatformTransactionManager;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;

/** The catalog in a real PostgreSQL: replaced whole or not at all. */
@ServiceTest
class CatalogsTest {

    private static final List<String> TABLES =
            List.of(
                    "catalog_release",
                    "part",
                    "supplier",
                    "offer",
                    "stock_entry",
                    "labour_rate",
                    "mark_up",
                    "shipping_class",
                    "tax_kind");

    @Autowired private Catalogs catalogs;
    @Autowired private CatalogStore store;
    @Autowired private PlatformTransactionManager transactions;

    @BeforeEach
    @AfterEach
    void putTheSampleInForce() {
        catalogs.importCatalog(new SampleFiles().read(), versionInForce());
    }

    @Test
    void keepsEveryPartOfferSupplierTaskAndStockLevel() {
        CatalogContent written = new SampleFiles().read();
        CatalogContent read = catalogs.currentContent();
        assertThat(read.catalog().version()).isEqualTo(written.catalog().version());
        assertThat(read.catalog().listParts())
                .containsExactlyElementsOf(written.catalog().listParts());
        assertThat(read.catalog().listOffers())
                .containsExactlyElementsOf(written.catalog().listOffers());
        assertThat(read.suppliers()).isEqualTo(written.suppliers());
        assertThat(read.labour()).isEqualTo(written.labour());
        assertThat(read.markUps()).isEqualTo(written.markUps());
        assertThat(read.shipping()).isEqualTo(written.shipping());
        assertThat(read.taxes()).isEqualTo(written.taxes());
        assertThat(catalogs.listStock())
                .containsExactlyInAnyOrderElementsOf(written.stock().orElseThrow());
    }

    @Test
    void keepsTheVersionWhenTheSameFilesAreImportedAgain() {
        String before = catalogs.current().version();
        CatalogImport again = catalogs.importCatalog(new SampleFiles().read(), versionInForce());
        assertThat(again.version()).isEqualTo(before);
        assertThat(again.previousVersion()).contains(before);
        assertThat(again.added()).isEmpty();
        assertThat(again.changed()).isEmpty();
        assertThat(again.removed()).isEmpty();
        assertThat(again.repriced()).isEmpty();
        assertThat(catalogs.current().version()).isEqualTo(before);
    }

    @Test
    void saysWhatAnImportAddsChangesAndRemoves() {
        CatalogImport result = catalogs.importCatalog(changedSample(), versionInForce());
        assertThat(result.added()).containsExactly(new PartNumber("LTM-0.5-PK"));
        assertThat(result.changed()).containsExactly(new PartNumber("WDB-4"));
        assertThat(result.removed()).containsExactly(new PartNumber("LTM-0.5-BK"));
        assertThat(result.repriced()).containsExactly(new PartNumber("WDC-3-LOW"));
        assertThat(result.counts()).containsEntry(PartKind.BLOCK, 3);
    }

    /** One wire is another, the four-position block is heavier, and a cap comes later. */
    private static CatalogContent changedSample() {
        SampleFiles files = new SampleFiles();
        files.texts().replaceAll((name, text) -> text.replace("LTM-0.5-BK", "LTM-0.5-PK"));
        files.replaceFirst("blocks.csv", "Wendlebrook,26.8", "Wendlebrook,27");
        String offers = files.texts().get("offers.csv");
        String offer =
                offers.lines()
                        .filter(l -> l.startsWith("SKERROW,WDC-3-LOW,"))
                        .findFirst()
                        .orElseThrow();
        return files.replaceFirst("offers.csv", offer, offer + "0").read();
    }

    @Test
    void changesNothingWhenTheImportBreaksAtItsLastTable() throws SQLException {
        List<String> before = contentOfAllTables();
        // The release is written last; everything else stands by then.
        execute(
                "alter table catalog_release add constraint broken check (imported_at is null) not"
                        + " valid");
        try {
            assertThatExceptionOfType(RuntimeException.class)
                    .isThrownBy(() -> catalogs.importCatalog(changedSample(), versionInForce()))
                    .withStackTraceContaining("broken");
        } finally {
            execute("alter table catalog_release drop constraint broken");
        }
        assertThat(contentOfAllTables()).isEqualTo(before);
        assertThat(catalogs.current().findPart(new PartNumber("LTM-0.5-PK"))).isEmpty();
    }

    @Test
    void changesNothingWhenOnlyTried() throws SQLException {
        List<String> before = contentOfAllTables();
        CatalogImport result = catalogs.tryImport(changedSample());
        assertThat(result.added()).containsExactly(new PartNumber("LTM-0.5-PK"));
        assertThat(contentOfAllTables()).isEqualTo(before);
        assertThat(catalogs.current().version()).isEqualTo(result.previousVersion().orElseThrow());
    }

    @Test
    void rejectsAnImportMadeAgainstAnotherVersion() throws SQLException {
        List<String> before = contentOfAllTables();
        assertThatExceptionOfType(StaleCatalog.class)
                .isThrownBy(
                        () -> catalogs.importCatalog(changedSample(), Optional.of("0123456789")))
                .withMessageContaining(catalogs.current().version());
        assertThat(contentOfAllTables()).isEqualTo(before);
    }

    @Test
    void keepsTheStockWhenTheImportBringsNone() {
        SampleFiles files = new SampleFiles();
        files.texts().remove("stock.csv");
        List<StockLevel> before = catalogs.listStock();
        catalogs.importCatalog(files.read(), versionInForce());
        assertThat(catalogs.listStock())
                .hasSize(before.size())
                .containsExactlyInAnyOrderElementsOf(before);
    }

    @Test
    void keepsMarkUpsShippingAndTaxesWhenTheImportBringsNone() {
        CatalogContent before = catalogs.currentContent();
        SampleFiles files = new SampleFiles();
        List.of("margins.csv", "shipping.csv", "taxes.csv").forEach(files.texts()::remove);
        files.texts().replaceAll((name, text) -> text.replace("WDB-8", "WDB-9"));
        catalogs.importCatalog(files.read(), versionInForce());
        CatalogContent after = catalogs.currentContent();
        assertThat(after.shipping()).isEqualTo(before.shipping());
        assertThat(after.taxes()).isEqualTo(before.taxes());
        // The mark-up of a part that is gone goes with it.
        assertThat(after.markUps().orElseThrow())
                .hasSize(6)
                .containsExactlyElementsOf(
                        before.markUps().orElseThrow().stream()
                                .filter(row -> row.part().isEmpty())
                                .toList());
    }

    @Test
    void noticesTheImportOfAnotherServiceWithinASecond() {
        AtomicReference<Instant> now = new AtomicReference<>(Instant.EPOCH);
        Catalogs other = new Catalogs(store, transactions, now::get);
        Catalog first = other.current();
        catalogs.importCatalog(changedSample(), versionInForce());
        String imported = catalogs.current().version();

        now.set(Instant.EPOCH.plus(Duration.ofMillis(999)));
        assertThat(other.current()).isSameAs(first);
        now.set(Instant.EPOCH.plus(Duration.ofSeconds(1)));
        assertThat(other.current().version()).isEqualTo(imported).isNotEqualTo(first.version());
    }

    @Test
    void findsPartsByAllWordsPageByPage() {
        Set<PartKind> all = Set.of(PartKind.values());
        List<PartNumber> found = new ArrayList<>();
        Optional<PartNumber> after = Optional.empty();
        do {
            var page = catalogs.listParts(all, "1.5 MM2 wire", after, 4);
            after = page.stream().map(part -> part.number()).reduce((a, b) -> b);
            page.forEach(part -> found.add(part.number()));
        } while (after.isPresent());
        assertThat(found)
                .hasSize(11)
                .isSorted()
                .doesNotHaveDuplicates()
                .allMatch(number -> number.value().startsWith("LTM-1.5-"));
        assertThat(catalogs.listParts(Set.of(PartKind.SEAL), "", Optional.empty(), 100)).hasSize(6);
    }

    private Optional<String> versionInForce() {
        return catalogs.findContent().map(content -> content.catalog().version());
    }

    private static List<String> contentOfAllTables() throws SQLException {
        List<String> content = new ArrayList<>();
        try (Connection connection = TestDatabase.connect();
                Statement statement = connection.createStatement()) {
            for (String table : TABLES) {
                try (ResultSet rows =
                        statement.executeQuery(
                                "select row_to_json(t)::text from " + table + " t order by 1")) {
                    while (rows.next()) {
                        content.add(table + " " + rows.getString(1));
                    }
                }
            }
        }
        assertThat(content).hasSizeGreaterThan(1_000);
        return content;
    }

    private static void execute(String command) throws SQLException {
        try (Connection connection = TestDatabase.connect();
                Statement statement = connection.createStatement()) {
            statement.execute(command);
        }
    }
}
