package org.fusewright.papers;

import org.fusewright.core.check.Verdict;
import org.fusewright.core.kit.Kit;

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
        sheet.pen().text(Style.MARK, statement(), x, baseline);
        baseline = sheet.y() - PAD - Style.MARK.leading() - BELOW_MARK - Style.BODY.ascent();
        sheet.pen().text(Style.BODY, verdicts(), x, baseline);
        sheet.pen().text(Style.BODY, amount(), x, baseline - Style.BODY.leading());
        sheet.down(height + PAD / 2);
        sheet.paragraph(Style.SMALL, design());
    }

    /** In full what the title block may have to cut. */
    private String design() {
        return "Job %s: %s, for %s. Fingerprint %s; catalog %s."
                .formatted(
                        kit.job().reference(),
                        kit.job().title(),
                        kit.job().customer(),
                        kit.fingerprint(),
                        kit.catalogVersion());
    }

    private String statement() {
        if (kit.circuits().isEmpty()) {
            return "Nothing to build: the job has no circuits";
        }
        return switch (kit.worst()) {
            case PASS -> "✔ Buildable";
            case CAUTION -> "⚠ Buildable when a person agrees to the cautions";
            case FAIL -> "✘ Not buildable: do not build it as it is";
        };
    }

    private String verdicts() {
        return "Checks: %s, %s, %d in all."
                .formatted(
                        counted(count(Verdict.FAIL), "fail"),
                        counted(count(Verdict.CAUTION), "caution"),
                        kit.checks().size());
    }

    private String amount() {
        long leads = kit.wire().stream().mapToLong(line -> line.leads().size()).sum();
        return "%s V system: %s, %s, %s; parts weigh about %s g."
                .formatted(
                        Figures.of(kit.job().supply().nominalV()),
                        counted(kit.circuits().size(), "circuit"),
                        counted(kit.blocks().size(), "block"),
                        counted(leads, "lead"),
                        Math.round(kit.totals().massG()));
    }

    private long count(Verdict verdict) {
        return kit.checks().stream().filter(check -> check.verdict() == verdict).count();
    }

    private static String counted(long count, String thing) {
        return count + " " + thing + (count == 1 ? "" : "s");
    }
}
