package org.fusewright.catalogs.store;

import org.fusewright.catalogs.PartKind;
import org.fusewright.catalogs.StockLevel;
import org.fusewright.catalogs.Supplier;
import org.fusewright.core.catalog.Item;
import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.quote.LabourTask;
import org.fusewright.core.quote.MarkUp;
import org.fusewright.core.quote.ShippingClass;
import org.fusewright.core.quote.TaxKind;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcOperations;
import org.springframework.jdbc.core.PreparedStatementCreator;
import org.springframework.jdbc.core.RowMapper;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** How each table of the catalog holds its records: read here, and exchanged for others. */
final class CatalogRows {

    /** So many rows are in memory beside what is made of them. */
    private static final int ROWS_AT_ONCE = 5_000;

    private final JdbcOperations jdbc;

    CatalogRows(JdbcOperations jdbc) {
        this.jdbc = jdbc;
    }

    List<Part> listParts() {
        return list(
                "select number, title, brand, mass_g, kind, attributes from part order by number",
                (row, _) -> toPart(row));
    }

    private static Part toPart(ResultSet row) throws SQLException {
        Item item =
                new Item(
                        new PartNumber(row.getString(1)),
                        row.getString(2),
                        row.getString(3),
                        row.getDouble(4));
        String kind = row.getString(5);
        return PartAttributes.read(
                PartKind.parse(kind)
                        .orElseThrow(() -> new IllegalStateException("unknown kind " + kind)),
                item,
                row.getString(6));
    }

    TableExchange bringParts(Collection<Part> parts) {
        return TableExchange.of(
                        jdbc,
                        "part",
                        List.of("number"),
                        List.of("title", "brand", "mass_g", "kind", "attributes"))
                .bring(
                        parts,
                        (part, values) ->
                                values.text(part.number().value())
                                        .text(part.title())
                                        .text(part.brand())
                                        .number(part.massG())
                                        .text(PartKind.of(part).code())
                                        .text(PartAttributes.write(part)));
    }

    List<Supplier> listSuppliers() {
        return list(
                "select code, name, minimum_order, minimum_currency from supplier",
                (row, _) ->
                        new Supplier(
                                row.getString(1),
                                row.getString(2),
                                Optional.ofNullable(row.getString(4))
                                        .map(CurrencyUnit::of)
                                        .map(currency -> money(currency, decimal(row, 3)))));
    }

    private static Money money(CurrencyUnit currency, BigDecimal amount) {
        return Money.of(currency, amount, RoundingMode.HALF_UP);
    }

    private static BigDecimal decimal(ResultSet row, int column) {
        try {
            return row.getBigDecimal(column);
        } catch (SQLException unreadable) {
            throw new IllegalStateException(unreadable);
        }
    }

    TableExchange bringSuppliers(Collection<Supplier> suppliers) {
        return TableExchange.of(
                        jdbc,
                        "supplier",
                        List.of("code"),
                        List.of("name", "minimum_order", "minimum_currency"))
                .bring(
                        suppliers,
                        (supplier, values) ->
                                values.text(supplier.code())
                                        .text(supplier.title())
                                        .decimal(
                                                supplier.minimumOrder()
                                                        .map(Money::getAmount)
                                                        .orElse(null))
                                        .text(
                                                supplier.minimumOrder()
                                                        .map(least -> least.getCurrencyUnit())
                                                        .map(CurrencyUnit::getCode)
                                                        .orElse(null)));
    }

    List<Offer> listOffers() {
        return list(
                "select supplier_code, part_number, pack_size, currency, lead_time_days, prices"
                        + " from offer",
                (row, _) ->
                        new Offer(
                                row.getString(1),
                                new PartNumber(row.getString(2)),
                                row.getInt(3),
                                PriceBreaks.read(
                                        CurrencyUnit.of(row.getString(4)), row.getString(6)),
                                row.getInt(5)));
    }

    TableExchange bringOffers(Collection<Offer> offers) {
        return TableExchange.of(
                        jdbc,
                        "offer",
                        List.of("supplier_code", "part_number", "currency", "pack_size"),
                        List.of("lead_time_days", "prices"))
                .bring(
                        offers,
                        (offer, values) ->
                                values.text(offer.supplier())
                                        .text(offer.part().value())
                                        .text(offer.currency().getCode())
                                        .whole(offer.packSize())
                                        .whole(offer.leadTimeDays())
                                        .text(PriceBreaks.write(offer.breaks())));
    }

