package org.fusewright.counts;

import org.fusewright.core.count.BagDesign;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the bar code of a bag label says: {@code FW1|reference|revision|first 12 of fingerprint}.
 */
record BagLabel(String reference, String revision, String fingerprint) {
    private static final String START = "FW1|";
    private static final int SHORT = 12;

    static boolean looksLike(String code) {
        return code.startsWith(START);
    }

    /** References may hold the separator themselves: the last two fields are revision and print. */
    static Optional<BagLabel> parse(String code) {
        int print = code.lastIndexOf('|');
        int revision = print < 0 ? -1 : code.lastIndexOf('|', print - 1);
        if (!looksLike(code) || revision < START.length()) {
            return Optional.empty();
        }
        return Optional.of(
                new BagLabel(
                        code.substring(START.length(), revision),
                        code.substring(revision + 1, print),
                        code.substring(print + 1)));
    }

    /** In what this label differs from a design; empty when it is its label. */
    List<Text> differencesTo(BagDesign design) {
        List<Text> differences = new ArrayList<>();
        if (!reference.equals(design.reference())) {
            differences.add(Phrase.of("label.other-job", reference, design.reference()));
        }
        if (!revision.equals(Integer.toString(design.revision()))) {
            differences.add(Phrase.of("label.other-revision", revision, design.revision()));
        }
        String print = shortened(design.fingerprint());
        if (!fingerprint.equals(print)) {
            differences.add(Phrase.of("label.other-fingerprint", fingerprint, print));
        }
        return differences;
    }

    private static String shortened(String fingerprint) {
        return fingerprint.substring(0, Math.min(SHORT, fingerprint.length()));
    }
}
