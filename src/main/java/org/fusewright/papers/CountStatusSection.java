package org.fusewright.papers;

import org.fusewright.core.count.BagDesign;
import org.fusewright.core.count.Comparison.State;
import org.fusewright.core.count.CountRecord;
import org.fusewright.core.count.CountRecord.Signature;
import org.fusewright.core.words.Phrase;

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
        String statement = statement();
        sheet.pen()
                .text(
                        Style.MARK.fitting(statement, room),
                        statement,
                        x,
                        sheet.y() - PAD - Style.MARK.ascent());
        float baseline = sheet.y() - PAD - Style.MARK.leading() - BELOW_MARK - Style.BODY.ascent();
        for (String line : lines) {
            sheet.pen().text(Style.BODY, line, x, baseline);
            baseline -= Style.BODY.leading();
        }
        sheet.down(height + PAD / 2);
        remark().ifPresent(
                        remark ->
                                sheet.paragraph(Style.BODY, sheet.say("counts.remarked", remark)));
        sheet.paragraph(Style.SMALL, design());
    }

    private Optional<String> remark() {
        String remark = record.signature().remark();
        return remark.isBlank() ? Optional.empty() : Optional.of(remark);
    }

    private String statement() {
        if (!record.comparison().isComplete()) {
            return sheet.say("print.count.incomplete");
        }
        return substitutes() == 0
                ? sheet.say("print.count.complete")
                : sheet.say(Phrase.counted("print.count.complete-with", substitutes()));
    }

    private String amount() {
        return sheet.say(
                "print.count.amount",
                Phrase.counted("print.count.of-lines", record.comparison().lines().size()),
                count(State.COMPLETE),
                count(State.SHORT),
                count(State.OVER),
                Phrase.counted("print.count.parts-wrong", record.comparison().unexpected().size()));
    }

    private String signed() {
        Signature signature = record.signature();
        return sheet.say(
                "print.count.signed",
                signature.name(),
                Moments.of(signature.at(), sheet.wording()));
    }

    private String older(CountRecord.Later later) {
        return sheet.say(
                "print.count.older",
                record.design().revision(),
                later.revision(),
                Phrase.of(
                        later.difference().isEmpty()
                                ? "print.count.no-kit"
                                : later.difference().get().isNothing()
                                        ? "counts.same-parts"
                                        : "print.count.what-to-send"));
    }

    private String design() {
        BagDesign design = record.design();
        return sheet.say(
                "print.count.design",
                record.number(),
                design.reference(),
                design.revision(),
                design.title(),
                design.customer().isEmpty() ? sheet.say("print.count.the-shop") : design.customer(),
                design.fingerprint(),
                design.catalogVersion());
    }

    private long substitutes() {
        return record.comparison().lines().stream().mapToLong(line -> line.standIns().size()).sum();
    }

    private long count(State state) {
        return record.comparison().lines().stream().filter(line -> line.state() == state).count();
    }
}
