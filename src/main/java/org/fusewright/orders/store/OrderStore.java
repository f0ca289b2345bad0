package org.fusewright.orders.store;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.orders.store.OrderRow.Line;
import org.fusewright.orders.store.OrderRow.Received;
import org.fusewright.orders.store.OrderRow.Summary;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The rows of orders and deliveries. What came is summed over deliveries, never counted up. */
@Repository
public class OrderStore {
    private static final String ORDER =
            """
            o.id, o.number, o.supplier_code, o.supplier_name, o.currency, o.state, o.wanted_by,
            o.ordered_on, o.version, o.changed_at
            """;

    private final JdbcClient jdbc;

    OrderStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Holds up others who make drafts until the end: two must not order the same twice. */
    public void lockDrafting() {
        jdbc.sql("lock table order_count in exclusive mode").update();
    }

    /** The next number of a year. */
    public int nextNumber(int year) {
        return jdbc.sql(
                        """
                        insert into order_count (year, last) values (:year, 1)
                        on conflict (year) do update set last = order_count.last + 1
                        returning last
                        """)
                .param("year", year)
                .query(Integer.class)
                .single();
    }

    public long insert(
            String number,
            String supplierCode,
            String supplierName,
            String currency,
            @Nullable LocalDate wantedBy,
            Instant now) {
        return jdbc.sql(
                        """
                        insert into purchase_order (number, supplier_code, supplier_name, currency,
                                                    state, wanted_by, version, created_at,
                                                    changed_at)
                        values (:number, :code, :name, :currency, 'draft', :wantedBy, 0, :now, :now)
                        returning id
                        """)
                .param("number", number)
                .param("code", supplierCode)
                .param("name", supplierName)
                .param("currency", currency)
                .param("wantedBy", wantedBy)
                .param("now", Timestamp.from(now))
                .query(Long.class)
                .single();
    }

    public void insertLine(long order, Line line) {
        jdbc.sql(
                        """
                        insert into purchase_order_line (order_id, line, part_number, title, unit,
                                                         pack_size, quantity, unit_price, price)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?)
                        """)
                .params(
                        order,
                        line.line(),
                        line.part(),
                        line.title(),
                        line.unit(),
                        line.packSize(),
                        line.quantity(),
                        line.unitPrice(),
                        line.price())
                .update();
    }

    public Optional<OrderRow> find(long id) {
        return jdbc.sql("select " + ORDER + " from purchase_order o where o.id = :id")
                .param("id", id)
                .query((row, _) -> order(row))
                .optional();
    }

    /** The order, held until the end, so that others who change it wait. */
    public Optional<OrderRow> findForUpdate(long id) {
        return jdbc.sql("select " + ORDER + " from purchase_order o where o.id = :id for update")
                .param("id", id)
                .query((row, _) -> order(row))
                .optional();
    }

    public List<Line> listLines(long id) {
        return jdbc.sql(
                        """
                        select line, part_number, title, unit, pack_size, quantity, unit_price,
                               price
                        from purchase_order_line where order_id = :id order by line
                        """)
                .param("id", id)
                .query(
                        (row, _) ->
                                new Line(
                                        row.getInt(1),
                                        row.getString(2),
                                        row.getString(3),
                                        row.getString(4),
                                        row.getInt(5),
                                        row.getInt(6),
                                        row.getBigDecimal(7),
                                        row.getBigDecimal(8)))
                .list();
    }

    /** What came for an order, by delivery and line. */
    public List<Received> listReceived(long id) {
        return jdbc.sql(
                        """
                        select d.id, d.note, d.received_at, l.line, l.quantity
                        from delivery d join delivery_line l on l.delivery_id = d.id
                        where d.order_id = :id order by d.id, l.line
                        """)
                .param("id", id)
                .query(
                        (row, _) ->
                                new Received(
                                        row.getLong(1),
                                        row.getString(2),
                                        row.getTimestamp(3).toInstant(),
                                        row.getInt(4),
                                        row.getBigDecimal(5)))
                .list();
    }

