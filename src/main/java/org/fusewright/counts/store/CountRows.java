package org.fusewright.counts.store;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.AgreedSubstitute;
import org.fusewright.core.count.BagDesign;
import org.fusewright.core.count.CountRecord.Signature;
import org.fusewright.core.count.CountedKind;
import org.fusewright.core.count.ExpectedBag.Sets;
import org.fusewright.core.count.ExpectedLine;
import org.fusewright.core.count.Likeness;
import org.fusewright.core.count.Masses;
import org.fusewright.core.count.Weighing.Reading;
import org.fusewright.core.count.WeighingTerms;
import org.fusewright.counts.BagCount.Found;
import org.fusewright.counts.CountSummary;
import org.fusewright.counts.Way;
import org.fusewright.counts.WithdrawnSubstitute;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.GeneratedKeyHolder;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.sql.Types;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The rows of counts. What was found is added, never overwritten. */
@Repository
public class CountRows {
    /** Later than anything that is kept. */
    public static final Instant EVER = Instant.parse("9999-01-01T00:00:00Z");

    private static final String SUMMARY =
            """
            select id, job_id, reference, title, revision, started_by, started_at,
                   signed_by, signed_at
            from bag_count
            """;

    private final JdbcClient jdbc;

    CountRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What a count begins with. */
    public record Beginning(long jobId, BagDesign design, Sets sets, String by, Instant at) {}

    /** The head of a count. */
    public record Head(
            long id,
            long jobId,
            BagDesign design,
            Sets sets,
            String startedBy,
            Instant startedAt,
            Optional<Signature> signature) {}

    /** A weighing as done; what it says is worked out anew. */
    public record WeighingRow(
            WeighingTerms terms,
            Set<PartNumber> offScale,
            Reading reading,
            String by,
            Instant at) {}

    @Transactional(propagation = Propagation.MANDATORY)
    public long insert(Beginning beginning, List<ExpectedLine> lines) {
        BagDesign design = beginning.design();
        GeneratedKeyHolder key = new GeneratedKeyHolder();
        jdbc.sql(
                        """
                        insert into bag_count (job_id, reference, title, customer, revision,
                            fingerprint, catalog_version, supply_v, sets, started_by, started_at)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                        """)
                .params(
                        beginning.jobId(),
                        design.reference(),
                        design.title(),
                        design.customer(),
                        design.revision(),
                        design.fingerprint(),
                        design.catalogVersion(),
                        design.supplyV(),
                        beginning.sets().name(),
                        beginning.by(),
                        Timestamp.from(beginning.at()))
                .update(key, "id");
        long id = Objects.requireNonNull(key.getKey()).longValue();
        for (int position = 0; position < lines.size(); position++) {
            insert(id, position, lines.get(position));
        }
        return id;
    }

    private void insert(long id, int position, ExpectedLine line) {
        jdbc.sql(
                        """
                        insert into count_line (count_id, position, part_number, title, kind, colour,
                            mark, quantity, unit, places, cuts_mm, mass_g, lightest_g,
                            square_sum_g2, thinnest_mm, thickest_mm)
                        values (:id, :position, :part, :title, :kind, :colour, :mark, :quantity,
                            :unit, :places, :cuts, :mass, :lightest, :squares, :thinnest, :thickest)
                        """)
                .param("id", id)
                .param("position", position)
                .param("part", line.part().value())
                .param("title", line.title())
                .param("kind", line.kind().code())
                .param("colour", line.likeness().colour())
                .param("mark", line.likeness().mark())
                .param("quantity", line.quantity())
                .param("unit", line.unit())
                .param("places", line.places().toArray(String[]::new))
                .param("cuts", line.cutsMm().toArray(Long[]::new))
                .param("mass", line.masses().totalG())
                .param("lightest", line.masses().lightestG())
                .param("squares", line.masses().squareSumG2())
                .param(
                        "thinnest",
                        line.leads().map(ExpectedLine.LeadRange::thinnestMm).orElse(null),
                        Types.DOUBLE)
                .param(
                        "thickest",
                        line.leads().map(ExpectedLine.LeadRange::thickestMm).orElse(null),
                        Types.DOUBLE)
                .update();
    }

