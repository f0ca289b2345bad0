package org.fusewright.catalogs.load;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.CatalogRejected;
import org.fusewright.catalogs.LabourTask;
import org.fusewright.catalogs.PartKind;
import org.fusewright.catalogs.StockLevel;
import org.fusewright.catalogs.Supplier;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;

/**
 * Makes a catalog of its files: all of it, or all the errors. Every file must be there but {@code
 * stock.csv}: without it, the import leaves the stock alone.
 */
public final class CatalogReader {

    private static final String SUPPLIERS = "suppliers.csv";
    private static final String OFFERS = "offers.csv";
    private static final String STOCK = "stock.csv";
    private static final String LABOUR = "labour.csv";
    private static final int HIGHEST_QUANTITY = 10_000_000;
    private static final int LONGEST_LEAD_TIME_DAYS = 1_000;

    private final CatalogFiles files;
    private final Problems problems = new Problems();
    private final References references = new References();
    private boolean allWhole = true;

    private CatalogReader(CatalogFiles files) {
        this.files = files;
    }

    /**
     * @throws CatalogRejected with every error in the files
     */
    public static CatalogContent read(CatalogFiles files) {
        return new CatalogReader(files).read();
    }

    private CatalogContent read() {
        rejectUnknownFiles();
        List<Part> parts = new ArrayList<>();
        for (PartKind kind : PartKind.values()) {
            PartFile file = PartFile.of(kind);
            parts.addAll(
                    readAll(
                            file.name(),
                            file.columns(),
                            file.optionalColumns(),
                            row -> {
                                references.declarePart(row, kind);
                                return file.readPart(row, references);
                            }));
        }
        List<Supplier> suppliers =
                readAll(SUPPLIERS, List.of("supplier", "title"), this::readSupplier);
        List<Offer> offers =
                readAll(
                        OFFERS,
                        List.of(
                                "supplier",
                                "part",
                                "packSize",
                                "currency",
                                "breaks",
                                "leadTimeDays"),
                        this::readOffer);
        List<LabourTask> labour =
                readAll(
                        LABOUR,
                        List.of("code", "title", "minutes", "hourlyRate", "currency"),
                        this::readLabourTask);
        Optional<List<StockLevel>> stock =
                files.findContent(STOCK)
                        .map(
                                _ ->
                                        readAll(
                                                STOCK,
                                                List.of("part", "onHand", "minimum"),
                                                this::readStockLevel));
        // A row that could not be read may hold the very name that another row asks for.
        if (allWhole) {
            references.check();
        }
        problems.throwIfAny();
        String version = CatalogVersion.of(parts, offers, suppliers, labour);
        return new CatalogContent(Catalog.of(version, parts, offers), suppliers, labour, stock);
    }

    private void rejectUnknownFiles() {
        Set<String> known = new TreeSet<>(List.of(SUPPLIERS, OFFERS, STOCK, LABOUR));
        for (PartKind kind : PartKind.values()) {
            known.add(PartFile.of(kind).name());
        }
        for (String name : files.listNames()) {
            if (!known.contains(name)) {
                String allowed = "unknown file; allowed are " + String.join(", ", known);
                problems.add(name, 0, "", "", allowed);
            }
        }
    }

    private interface RowReader<T> {
        Optional<T> read(Row row);
    }

    private <T> List<T> readAll(String file, List<String> columns, RowReader<T> reader) {
        return readAll(file, columns, Set.of(), reader);
    }

    private <T> List<T> readAll(
            String file, List<String> columns, Set<String> optionalColumns, RowReader<T> reader) {
        List<T> all = new ArrayList<>();
        Sheet sheet = new Sheet(file, columns, optionalColumns, problems);
        files.findContent(file)
                .ifPresentOrElse(
                        content -> sheet.read(content, row -> reader.read(row).ifPresent(all::add)),
                        sheet::rejectMissing);
        allWhole &= sheet.isWhole();
        return all;
    }

    private Optional<Supplier> readSupplier(Row row) {
        references.declare(row, "supplier", "supplier", row.cell("supplier"));
        return row.build(() -> new Supplier(row.text("supplier"), row.text("title")));
    }

    private Optional<Offer> readOffer(Row row) {
        references.needName(row, "supplier", "supplier");
        PartNumber part = row.partNumber("part");
        references.needPart(row, "part", part, EnumSet.allOf(PartKind.class));
        int packSize = row.whole("packSize", 1, HIGHEST_QUANTITY);
        CurrencyUnit currency = row.currency("currency");
        references.declare(
                row,
                "part",
                "offer",
                String.join(" ", row.cell("supplier"), part.value(), currency + " " + packSize));
        int leadTimeDays = row.whole("leadTimeDays", 0, LONGEST_LEAD_TIME_DAYS);
        BiFunction<Integer, BigDecimal, Offer.PriceBreak> priceBreak =
                (from, price) -> new Offer.PriceBreak(from, BigMoney.of(currency, price));
        return row.build(
                () ->
                        row.nested(
                                "breaks",
                                () ->
                                        new Offer(
                                                row.text("supplier"),
                                                part,
                                                packSize,
                                                listBreaks(row, priceBreak),
                                                leadTimeDays),
                                new Offer(
                                        "?",
                                        part,
                                        packSize,
                                        List.of(priceBreak.apply(1, BigDecimal.ZERO)),
                                        leadTimeDays)));
    }

    private static List<Offer.PriceBreak> listBreaks(
            Row row, BiFunction<Integer, BigDecimal, Offer.PriceBreak> priceBreak) {
        return row.listPairs(
                "breaks",
                "quantity=price, such as 1=0.42 50=0.38",
                pair ->
                        priceBreak.apply(
                                pair.leftWhole(1, HIGHEST_QUANTITY),
                                pair.rightDecimal(Range.PRICE)));
    }

    private Optional<StockLevel> readStockLevel(Row row) {
        references.declare(row, "part", "stock of", row.cell("part"));
        PartNumber part = row.partNumber("part");
        references.needPart(row, "part", part, EnumSet.allOf(PartKind.class));
        return row.build(
                () ->
                        new StockLevel(
                                part,
                                row.decimal("onHand", Range.AMOUNT),
                                row.decimal("minimum", Range.AMOUNT)));
    }

    private Optional<LabourTask> readLabourTask(Row row) {
        references.declare(row, "code", "labour", row.cell("code"));
        return row.build(
                () -> {
                    BigDecimal minutes = row.decimal("minutes", Range.MINUTES);
                    BigDecimal hourlyRate = row.decimal("hourlyRate", Range.PRICE);
                    CurrencyUnit currency = row.currency("currency");
                    return new LabourTask(
                            row.text("code"),
                            row.text("title"),
                            minutes,
                            BigMoney.of(currency, hourlyRate));
                });
    }
}
