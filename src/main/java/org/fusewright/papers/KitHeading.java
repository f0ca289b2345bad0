package org.fusewright.papers;

import org.fusewright.core.count.BagDesign;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.words.Wording;

import java.util.OptionalInt;

/**
 * What names a kit on each page of a paper.
 *
 * @param paper what kind of paper it is, as "Kit list"
 * @param revision of the job; empty for a job that is not kept
 */
record KitHeading(
        String paper,
        String reference,
        String title,
        String customer,
        OptionalInt revision,
        String shortFingerprint,
        String catalogVersion) {

    private static final int SHORT = 12;
    private static final int GROUP = 4;

    static KitHeading of(String paper, Kit kit, OptionalInt revision) {
        return new KitHeading(
                paper,
                kit.job().reference(),
                kit.job().title(),
                kit.job().customer(),
                revision,
                PaperFont.BOLD.printable(grouped(shortened(kit.fingerprint()))),
                kit.catalogVersion());
    }

    static KitHeading of(String paper, BagDesign design) {
        return new KitHeading(
                paper,
                design.reference(),
                design.title(),
                design.customer(),
                OptionalInt.of(design.revision()),
                PaperFont.BOLD.printable(grouped(shortened(design.fingerprint()))),
                design.catalogVersion());
    }

    /** What a viewer shows in its title bar. */
    String documentTitle() {
        return PaperFont.REGULAR.printable(paper + " " + reference + ": " + title);
    }

    /** The reference with the revision, where there is one. */
    String referenceAndRevision(Wording wording) {
        return revision.isPresent()
                ? wording.say("print.frame.reference-revision", reference, revision.getAsInt())
                : reference;
    }

    /** The first twelve signs: enough to tell two designs apart. */
    static String shortened(String fingerprint) {
        return fingerprint.substring(0, Math.min(SHORT, fingerprint.length()));
    }

    static String grouped(String signs) {
        StringBuilder groups = new StringBuilder();
        for (int from = 0; from < signs.length(); from += GROUP) {
            groups.append(from == 0 ? "" : " ")
                    .append(signs, from, Math.min(from + GROUP, signs.length()));
        }
        return groups.toString();
    }
}
