package org.fusewright.papers;

import org.fusewright.core.kit.Kit;

/** What names a kit on each of its pages. */
record KitHeading(
        String reference,
        String title,
        String customer,
        String shortFingerprint,
        String catalogVersion) {

    private static final int SHORT = 12;
    private static final int GROUP = 4;

    static KitHeading of(Kit kit) {
        return new KitHeading(
                kit.job().reference(),
                kit.job().title(),
                kit.job().customer(),
                PaperFont.BOLD.printable(shorten(kit.fingerprint())),
                kit.catalogVersion());
    }

    /** What a viewer shows in its title bar. */
    String documentTitle() {
        return PaperFont.REGULAR.printable("Kit list " + reference + ": " + title);
    }

    /** The first twelve signs in groups of four: enough to tell two designs apart by eye. */
    private static String shorten(String fingerprint) {
        StringBuilder groups = new StringBuilder();
        for (int from = 0; from < Math.min(SHORT, fingerprint.length()); from += GROUP) {
            groups.append(from == 0 ? "" : " ")
                    .append(fingerprint, from, Math.min(from + GROUP, fingerprint.length()));
        }
        return groups.toString();
    }
}
