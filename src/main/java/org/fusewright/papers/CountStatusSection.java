package org.fusewright.papers;

import org.fusewright.core.count.BagDesign;
import org.fusewright.core.count.Comparison.State;
import org.fusewright.core.count.CountRecord;
import org.fusewright.core.count.CountRecord.Signature;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Whether the bag is complete, and who says so. */
final class CountStatusSection {

    private static final float PAD = 7;
    private static final float BELOW_MARK = 2;

    private final Sheet sheet;
    private final CountRecord record;

    CountStatusSection(Sheet sheet, CountRecord record) {
        this.sheet = sheet;
        this.record = record;
    }

    void print() {
        List<String> lines = new ArrayList<>();
        float room = sheet.width() - 2 * PAD;
        lines.addAll(Style.BODY.wrap(amount(), room));
        lines.addAll(Style.BODY.wrap(signed(), room));
        record.later().ifPresent(later -> lines.addAll(Style.BODY.wrap(older(later), room)));
        float height =
                2 * PAD + BELOW_MARK + Style.MARK.leading() + lines.size() * Style.BODY.leading();
        sheet.pen().box(Style.THICK, sheet.left(), sheet.y() - height, sheet.width(), height);
        float x = sheet.left() + PAD;
        sheet.pen().text(Style.MARK, statement(), x, sheet.y() - PAD - Style.MARK.ascent());
        float baseline = sheet.y() - PAD - Style.MARK.leading() - BELOW_MARK - Style.BODY.ascent();
        for (String line : lines) {
            sheet.pen().text(Style.BODY, line, x, baseline);
            baseline -= Style.BODY.leading();
        }
        sheet.down(height + PAD / 2);
        remark().ifPresent(remark -> sheet.paragraph(Style.BODY, "Remark: " + remark));
        sheet.paragraph(Style.SMALL, design());
    }

    private Optional<String> remark() {
        String remark = record.signature().remark();
        return remark.isBlank() ? Optional.empty() : Optional.of(remark);
    }

    private String statement() {
        if (!record.comparison().isComplete()) {
            return "✘ Not complete";
        }
        return substitutes() == 0
                ? "✔ Complete"
                : "✔ Complete with " + counted(substitutes(), "agreed substitute");
    }

    private String amount() {
        return "%s: %d complete, %d short, %d with too many; %s."
                .formatted(
                        counted(record.comparison().lines().size(), "line"),
                        count(State.COMPLETE),
                        count(State.SHORT),
                        count(State.OVER),
                        counted(record.comparison().unexpected().size(), "wrong part"));
    }

    private String signed() {
        Signature signature = record.signature();
        return "Counted and signed by %s on %s."
                .formatted(signature.name(), Moments.of(signature.at()));
    }

    private String older(CountRecord.Later later) {
        return "⚠ Counted against revision %d; the job has revision %d. %s"
                .formatted(
                        record.design().revision(),
                        later.revision(),
                        later.difference().isEmpty()
                                ? "There is no kit for it as it stands."
                                : later.difference().get().isNothing()
                                        ? "It needs the same parts."
                                        : "What to send after stands below.");
    }

    private String design() {
        BagDesign design = record.design();
        return "Count %d of job %s, revision %d: %s, for %s. Fingerprint %s; catalog %s."
                .formatted(
                        record.number(),
                        design.reference(),
                        design.revision(),
                        design.title(),
                        design.customer().isEmpty() ? "the shop" : design.customer(),
                        design.fingerprint(),
                        design.catalogVersion());
    }

    private long substitutes() {
        return record.comparison().lines().stream().mapToLong(line -> line.standIns().size()).sum();
    }

    private long count(State state) {
        return record.comparison().lines().stream().filter(line -> line.state() == state).count();
    }

    private static String counted(long count, String thing) {
        return count + " " + thing + (count == 1 ? "" : "s");
    }
}