    /** Orders before an id, newest first. */
    public List<Summary> list(long before, int limit) {
        return jdbc.sql(
                        "select "
                                + ORDER
                                + """
                                , l.lines, l.total
                                from purchase_order o cross join lateral (
                                    select count(*) as lines, sum(price) as total
                                    from purchase_order_line where order_id = o.id) l
                                where o.id < :before order by o.id desc limit :limit
                                """)
                .param("before", before)
                .param("limit", limit)
                .query(
                        (row, _) ->
                                new Summary(
                                        order(row),
                                        row.getInt("lines"),
                                        row.getBigDecimal("total")))
                .list();
    }

    /** What is in drafts or on its way, by part. */
    public Map<PartNumber, BigDecimal> sumOpen() {
        Map<PartNumber, BigDecimal> sums = new TreeMap<>();
        jdbc.sql(
                        """
                        select l.part_number, sum(l.quantity - coalesce(d.quantity, 0))
                        from purchase_order o
                        join purchase_order_line l on l.order_id = o.id
                        left join (select order_id, line, sum(quantity) as quantity
                                   from delivery_line group by order_id, line) d
                               on d.order_id = l.order_id and d.line = l.line
                        where o.state in ('draft', 'sent', 'partly received')
                        group by l.part_number
                        """)
                .query(
                        row -> {
                            sums.put(new PartNumber(row.getString(1)), row.getBigDecimal(2));
                        });
        return sums;
    }

    public void delete(long id) {
        jdbc.sql("delete from purchase_order where id = :id").param("id", id).update();
    }

    public void setState(long id, String state, Instant now) {
        jdbc.sql(
                        """
                        update purchase_order
                        set state = :state, version = version + 1,
                            changed_at = greatest(changed_at, :now)
                        where id = :id
                        """)
                .param("state", state)
                .param("now", Timestamp.from(now))
                .param("id", id)
                .update();
    }

    public void setSent(
            long id, LocalDate orderedOn, Map<PaperColumn, byte[]> papers, Instant now) {
        jdbc.sql(
                        """
                        update purchase_order
                        set state = 'sent', ordered_on = :on, pdf_a4 = :a4, pdf_letter = :letter,
                            csv = :csv, ubl = :ubl, version = version + 1,
                            changed_at = greatest(changed_at, :now)
                        where id = :id
                        """)
                .param("on", orderedOn)
                .param("a4", papers.get(PaperColumn.PDF_A4))
                .param("letter", papers.get(PaperColumn.PDF_LETTER))
                .param("csv", papers.get(PaperColumn.CSV))
                .param("ubl", papers.get(PaperColumn.UBL))
                .param("now", Timestamp.from(now))
                .param("id", id)
                .update();
    }

    /** A paper as it went out; empty for an order that did not. */
    public Optional<byte[]> findPaper(long id, PaperColumn paper) {
        return jdbc.sql(
                        "select "
                                + paper.column()
                                + " from purchase_order where id = :id and ordered_on is not null")
                .param("id", id)
                .query((row, _) -> row.getBytes(1))
                .optional();
    }

    public long insertDelivery(long order, String note, Instant now) {
        return jdbc.sql(
                        """
                        insert into delivery (order_id, note, received_at)
                        values (:order, :note, :now) returning id
                        """)
                .param("order", order)
                .param("note", note)
                .param("now", Timestamp.from(now))
                .query(Long.class)
                .single();
    }

    public void insertDeliveryLine(long delivery, long order, int line, BigDecimal quantity) {
        jdbc.sql(
                        """
                        insert into delivery_line (delivery_id, order_id, line, quantity)
                        values (?, ?, ?, ?)
                        """)
                .params(delivery, order, line, quantity)
                .update();
    }

    private static OrderRow order(ResultSet row) throws SQLException {
        return new OrderRow(
                row.getLong("id"),
                row.getString("number"),
                row.getString("supplier_code"),
                row.getString("supplier_name"),
                row.getString("currency"),
                row.getString("state"),
                row.getObject("wanted_by", LocalDate.class),
                row.getObject("ordered_on", LocalDate.class),
                row.getLong("version"),
                row.getTimestamp("changed_at").toInstant());
    }
}
