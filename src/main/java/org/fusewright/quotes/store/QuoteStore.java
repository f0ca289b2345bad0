package org.fusewright.quotes.store;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The rows of {@code quote}, {@code quote_revision} and {@code quote_demand}. */
@Repository
@Transactional(propagation = Propagation.MANDATORY)
public class QuoteStore {
    /** So many letters the index holds together. */
    private static final int LEAST_INDEXED = 3;

    private static final String BY_INDEX =
            """
            and letter_groups(quote_said(quote.number, quote.job_reference, quote.title,
                                         quote.customer)) @> letter_groups(:text)
            """;

    private static final String DRAFT = "draft";

    private final JdbcClient jdbc;

    QuoteStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * The next number of a year, counted from 1. Others wait for it until this transaction ends, so
     * none is given twice, and none is lost when it is taken back.
     */
    public int nextNumber(int year) {
        return jdbc.sql(
                        """
                        insert into quote_count (year, last) values (:year, 1)
                        on conflict (year) do update set last = quote_count.last + 1
                        returning last
                        """)
                .param("year", year)
                .query(Integer.class)
                .single();
    }

    public long insert(QuoteRow row) {
        return jdbc.sql(
                        """
                        insert into quote (number, job_id, job_reference, title, customer, revision,
                                           version, created_at, changed_at)
                        values (:number, :jobId, :jobReference, :title, :customer, :revision,
                                :version, :createdAt, :changedAt)
                        returning id
                        """)
                .param("number", row.number())
                .param("jobId", row.jobId())
                .param("jobReference", row.jobReference())
                .param("title", row.title())
                .param("customer", row.customer())
                .param("revision", row.revision())
                .param("version", row.version())
                .param("createdAt", Timestamp.from(row.createdAt()))
                .param("changedAt", Timestamp.from(row.changedAt()))
                .query(Long.class)
                .single();
    }

    @Transactional(readOnly = true)
    public Optional<QuoteRow> find(long id) {
        return jdbc.sql("select * from quote where id = :id")
                .param("id", id)
                .query((row, _) -> quote(row))
                .optional();
    }

    @Transactional(readOnly = true)
    public Optional<RevisionRow> findRevision(long id, int revision) {
        return jdbc.sql(
                        """
                        select revision, state, quoted_on, valid_until, wishes, document,
                               schema_version, sent_at, decided_at, variant
                        from quote_revision where quote_id = :id and revision = :revision
                        """)
                .param("id", id)
                .param("revision", revision)
                .query((row, _) -> revision(row))
                .optional();
    }

    /** A paper as it was sent; empty for a draft. */
    @Transactional(readOnly = true)
    public Optional<byte[]> findPaper(long id, int revision, PaperColumn paper) {
        return jdbc.sql(
                        "select "
                                + paper.column()
                                + " from quote_revision where quote_id = :id and revision ="
                                + " :revision and state <> :draft")
                .param("id", id)
                .param("revision", revision)
                .param("draft", DRAFT)
                .query((row, _) -> row.getBytes(1))
                .optional();
    }

    /**
     * Quotes before an id, newest first.
     *
     * @param text that is in their texts, in lower case
     */
    @Transactional(readOnly = true)
    public List<SummaryRow> list(long before, String text, Optional<Long> job, int limit) {
        if (text.indexOf('\0') >= 0) {
            return List.of(); // no text in the database can hold it
        }
        MapSqlParameterSource parameters =
                new MapSqlParameterSource(Map.of("before", before, "text", text, "limit", limit));
        job.ifPresent(id -> parameters.addValue("job", id));
        return jdbc.sql(
                        """
                        select quote.id, quote.number, quote.revision, r.state, quote.job_reference,
                               quote.title, quote.customer, r.quoted_on, r.valid_until,
                               d.document ->> 'currency' as currency, v.total, v.variants,
                               quote.fulfilled_at is not null as fulfilled
                        from quote
                        join quote_revision r on r.quote_id = quote.id
                                              and r.revision = quote.revision
                        cross join lateral (select r.document::json as document) d
                        cross join lateral (
                            select min((one ->> 'total')::numeric) filter (
                                       where r.variant is null or one ->> 'kind' = r.variant)
                                       as total,
                                   count(*) as variants
                            from json_array_elements(d.document -> 'variants') one) v
                        where quote.id < :before %s %s
                          and strpos(quote_said(quote.number, quote.job_reference, quote.title,
                                         quote.customer), :text) > 0
                        order by quote.id desc
                        limit :limit
                        """
                                .formatted(
                                        job.isPresent() ? "and quote.job_id = :job" : "",
                                        text.length() < LEAST_INDEXED ? "" : BY_INDEX))
                .paramSource(parameters)
                .query((row, _) -> summary(row))
                .list();
    }

    /** Moves the version on and keeps others out until the end; false when it is another one. */
    public boolean touch(long id, long version, Instant now) {
        return jdbc.sql(
                                """
                                update quote set version = version + 1,
                                                 changed_at = greatest(changed_at, :now)
                                where id = :id and version = :version
                                """)
                        .param("id", id)
                        .param("version", version)
                        .param("now", Timestamp.from(now))
                        .update()
                == 1;
    }

