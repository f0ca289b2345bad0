package org.fusewright.counts;

import org.fusewright.catalogs.Catalogs;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.AgreedSubstitute;
import org.fusewright.core.count.BagDesign;
import org.fusewright.core.count.BagDifference;
import org.fusewright.core.count.Comparison;
import org.fusewright.core.count.Comparison.LineResult;
import org.fusewright.core.count.CountRecord;
import org.fusewright.core.count.CountRecord.Later;
import org.fusewright.core.count.CountRecord.Signature;
import org.fusewright.core.count.CountedKind;
import org.fusewright.core.count.ExpectedBag;
import org.fusewright.core.count.ExpectedLine;
import org.fusewright.core.count.Substitution;
import org.fusewright.core.count.Weighing;
import org.fusewright.core.count.WeighingTerms;
import org.fusewright.core.count.WeightStatement;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Wording;
import org.fusewright.counts.BagCount.Found;
import org.fusewright.counts.store.CountRows;
import org.fusewright.counts.store.CountRows.Head;
import org.fusewright.counts.store.CountRows.WeighingRow;
import org.fusewright.papers.CountRecordPaper;
import org.fusewright.papers.Paper;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The counts of bags. What a bag should hold is planned once, when its count begins. Everything
 * found is added to what others found; only signing names the version that the person saw.
 */
@Service
public class Counts {
    private static final int MOST_PIECES = 100_000;

    private final CountRows rows;
    private final KeptDesigns designs;
    private final Catalogs catalogs;
    private final InstantSource clock;

    @Autowired
    Counts(CountRows rows, KeptDesigns designs, Catalogs catalogs) {
        this(rows, designs, catalogs, InstantSource.system());
    }

    Counts(CountRows rows, KeptDesigns designs, Catalogs catalogs, InstantSource clock) {
        this.rows = rows;
        this.designs = designs;
        this.catalogs = catalogs;
        this.clock = clock;
    }

    /**
     * Newest first.
     *
     * @param before counts older than this one only, to go on from an earlier list
     */
    @Transactional(readOnly = true)
    public List<CountSummary> list(long before, int limit) {
        return rows.list(before, limit);
    }

    /** The counts of one job, newest first. */
    @Transactional(readOnly = true)
    public List<CountSummary> listOfJob(long jobId) {
        return rows.listOfJob(jobId);
    }

    /**
     * @throws UnknownCountException when there is none
     */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public BagCount get(long id) {
        return read(rows.find(id).orElseThrow(() -> new UnknownCountException(id)));
    }

    /**
     * Begins a count.
     *
     * @throws MalformedJobException when there is no such job or revision, or no kit for it
     */
    @Transactional
    public BagCount create(NewCount wish) {
        KeptDesigns.Design design = designs.plan(wish.jobId(), wish.revision());
        List<ExpectedLine> lines = ExpectedBag.of(design.kit(), catalogs.current(), wish.sets());
        if (lines.isEmpty()) {
            throw refused("/jobId", "wrong.empty-bag");
        }
        return getInChange(
                rows.insert(
                        new CountRows.Beginning(
                                wish.jobId(),
                                BagDesign.of(design.kit(), design.revision()),
                                wish.sets(),
                                wish.by(),
                                now()),
                        lines));
    }

    /**
     * Adds pieces of a part, or takes some out when they are negative.
     *
     * @throws MalformedJobException when the part is unknown or fewer pieces are there
     * @throws SignedCountException when the count is signed
     */
    @Transactional
    public BagCount add(long id, PartNumber part, int pieces, Way way, String by) {
        BagCount count = getForChange(id);
        String title =
                findTitle(count, part).orElseThrow(() -> refused("/part", "wrong.part-unknown"));
        return add(count, new Found(part, title, pieces), way, by);
    }

    private BagCount add(BagCount count, Found found, Way way, String by) {
        int there = count.piecesOf(found.part());
        int then = there + found.pieces();
        if (then < 0 || then > MOST_PIECES) {
            throw refused("/pieces", "wrong.pieces-in-bag", there, found.part(), MOST_PIECES);
        }
        if (found.pieces() != 0) {
            rows.addTap(count.id(), found, way, by, now());
        }
        return getInChange(count.id());
    }

    private Optional<String> findTitle(BagCount count, PartNumber part) {
        return Stream.of(
                        count.expected().stream()
                                .filter(line -> line.part().equals(part))
                                .map(ExpectedLine::title)
                                .findAny(),
                        count.found().stream()
                                .filter(there -> there.part().equals(part))
                                .map(Found::title)
                                .findAny(),
                        catalogs.current().findPart(part).map(Part::title))
                .flatMap(Optional::stream)
                .findFirst();
    }

    /** A count, and what became of the code that was scanned or typed into it. */
    public record Scan(BagCount count, Heard heard) {}