    /** Newest first. */
    public List<CountSummary> list(long before, int limit) {
        return jdbc.sql(SUMMARY + " where id < ? order by id desc limit ?")
                .params(before, limit)
                .query((row, number) -> summary(row))
                .list();
    }

    /** Those of one job, newest first. */
    public List<CountSummary> listOfJob(long jobId) {
        return jdbc.sql(SUMMARY + " where job_id = ? order by id desc")
                .params(jobId)
                .query((row, number) -> summary(row))
                .list();
    }

    public Optional<Head> find(long id) {
        return find(id, "");
    }

    /**
     * The head of a count, which nobody else changes until the transaction ends: whoever adds to it
     * or signs it takes turns.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public Optional<Head> findForChange(long id) {
        return find(id, " for no key update");
    }

    private Optional<Head> find(long id, String lock) {
        return jdbc.sql("select * from bag_count where id = ?" + lock)
                .params(id)
                .query((row, number) -> head(row))
                .optional();
    }

    /** How often something was added to a count, its signature included. */
    public long countChanges(long id) {
        return jdbc.sql(
                        """
                        select (select count(*) from count_tap where count_id = :id)
                             + (select count(*) from count_substitute where count_id = :id)
                             + (select count(*) from count_withdrawal where count_id = :id)
                             + (select count(*) from count_weighing where count_id = :id)
                             + (select count(*) from bag_count
                                where id = :id and signed_at is not null)
                        """)
                .param("id", id)
                .query(Long.class)
                .single();
    }

    public List<ExpectedLine> listLines(long id) {
        return jdbc.sql("select * from count_line where count_id = ? order by position")
                .params(id)
                .query((row, number) -> line(row))
                .list();
    }

    /** What lay in the bag at a time, in the order of first finding. */
    public List<Found> listFound(long id, Instant at) {
        return jdbc.sql(
                        """
                        select part_number, max(title) as title, sum(pieces)::integer as pieces
                        from count_tap where count_id = ? and counted_at <= ?
                        group by part_number having sum(pieces) <> 0 order by min(id)
                        """)
                .params(id, Timestamp.from(at))
                .query(
                        (row, number) ->
                                new Found(
                                        new PartNumber(text(row, "part_number")),
                                        text(row, "title"),
                                        row.getInt("pieces")))
                .list();
    }

    public void addTap(long id, Found found, Way way, String by, Instant at) {
        jdbc.sql(
                        """
                        insert into count_tap (count_id, part_number, title, pieces, way, counted_by,
                            counted_at)
                        values (?, ?, ?, ?, ?, ?, ?)
                        """)
                .params(
                        id,
                        found.part().value(),
                        found.title(),
                        found.pieces(),
                        way.code(),
                        by,
                        Timestamp.from(at))
                .update();
    }

    public void addSubstitute(long id, AgreedSubstitute agreed, Instant at) {
        jdbc.sql(
                        """
                        insert into count_substitute (count_id, wanted_part, offered_part,
                            offered_title, offered_kind, offered_mass_g, pieces, reason, agreed_by,
                            agreed_at)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                        """)
                .params(
                        id,
                        agreed.wanted().value(),
                        agreed.offered().value(),
                        agreed.offeredTitle(),
                        agreed.kind().code(),
                        agreed.massG(),
                        agreed.pieces(),
                        agreed.reason(),
                        agreed.agreedBy(),
                        Timestamp.from(at))
                .update();
    }

    /** What was agreed by a time and not yet taken back, in order. */
    public List<AgreedSubstitute> listSubstitutes(long id, Instant at) {
        return jdbc.sql(
                        """
                        select * from count_substitute s where count_id = :id and agreed_at <= :at
                            and not exists (select 1 from count_withdrawal w
                                where w.substitute_id = s.id and w.withdrawn_at <= :at)
                        order by s.id
                        """)
                .param("id", id)
                .param("at", Timestamp.from(at))
                .query((row, number) -> agreed(row))
                .list();
    }