    List<LabourTask> listLabour() {
        return list(
                "select code, title, minutes, hourly_rate, currency from labour_rate",
                (row, _) ->
                        new LabourTask(
                                row.getString(1),
                                row.getString(2),
                                row.getBigDecimal(3),
                                BigMoney.of(
                                        CurrencyUnit.of(row.getString(5)), row.getBigDecimal(4))));
    }

    TableExchange bringLabour(Collection<LabourTask> labour) {
        return TableExchange.of(
                        jdbc,
                        "labour_rate",
                        List.of("code"),
                        List.of("title", "minutes", "hourly_rate", "currency"))
                .bring(
                        labour,
                        (task, values) ->
                                values.text(task.code())
                                        .text(task.title())
                                        .decimal(task.minutes())
                                        .decimal(task.hourlyRate().getAmount())
                                        .text(task.hourlyRate().getCurrencyUnit().getCode()));
    }

    /** Below which level each part is ordered, where something is said of it. */
    Map<PartNumber, BigDecimal> findMinimums() {
        Map<PartNumber, BigDecimal> minimums = new TreeMap<>();
        jdbc.query(
                "select part_number, minimum from stock_entry",
                row -> {
                    minimums.put(new PartNumber(row.getString(1)), row.getBigDecimal(2));
                });
        return minimums;
    }

    TableExchange bringMinimums(Collection<StockLevel> stock) {
        return TableExchange.of(jdbc, "stock_entry", List.of("part_number"), List.of("minimum"))
                .bring(
                        stock,
                        (level, values) ->
                                values.text(level.part().value()).decimal(level.minimum()));
    }

    List<MarkUp> listMarkUps() {
        return list(
                "select part, line_group, percent from mark_up",
                (row, _) ->
                        new MarkUp(
                                Optional.ofNullable(row.getString(1)).map(PartNumber::new),
                                Optional.ofNullable(row.getString(2)),
                                row.getBigDecimal(3)));
    }

    TableExchange bringMarkUps(Collection<MarkUp> markUps) {
        return TableExchange.ofOpenKeys(
                        jdbc, "mark_up", List.of("part", "line_group"), List.of("percent"))
                .bring(
                        markUps,
                        (markUp, values) ->
                                values.text(markUp.part().map(PartNumber::value).orElse(null))
                                        .text(markUp.group().orElse(null))
                                        .decimal(markUp.percent()));
    }

    List<ShippingClass> listShipping() {
        return list(
                "select code, title, up_to_g, price, currency from shipping_class",
                (row, _) ->
                        new ShippingClass(
                                row.getString(1),
                                row.getString(2),
                                row.getInt(3),
                                BigMoney.of(
                                        CurrencyUnit.of(row.getString(5)), row.getBigDecimal(4))));
    }

    TableExchange bringShipping(Collection<ShippingClass> shipping) {
        return TableExchange.of(
                        jdbc,
                        "shipping_class",
                        List.of("code", "currency"),
                        List.of("title", "up_to_g", "price"))
                .bring(
                        shipping,
                        (shippingClass, values) ->
                                values.text(shippingClass.code())
                                        .text(shippingClass.price().getCurrencyUnit().getCode())
                                        .text(shippingClass.title())
                                        .whole(shippingClass.upToG())
                                        .decimal(shippingClass.price().getAmount()));
    }

    List<TaxKind> listTaxes() {
        return list(
                "select code, title, percent, note from tax_kind",
                (row, _) ->
                        new TaxKind(
                                row.getString(1),
                                row.getString(2),
                                row.getBigDecimal(3),
                                row.getString(4)));
    }

    TableExchange bringTaxes(Collection<TaxKind> taxes) {
        return TableExchange.of(
                        jdbc, "tax_kind", List.of("code"), List.of("title", "percent", "note"))
                .bring(
                        taxes,
                        (tax, values) ->
                                values.text(tax.code())
                                        .text(tax.title())
                                        .decimal(tax.percent())
                                        .text(tax.note()));
    }

    private <T extends @Nullable Object> List<T> list(String query, RowMapper<T> mapper) {
        PreparedStatementCreator inParts =
                connection -> {
                    PreparedStatement statement = connection.prepareStatement(query);
                    statement.setFetchSize(ROWS_AT_ONCE);
                    return statement;
                };
        return jdbc.query(inParts, mapper);
    }
}
