package org.fusewright.catalogs.store;

import org.fusewright.catalogs.StockLevel;
import org.fusewright.catalogs.StockMove;
import org.fusewright.catalogs.StockMove.Reason;
import org.fusewright.core.catalog.PartNumber;
import org.springframework.jdbc.core.JdbcOperations;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

import java.math.BigDecimal;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** The ledger's rows: they are added and summed, never changed. */
@Repository
public class StockMoves {

    private static final int ROWS_IN_A_BATCH = 500;

    private final JdbcOperations jdbc;

    StockMoves(JdbcOperations jdbc) {
        this.jdbc = jdbc;
    }

    @Transactional(propagation = Propagation.MANDATORY)
    public void add(List<StockMove> moves, Instant at) {
        jdbc.batchUpdate(
                """
                insert into stock_move (part_number, quantity, reason, note, moved_at)
                values (?, ?, ?, ?, ?)
                """,
                moves,
                ROWS_IN_A_BATCH,
                (row, move) -> {
                    row.setString(1, move.part().value());
                    row.setBigDecimal(2, move.quantity());
                    row.setString(3, move.reason().code());
                    row.setString(4, move.note());
                    row.setTimestamp(5, Timestamp.from(at));
                });
    }

    /** What lies on the shelf of each part that ever moved, by part number. */
    @Transactional(readOnly = true)
    public Map<PartNumber, BigDecimal> sum() {
        Map<PartNumber, BigDecimal> sums = new TreeMap<>();
        jdbc.query(
                "select part_number, sum(quantity) from stock_move group by part_number",
                row -> {
                    sums.put(new PartNumber(row.getString(1)), row.getBigDecimal(2));
                });
        return sums;
    }

    /** Moves the sums to what was counted; what is not named was counted as nothing. */
    void takeStock(List<StockLevel> counted, Instant at) {
        // A delivery that is being booked is either in the sums or waits: it is never undone.
        jdbc.execute("lock table stock_move in share row exclusive mode");
        Map<PartNumber, BigDecimal> sums = sum();
        List<StockMove> moves = new ArrayList<>();
        Set<PartNumber> named = new HashSet<>();
        for (StockLevel level : counted) {
            named.add(level.part());
            BigDecimal before = sums.get(level.part());
            Reason reason = before == null ? Reason.OPENING : Reason.STOCKTAKE;
            BigDecimal difference =
                    level.onHand().subtract(before == null ? BigDecimal.ZERO : before);
            add(moves, level.part(), difference, reason);
        }
        sums.forEach(
                (part, sum) -> {
                    if (!named.contains(part)) {
                        add(moves, part, sum.negate(), Reason.STOCKTAKE);
                    }
                });
        add(moves, at);
    }

    /** Takes off the shelf what the catalog holds no more. */
    void remove(Set<PartNumber> kept, Instant at) {
        List<StockMove> moves = new ArrayList<>();
        sum().forEach(
                        (part, sum) -> {
                            if (!kept.contains(part)) {
                                add(moves, part, sum.negate(), Reason.REMOVED);
                            }
                        });
        add(moves, at);
    }

    private static void add(
            List<StockMove> moves, PartNumber part, BigDecimal quantity, Reason reason) {
        if (quantity.signum() != 0) {
            moves.add(new StockMove(part, quantity, reason, "catalog import"));
        }
    }
}