    /** What was agreed and taken back again, in order. */
    public List<WithdrawnSubstitute> listWithdrawn(long id) {
        return jdbc.sql(
                        """
                        select * from count_substitute s join count_withdrawal w
                            on w.substitute_id = s.id
                        where s.count_id = ? order by w.withdrawn_at, s.id
                        """)
                .params(id)
                .query(
                        (row, number) ->
                                new WithdrawnSubstitute(
                                        agreed(row),
                                        text(row, "withdrawn_by"),
                                        row.getTimestamp("withdrawn_at").toInstant()))
                .list();
    }

    /**
     * Takes back all that was agreed for one part in place of another.
     *
     * @return how many agreements that were
     */
    public int withdraw(long id, PartNumber wanted, PartNumber offered, String by, Instant at) {
        return jdbc.sql(
                        """
                        insert into count_withdrawal (substitute_id, count_id, withdrawn_by,
                            withdrawn_at)
                        select s.id, s.count_id, :by, :at from count_substitute s
                        where s.count_id = :id and s.wanted_part = :wanted
                            and s.offered_part = :offered
                            and not exists (select 1 from count_withdrawal w
                                where w.substitute_id = s.id)
                        """)
                .param("id", id)
                .param("wanted", wanted.value())
                .param("offered", offered.value())
                .param("by", by)
                .param("at", Timestamp.from(at))
                .update();
    }

    public void addWeighing(long id, WeighingRow weighing) {
        WeighingTerms terms = weighing.terms();
        List<CountedKind> kinds = List.copyOf(terms.scatter().keySet());
        jdbc.sql(
                        """
                        insert into count_weighing (count_id, resolution_g, sample_pieces,
                            error_probability, scatter_kinds, scatters, off_scale, tare_g, gross_g,
                            weighed_by, weighed_at)
                        values (:id, :resolution, :sample, :error, :kinds, :scatters, :off, :tare,
                            :gross, :by, :at)
                        """)
                .param("id", id)
                .param("resolution", terms.resolutionG())
                .param("sample", terms.samplePieces())
                .param("error", terms.errorProbability())
                .param("kinds", kinds.stream().map(CountedKind::code).toArray(String[]::new))
                .param("scatters", kinds.stream().map(terms.scatter()::get).toArray(Double[]::new))
                .param(
                        "off",
                        weighing.offScale().stream()
                                .map(PartNumber::value)
                                .sorted()
                                .toArray(String[]::new))
                .param("tare", weighing.reading().tareG())
                .param("gross", weighing.reading().grossG())
                .param("by", weighing.by())
                .param("at", Timestamp.from(weighing.at()))
                .update();
    }

    public List<WeighingRow> listWeighings(long id) {
        return jdbc.sql("select * from count_weighing where count_id = ? order by id")
                .params(id)
                .query((row, number) -> weighing(row))
                .list();
    }

    public void sign(long id, Signature signature, byte[] recordA4, byte[] recordLetter) {
        jdbc.sql(
                        """
                        update bag_count set signed_by = ?, signed_at = ?, remark = ?, record_a4 = ?,
                            record_letter = ?
                        where id = ?
                        """)
                .params(
                        signature.name(),
                        Timestamp.from(signature.at()),
                        signature.remark(),
                        recordA4,
                        recordLetter,
                        id)
                .update();
    }

    public Optional<byte[]> findRecordA4(long id) {
        return findBytes("select record_a4 from bag_count where id = ?", id);
    }

    public Optional<byte[]> findRecordLetter(long id) {
        return findBytes("select record_letter from bag_count where id = ?", id);
    }

    private Optional<byte[]> findBytes(String query, long id) {
        return jdbc.sql(query)
                .params(id)
                .query((row, number) -> Optional.ofNullable(row.getBytes(1)))
                .optional()
                .flatMap(bytes -> bytes);
    }

