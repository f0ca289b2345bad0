package org.fusewright.papers;

import org.fusewright.core.check.Verdict;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Unit;

/** Whether the kit may be built, in words with a sign, and what it amounts to. */
final class StatusSection {

    private static final float PAD = 7;
    private static final float BELOW_MARK = 2;

    private final Sheet sheet;
    private final Kit kit;

    StatusSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    void print() {
        float height = 2 * PAD + BELOW_MARK + Style.MARK.leading() + 2 * Style.BODY.leading();
        float base = sheet.y() - height;
        sheet.pen().box(Style.THICK, sheet.left(), base, sheet.width(), height);
        float x = sheet.left() + PAD;
        float baseline = sheet.y() - PAD - Style.MARK.ascent();
        line(Style.MARK, statement(), x, baseline);
        baseline = sheet.y() - PAD - Style.MARK.leading() - BELOW_MARK - Style.BODY.ascent();
        line(Style.BODY, verdicts(), x, baseline);
        line(Style.BODY, amount(), x, baseline - Style.BODY.leading());
        sheet.down(height + PAD / 2);
        sheet.paragraph(Style.SMALL, design());
    }

    private void line(Lettering lettering, String text, float x, float baseline) {
        float room = sheet.width() - 2 * PAD;
        sheet.pen().text(lettering.fitting(text, room), text, x, baseline);
    }

    /** In full what the title block may have to cut. */
    private String design() {
        return sheet.say(
                "print.status.design",
                kit.job().reference(),
                kit.job().title(),
                kit.job().customer(),
                kit.fingerprint(),
                kit.catalogVersion());
    }

    private String statement() {
        return sheet.say(
                kit.circuits().isEmpty()
                        ? "print.status.nothing"
                        : switch (kit.worst()) {
                            case PASS -> "print.status.pass";
                            case CAUTION -> "print.status.caution";
                            case FAIL -> "print.status.fail";
                        });
    }

    private String verdicts() {
        return sheet.say(
                "print.status.verdicts",
                Phrase.counted("print.status.fails", count(Verdict.FAIL)),
                Phrase.counted("print.status.cautions", count(Verdict.CAUTION)),
                kit.checks().size());
    }

    private String amount() {
        long leads = kit.wire().stream().mapToLong(line -> line.leads().size()).sum();
        return sheet.say(
                "print.status.amount",
                sheet.figures().of(kit.job().supply().nominalV()),
                Phrase.counted("print.status.circuits", kit.circuits().size()),
                Phrase.counted("print.status.blocks", kit.blocks().size()),
                Phrase.counted("print.status.leads", leads),
                new Amount(Math.round(kit.totals().massG()), Unit.GRAM, 0));
    }

    private long count(Verdict verdict) {
        return kit.checks().stream().filter(check -> check.verdict() == verdict).count();
    }
}
