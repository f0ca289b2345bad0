package org.fusewright.papers;

import org.fusewright.core.kit.Kit;

/** The kit list: what a person at a bench needs to pick, cut, load and check one kit. */
final class KitListPaper {

    private KitListPaper() {}

    static void print(Sheet sheet, Kit kit) {
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
    }
}