    public void delete(long id) {
        jdbc.sql("delete from bag_count where id = ?").params(id).update();
    }

    private static CountSummary summary(ResultSet row) throws SQLException {
        return new CountSummary(
                row.getLong("id"),
                row.getLong("job_id"),
                text(row, "reference"),
                text(row, "title"),
                row.getInt("revision"),
                text(row, "started_by"),
                row.getTimestamp("started_at").toInstant(),
                Optional.ofNullable(row.getString("signed_by")),
                Optional.ofNullable(row.getTimestamp("signed_at")).map(Timestamp::toInstant));
    }

    private static Head head(ResultSet row) throws SQLException {
        @Nullable String signedBy = row.getString("signed_by");
        return new Head(
                row.getLong("id"),
                row.getLong("job_id"),
                new BagDesign(
                        text(row, "reference"),
                        text(row, "title"),
                        text(row, "customer"),
                        row.getInt("revision"),
                        text(row, "fingerprint"),
                        text(row, "catalog_version"),
                        row.getDouble("supply_v")),
                Sets.valueOf(text(row, "sets")),
                text(row, "started_by"),
                row.getTimestamp("started_at").toInstant(),
                signedBy == null
                        ? Optional.empty()
                        : Optional.of(
                                new Signature(
                                        signedBy,
                                        row.getTimestamp("signed_at").toInstant(),
                                        text(row, "remark"))));
    }

    private static ExpectedLine line(ResultSet row) throws SQLException {
        double thinnestMm = row.getDouble("thinnest_mm");
        boolean hasLeads = !row.wasNull();
        return new ExpectedLine(
                new PartNumber(text(row, "part_number")),
                text(row, "title"),
                new Likeness(kind(text(row, "kind")), text(row, "colour"), text(row, "mark")),
                row.getBigDecimal("quantity").stripTrailingZeros(),
                text(row, "unit"),
                List.of((String[]) row.getArray("places").getArray()),
                List.of((Long[]) row.getArray("cuts_mm").getArray()),
                new Masses(
                        row.getDouble("mass_g"),
                        row.getDouble("lightest_g"),
                        row.getDouble("square_sum_g2")),
                hasLeads
                        ? Optional.of(
                                new ExpectedLine.LeadRange(
                                        thinnestMm, row.getDouble("thickest_mm")))
                        : Optional.empty());
    }

    private static WeighingRow weighing(ResultSet row) throws SQLException {
        String[] kinds = (String[]) row.getArray("scatter_kinds").getArray();
        Double[] scatters = (Double[]) row.getArray("scatters").getArray();
        Map<CountedKind, Double> scatter = new EnumMap<>(CountedKind.class);
        for (int i = 0; i < kinds.length; i++) {
            scatter.put(kind(kinds[i]), scatters[i]);
        }
        return new WeighingRow(
                new WeighingTerms(
                        row.getDouble("resolution_g"),
                        row.getInt("sample_pieces"),
                        row.getDouble("error_probability"),
                        scatter),
                Stream.of((String[]) row.getArray("off_scale").getArray())
                        .map(PartNumber::new)
                        .collect(Collectors.toUnmodifiableSet()),
                new Reading(row.getDouble("tare_g"), row.getDouble("gross_g")),
                text(row, "weighed_by"),
                row.getTimestamp("weighed_at").toInstant());
    }

    private static AgreedSubstitute agreed(ResultSet row) throws SQLException {
        return new AgreedSubstitute(
                new PartNumber(text(row, "wanted_part")),
                new PartNumber(text(row, "offered_part")),
                text(row, "offered_title"),
                kind(text(row, "offered_kind")),
                row.getDouble("offered_mass_g"),
                row.getInt("pieces"),
                text(row, "reason"),
                text(row, "agreed_by"));
    }

    private static CountedKind kind(String code) {
        return CountedKind.parse(code)
                .orElseThrow(() -> new IllegalStateException("no such kind of part: " + code));
    }

    private static String text(ResultSet row, String column) throws SQLException {
        return Objects.requireNonNull(row.getString(column));
    }
}
