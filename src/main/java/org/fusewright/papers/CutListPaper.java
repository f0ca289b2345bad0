package org.fusewright.papers;

import org.fusewright.core.kit.Kit;

/** The cut list: every lead to cut, and a marker to print for each of its ends. */
final class CutListPaper {

    private CutListPaper() {}

    static void print(Sheet sheet, Kit kit) {
        new StatusSection(sheet, kit).print();
        new CautionsSection(sheet).print();
        new CutListSection(sheet, kit).print();
        new MarkersSection(sheet, kit).print();
    }
}
