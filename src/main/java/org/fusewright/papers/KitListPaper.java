package org.fusewright.papers;

import org.fusewright.core.kit.Kit;

import java.util.OptionalInt;

/**
 * The kit list: what a person at a bench needs to pick, cut, load and check one kit. The same kit
 * on the same paper gives the same bytes.
 */
public final class KitListPaper {

    private KitListPaper() {}

    /** Prints as PDF. */
    public static byte[] print(Kit kit, Paper paper) {
        Sheet sheet =
                new Sheet(
                        paper,
                        KitHeading.of("Kit list", kit, OptionalInt.empty()),
                        kit.fingerprint());
        new StatusSection(sheet, kit).print();
        new CautionsSection(sheet).print();
        new ChecksSection(sheet, kit).print();
        new BlocksSection(sheet, kit).print();
        new FeedsSection(sheet, kit).print();
        new PartsSection(sheet, kit).print();
        new CutListSection(sheet, kit).print();
        new CavitiesSection(sheet, kit).print();
        new TimeCurrentSection(sheet, kit).print();
        new DeadShortsSection(sheet, kit).print();
        new SignOffSection(sheet).print();
        return sheet.close();
    }
}