    /**
     * Counts one piece of the part that a code names, or compares a bag label. A code that is
     * neither counts nothing.
     *
     * @throws SignedCountException when the count is signed
     */
    @Transactional
    public Scan scan(long id, String code, String by) {
        BagCount count = getForChange(id);
        String read = code.strip();
        if (BagLabel.looksLike(read)) {
            return new Scan(count, compareLabel(read, count.design()));
        }
        Optional<PartNumber> part = findPart(count, read);
        if (part.isEmpty()) {
            return new Scan(count, new Heard(Heard.Kind.UNKNOWN, Phrase.of("heard.unknown", read)));
        }
        BagCount counted = add(id, part.get(), 1, Way.SCANNED, by);
        return new Scan(counted, heard(counted, part.get()));
    }

    /** As it is written, or else with small and capital letters taken as one. */
    private Optional<PartNumber> findPart(BagCount count, String read) {
        if (!PartNumber.isOne(read)) {
            return Optional.empty();
        }
        Catalog catalog = catalogs.current();
        PartNumber exact = new PartNumber(read);
        if (findTitle(count, exact).isPresent()) {
            return Optional.of(exact);
        }
        return Stream.concat(
                        count.expected().stream().map(ExpectedLine::part),
                        catalog.listParts().stream().map(Part::number))
                .filter(part -> part.value().equalsIgnoreCase(read))
                .findFirst();
    }

    private Heard heard(BagCount count, PartNumber part) {
        Comparison comparison = count.compare();
        Optional<LineResult> line = comparison.findLine(part);
        if (line.isPresent()) {
            LineResult result = line.get();
            boolean tooMany = result.counted().compareTo(result.line().quantity()) > 0;
            Text sum =
                    Phrase.of(
                            tooMany ? "heard.too-many" : "heard.counted",
                            part,
                            result.counted(),
                            result.line().quantity());
            return tooMany
                    ? new Heard(Heard.Kind.TOO_MANY, withStandIn(sum, count, part))
                    : new Heard(Heard.Kind.COUNTED, sum);
        }
        return new Heard(
                Heard.Kind.WRONG_PART,
                withStandIn(Phrase.of("heard.wrong-part", part), count, part));
    }

    private Text withStandIn(Text sentence, BagCount count, PartNumber part) {
        String wanted =
                listPossibleSubstitutes(count).stream()
                        .filter(possible -> possible.offered().equals(part))
                        .map(possible -> possible.wanted().value())
                        .collect(Collectors.joining(", "));
        return wanted.isEmpty()
                ? sentence
                : Text.sentences(List.of(sentence, Phrase.of("heard.may-stand-in", wanted)));
    }

    private static Heard compareLabel(String code, BagDesign design) {
        List<Text> differences =
                BagLabel.parse(code)
                        .map(label -> label.differencesTo(design))
                        .orElse(List.of(Phrase.of("label.unreadable")));
        return differences.isEmpty()
                ? new Heard(Heard.Kind.RIGHT_BAG, Phrase.of("heard.right-bag"))
                : new Heard(
                        Heard.Kind.WRONG_BAG,
                        Phrase.of("heard.wrong-bag", Text.clauses(differences)));
    }

    /** Pieces in the bag that may fill a line that is short, when a person agrees. */
    public List<PossibleSubstitute> listPossibleSubstitutes(BagCount count) {
        return Substitutes.list(count.compare(), catalogs.current(), count.design());
    }

    /**
     * Notes that a person takes pieces of one part in place of another.
     *
     * @throws MalformedJobException when the rules do not allow it
     * @throws SignedCountException when the count is signed
     */
    @Transactional
    public BagCount agree(long id, PartNumber wanted, PartNumber offered, int pieces, String by) {
        BagCount count = getForChange(id);
        LineResult line =
                count.compare()
                        .findLine(wanted)
                        .orElseThrow(() -> refused("/wanted", "wrong.not-needed", wanted));
        int missing = line.difference().negate().intValue();
        if (pieces < 1 || pieces > missing) {
            throw refused("/pieces", "wrong.pieces-short", wanted, Math.max(0, missing));
        }
        Part part =
                catalogs.current()
                        .findPart(offered)
                        .orElseThrow(() -> refused("/offered", "wrong.not-in-catalog"));
        Substitution substitution =
                Substitutes.judge(line, offered, catalogs.current(), count.design())
                        .orElseThrow(() -> refused("/wanted", "wrong.no-more-in-catalog"));
        if (!substitution.allowed()) {
            throw refused("/offered", substitution.sentence());
        }
        rows.addSubstitute(
                id,
                new AgreedSubstitute(
                        wanted,
                        offered,
                        part.title(),
                        CountedKind.of(part),
                        part.massG(),
                        pieces,
                        substitution.sentence().english(),
                        by),
                now());
        return getInChange(id);
    }

    /**
     * Takes back all that was agreed for one part in place of another. The agreement stays on file.
     *
     * @throws MalformedJobException when nothing of the kind is agreed
     * @throws SignedCountException when the count is signed
     */
    @Transactional
    public BagCount withdraw(long id, PartNumber wanted, PartNumber offered, String by) {
        getForChange(id);
        if (rows.withdraw(id, wanted, offered, by, now()) == 0) {
            throw refused("/offered", "wrong.nothing-agreed", offered, wanted);
        }
        return getInChange(id);
    }

