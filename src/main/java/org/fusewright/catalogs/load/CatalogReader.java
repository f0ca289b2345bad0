package org.fusewright.catalogs.load;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.CatalogRejected;
import org.fusewright.catalogs.PartKind;
import org.fusewright.catalogs.StockLevel;
import org.fusewright.catalogs.Supplier;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.quote.LabourTask;
import org.fusewright.core.quote.MarkUp;
import org.fusewright.core.quote.ShippingClass;
import org.fusewright.core.quote.TaxKind;
import org.fusewright.core.words.Phrase;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.stream.Stream;

/**
 * Makes a catalog of its files: all of it, or all the errors. Every file must be there but {@code
 * stock.csv}, {@code margins.csv}, {@code shipping.csv} and {@code taxes.csv}: without one of them,
 * the import leaves what it would replace alone.
 */
public final class CatalogReader {

    private static final String SUPPLIERS = "suppliers.csv";
    private static final String OFFERS = "offers.csv";
    private static final String STOCK = "stock.csv";
    private static final String LABOUR = "labour.csv";
    private static final String MARGINS = "margins.csv";
    private static final String SHIPPING = "shipping.csv";
    private static final String TAXES = "taxes.csv";
    private static final List<String> LINE_GROUPS =
            Stream.concat(
                            Stream.of(PartGroup.values()).map(PartGroup::code),
                            Stream.of(MarkUp.LABOUR))
                    .toList();
    private static final Set<PartKind> ANY_KIND =
            Collections.unmodifiableSet(EnumSet.allOf(PartKind.class));
    private static final int HEAVIEST_PARCEL_G = 10_000_000;
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
                readAll(
                        SUPPLIERS,
                        List.of("supplier", "title", "minimumOrder", "currency"),
                        Set.of("minimumOrder", "currency"),
                        this::readSupplier);
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
                readIfGiven(STOCK, List.of("part", "onHand", "minimum"), this::readStockLevel);
        Optional<List<MarkUp>> markUps =
                readIfGiven(MARGINS, List.of("part", "group", "markUpPercent"), this::readMarkUp);
        Optional<List<ShippingClass>> shipping =
                readIfGiven(
                        SHIPPING,
                        List.of("code", "title", "upToG", "price", "currency"),
                        this::readShippingClass);
        Optional<List<TaxKind>> taxes =
                readIfGiven(
                        TAXES,
                        List.of("customerKind", "title", "ratePercent", "note"),
                        this::readTaxKind);
        // A row that could not be read may hold the very name that another row asks for.
        if (allWhole) {
            references.check();
        }
        problems.throwIfAny();
        String version = CatalogVersion.of(parts, offers, suppliers, labour);
        return new CatalogContent(
                Catalog.of(version, parts, offers),
                suppliers,
                labour,
                stock,
                markUps,
                shipping,
                taxes);
    }

    private void rejectUnknownFiles() {
        Set<String> known =
                new TreeSet<>(List.of(SUPPLIERS, OFFERS, STOCK, LABOUR, MARGINS, SHIPPING, TAXES));
        for (PartKind kind : PartKind.values()) {
            known.add(PartFile.of(kind).name());
        }
        for (String name : files.listNames()) {
            if (!known.contains(name)) {
                problems.add(
                        name,
                        0,
                        "",
                        "",
                        Phrase.of("catalog.unknown-file", String.join(", ", known)));
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

    private <T> Optional<List<T>> readIfGiven(
            String file, List<String> columns, RowReader<T> reader) {
        return files.findContent(file).map(_ -> readAll(file, columns, reader));
    }

    private Optional<Supplier> readSupplier(Row row) {
        references.declare(row, "supplier", "supplier", row.cell("supplier"));
        return row.build(
                () -> new Supplier(row.text("supplier"), row.text("title"), minimumOrder(row)));
    }

    private static Optional<Money> minimumOrder(Row row) {
        boolean given = !row.cell("minimumOrder").isEmpty();
        if (given == row.cell("currency").isEmpty()) {
            row.reject(given ? "currency" : "minimumOrder", "catalog.minimum-and-currency");
            return Optional.empty();
        }
        if (!given) {
            return Optional.empty();
        }
        CurrencyUnit currency = row.currency("currency");
        BigDecimal least = row.decimal("minimumOrder", Range.PRICE);
        if (least.stripTrailingZeros().scale() > currency.getDecimalPlaces()) {
            row.reject("minimumOrder", "catalog.decimals", currency.getDecimalPlaces());
            return Optional.empty();
        }
        return Optional.of(Money.of(currency, least, RoundingMode.UNNECESSARY));
    }

    private Optional<Offer> readOffer(Row row) {
        references.needSupplier(row);
        PartNumber part = row.partNumber("part");
        references.needPart(row, "part", part, ANY_KIND);
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
                "breaks",
                () ->
                        new Offer(
                                row.text("supplier"),
                                part,
                                packSize,
                                listBreaks(row, priceBreak),
                                leadTimeDays));
    }

    private static List<Offer.PriceBreak> listBreaks(
            Row row, BiFunction<Integer, BigDecimal, Offer.PriceBreak> priceBreak) {
        return row.listPairs(
                "breaks",
                "catalog.form.breaks",
                pair ->
                        priceBreak.apply(
                                pair.leftWhole(1, HIGHEST_QUANTITY),
                                pair.rightDecimal(Range.PRICE)));
    }

    private Optional<StockLevel> readStockLevel(Row row) {
        references.declare(row, "part", "stock of", row.cell("part"));
        PartNumber part = row.partNumber("part");
        references.needPart(row, "part", part, ANY_KIND);
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

    private Optional<MarkUp> readMarkUp(Row row) {
        String part = row.cell("part");
        String group = row.cell("group");
        references.declare(row, part.isEmpty() ? "group" : "part", "mark-up", part + " " + group);
        Optional<PartNumber> number =
                part.isEmpty() ? Optional.empty() : Optional.of(row.partNumber("part"));
        number.ifPresent(named -> references.needPart(row, "part", named, ANY_KIND));
        if (!part.isEmpty() && !group.isEmpty()) {
            row.reject("group", "catalog.group-and-part");
        } else if (!group.isEmpty() && !LINE_GROUPS.contains(group)) {
            row.reject("group", "wrong.must-be-one-of", String.join(", ", LINE_GROUPS));
        }
        Optional<String> lines = group.isEmpty() ? Optional.empty() : Optional.of(group);
        return row.build(
                () ->
                        new MarkUp(
                                number,
                                number.isPresent() ? Optional.empty() : lines,
                                row.decimal("markUpPercent", Range.MARK_UP_PERCENT)));
    }

    private Optional<ShippingClass> readShippingClass(Row row) {
        CurrencyUnit currency = row.currency("currency");
        references.declare(row, "code", "shipping class", row.cell("code") + " " + currency);
        int upToG = row.whole("upToG", 1, HEAVIEST_PARCEL_G);
        references.declare(row, "upToG", "shipping weight", upToG + " " + currency);
        BigMoney price = BigMoney.of(currency, row.decimal("price", Range.PRICE));
        return row.build(
                () -> new ShippingClass(row.text("code"), row.text("title"), upToG, price));
    }

    private Optional<TaxKind> readTaxKind(Row row) {
        references.declare(row, "customerKind", "customer kind", row.cell("customerKind"));
        return row.build(
                () ->
                        new TaxKind(
                                row.text("customerKind"),
                                row.text("title"),
                                row.decimal("ratePercent", Range.TAX_PERCENT),
                                row.optionalText("note")));
    }
}