    /** What the newest revision says of its job. */
    public void describe(long id, int revision, String reference, String title, String customer) {
        jdbc.sql(
                        """
                        update quote set revision = :revision, job_reference = :reference,
                                         title = :title, customer = :customer
                        where id = :id
                        """)
                .param("revision", revision)
                .param("reference", reference)
                .param("title", title)
                .param("customer", customer)
                .param("id", id)
                .update();
    }

    public void insertDraft(long id, RevisionRow draft) {
        jdbc.sql(
                        """
                        insert into quote_revision (quote_id, revision, state, quoted_on,
                                                    valid_until, wishes, document, schema_version)
                        values (:id, :revision, :draft, :quotedOn, :validUntil, :wishes, :document,
                                :schemaVersion)
                        """)
                .paramSource(draftParameters(id, draft))
                .update();
    }

    public void updateDraft(long id, RevisionRow draft) {
        jdbc.sql(
                        """
                        update quote_revision
                        set quoted_on = :quotedOn, valid_until = :validUntil, wishes = :wishes,
                            document = :document, schema_version = :schemaVersion
                        where quote_id = :id and revision = :revision
                        """)
                .paramSource(draftParameters(id, draft))
                .update();
    }

    private static MapSqlParameterSource draftParameters(long id, RevisionRow draft) {
        return new MapSqlParameterSource()
                .addValue("id", id)
                .addValue("revision", draft.revision())
                .addValue(DRAFT, DRAFT)
                .addValue("quotedOn", draft.quotedOn())
                .addValue("validUntil", draft.validUntil())
                .addValue("wishes", draft.wishes())
                .addValue("document", draft.document())
                .addValue("schemaVersion", draft.schemaVersion());
    }

    /** Freezes a draft with the papers that go out. */
    public void send(long id, int revision, Instant now, Map<PaperColumn, byte[]> papers) {
        jdbc.sql(
                        """
                        update quote_revision
                        set state = 'sent', sent_at = :now, pdf_a4 = :a4, pdf_letter = :letter,
                            csv = :csv
                        where quote_id = :id and revision = :revision
                        """)
                .param("now", Timestamp.from(now))
                .param("a4", papers.get(PaperColumn.PDF_A4))
                .param("letter", papers.get(PaperColumn.PDF_LETTER))
                .param("csv", papers.get(PaperColumn.CSV))
                .param("id", id)
                .param("revision", revision)
                .update();
    }

    public void answer(long id, int revision, String state, Instant now, Optional<String> variant) {
        jdbc.sql(
                        """
                        update quote_revision
                        set state = :state, decided_at = :now, variant = :variant
                        where quote_id = :id and revision = :revision
                        """)
                .param("state", state)
                .param("now", Timestamp.from(now))
                .param("variant", variant.orElse(null))
                .param("id", id)
                .param("revision", revision)
                .update();
    }

    public void fulfil(long id, Instant now) {
        jdbc.sql("update quote set fulfilled_at = :now where id = :id")
                .param("now", Timestamp.from(now))
                .param("id", id)
                .update();
        jdbc.sql("delete from quote_demand where quote_id = :id").param("id", id).update();
    }

    public void insertDemand(long id, String part, BigDecimal quantity) {
        jdbc.sql("insert into quote_demand values (:id, :part, :quantity)")
                .param("id", id)
                .param("part", part)
                .param("quantity", quantity)
                .update();
    }

    public void deleteRevision(long id, int revision) {
        jdbc.sql("delete from quote_revision where quote_id = :id and revision = :revision")
                .param("id", id)
                .param("revision", revision)
                .update();
    }

    public void delete(long id) {
        jdbc.sql("delete from quote where id = :id").param("id", id).update();
    }

    private static QuoteRow quote(ResultSet row) throws SQLException {
        return new QuoteRow(
                row.getLong("id"),
                row.getString("number"),
                row.getLong("job_id"),
                row.getString("job_reference"),
                row.getString("title"),
                row.getString("customer"),
                row.getInt("revision"),
                row.getLong("version"),
                instant(row, "fulfilled_at"),
                row.getTimestamp("created_at").toInstant(),
                row.getTimestamp("changed_at").toInstant());
    }

    private static RevisionRow revision(ResultSet row) throws SQLException {
        return new RevisionRow(
                row.getInt("revision"),
                row.getString("state"),
                row.getObject("quoted_on", LocalDate.class),
                row.getObject("valid_until", LocalDate.class),
                row.getString("wishes"),
                row.getString("document"),
                row.getInt("schema_version"),
                instant(row, "sent_at"),
                instant(row, "decided_at"),
                row.getString("variant"));
    }

    private static SummaryRow summary(ResultSet row) throws SQLException {
        return new SummaryRow(
                row.getLong("id"),
                row.getString("number"),
                row.getInt("revision"),
                row.getString("state"),
                row.getString("job_reference"),
                row.getString("title"),
                row.getString("customer"),
                row.getObject("quoted_on", LocalDate.class),
                row.getObject("valid_until", LocalDate.class),
                row.getString("currency"),
                row.getBigDecimal("total"),
                row.getInt("variants"),
                row.getBoolean("fulfilled"));
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        Timestamp time = row.getTimestamp(column);
        return time == null ? null : time.toInstant();
    }
}