    /** What a scale can tell of this bag, with the substitutes that were agreed. */
    public WeightStatement stateWeight(BagCount count, WeighingTerms terms) {
        return WeightStatement.of(count.compare().listForScale(), terms);
    }

    /**
     * Notes what a scale showed.
     *
     * @param offScale what was left off it; empty for what the statement advises to count by hand
     * @throws MalformedJobException when nothing of the bag lay on the scale
     * @throws SignedCountException when the count is signed
     */
    @Transactional
    public BagCount weigh(
            long id,
            WeighingTerms terms,
            Optional<Set<PartNumber>> offScale,
            Weighing.Reading reading,
            String by) {
        BagCount count = getForChange(id);
        Set<PartNumber> off =
                offScale.orElseGet(
                        () ->
                                stateWeight(count, terms).byHand().stream()
                                        .map(ExpectedLine::part)
                                        .collect(Collectors.toSet()));
        if (count.compare().listForScale().stream().allMatch(line -> off.contains(line.part()))) {
            throw refused("/offScale", "wrong.nothing-on-scale");
        }
        rows.addWeighing(id, new WeighingRow(terms, off, reading, by, now()));
        return getInChange(id);
    }

    /**
     * Finishes a count, complete or not, and prints its record for good.
     *
     * @param version what the person saw
     * @throws StaleCountException when somebody added to it since
     * @throws SignedCountException when it is signed already
     */
    @Transactional
    public BagCount sign(long id, long version, String name, String remark) {
        BagCount count = getForChange(id, version);
        Signature signature = new Signature(name, now(), remark);
        CountRecord record =
                new CountRecord(
                        id,
                        count.design(),
                        count.compare(),
                        count.titles(),
                        count.weighings(),
                        findLater(count),
                        signature);
        rows.sign(
                id,
                signature,
                CountRecordPaper.print(record, Paper.A4, Wording.ENGLISH),
                CountRecordPaper.print(record, Paper.LETTER, Wording.ENGLISH));
        return getInChange(id);
    }

    /** As for {@link #sign}. */
    @Transactional
    public void delete(long id, long version) {
        getForChange(id, version);
        rows.delete(id);
    }

    /**
     * The record of a signed count, as printed when it was signed.
     *
     * @return empty while it is not signed
     * @throws UnknownCountException when there is no such count
     */
    @Transactional(readOnly = true)
    public Optional<byte[]> findRecord(long id, Paper paper) {
        rows.find(id).orElseThrow(() -> new UnknownCountException(id));
        return switch (paper) {
            case A4 -> rows.findRecordA4(id);
            case LETTER -> rows.findRecordLetter(id);
        };
    }

    /** What the job's newest revision needs otherwise; empty when the count is of the newest. */
    public Optional<Later> findLater(BagCount count) {
        OptionalInt newest = designs.findNewestRevision(count.jobId());
        if (newest.isEmpty() || newest.getAsInt() <= count.design().revision()) {
            return Optional.empty();
        }
        Optional<BagDifference> difference =
                designs.findNewestKit(count.jobId())
                        .map(kit -> ExpectedBag.of(kit, catalogs.current(), count.sets()))
                        .map(lines -> BagDifference.between(count.expected(), lines));
        return Optional.of(new Later(newest.getAsInt(), difference));
    }

    private BagCount getForChange(long id, long version) {
        BagCount count = getForChange(id);
        if (count.version() != version) {
            throw new StaleCountException(id);
        }
        return count;
    }

    private BagCount getForChange(long id) {
        BagCount count = getInChange(id);
        if (count.isSigned()) {
            throw new SignedCountException(id);
        }
        return count;
    }

    private BagCount getInChange(long id) {
        return read(rows.findForChange(id).orElseThrow(() -> new UnknownCountException(id)));
    }

    private BagCount read(Head head) {
        long id = head.id();
        List<ExpectedLine> expected = rows.listLines(id);
        return new BagCount(
                id,
                head.jobId(),
                rows.countChanges(id),
                head.design(),
                head.sets(),
                expected,
                rows.listFound(id, CountRows.EVER),
                rows.listSubstitutes(id, CountRows.EVER),
                rows.listWithdrawn(id),
                rows.listWeighings(id).stream().map(row -> judge(id, row, expected)).toList(),
                head.startedBy(),
                head.startedAt(),
                head.signature());
    }

    /** By what lay in the bag and was agreed when it was weighed, whatever came after. */
    private CountRecord.Done judge(long id, WeighingRow row, List<ExpectedLine> expected) {
        Comparison then =
                Comparison.of(
                        expected,
                        BagCount.pieces(rows.listFound(id, row.at())),
                        rows.listSubstitutes(id, row.at()));
        return new CountRecord.Done(
                Weighing.judge(then.listForScale(), row.offScale(), row.reading(), row.terms()),
                row.by(),
                row.at());
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    private static MalformedJobException refused(String pointer, String key, Object... values) {
        return refused(pointer, Phrase.of(key, values));
    }

    private static MalformedJobException refused(String pointer, Text detail) {
        return new MalformedJobException(List.of(new JobProblem(pointer, detail)));
    }
}
