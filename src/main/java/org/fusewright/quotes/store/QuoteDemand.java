package org.fusewright.quotes.store;

import org.fusewright.core.catalog.PartNumber;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

import java.math.BigDecimal;
import java.util.SortedMap;
import java.util.TreeMap;

/** The rows of {@code quote_demand}: what accepted quotes still need. */
@Repository
public class QuoteDemand {
    private final JdbcClient jdbc;

    QuoteDemand(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Over all quotes, in one pass. */
    public SortedMap<PartNumber, BigDecimal> sum() {
        SortedMap<PartNumber, BigDecimal> sums = new TreeMap<>();
        jdbc.sql("select part_number, sum(quantity) from quote_demand group by part_number")
                .query(
                        row -> {
                            sums.put(new PartNumber(row.getString(1)), row.getBigDecimal(2));
                        });
        return sums;
    }

    /** What the kits of one quote need; nothing when it is not accepted, or delivered already. */
    public SortedMap<PartNumber, BigDecimal> listOf(long quote) {
        SortedMap<PartNumber, BigDecimal> parts = new TreeMap<>();
        jdbc.sql("select part_number, quantity from quote_demand where quote_id = :quote")
                .param("quote", quote)
                .query(
                        row -> {
                            parts.put(new PartNumber(row.getString(1)), row.getBigDecimal(2));
                        });
        return parts;
    }
}
