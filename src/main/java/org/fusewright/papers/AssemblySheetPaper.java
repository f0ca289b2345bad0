package org.fusewright.papers;

import org.fusewright.core.kit.Kit;

/** The assembly sheet: how the bench puts the kit together, step by step, cavity by cavity. */
final class AssemblySheetPaper {

    private AssemblySheetPaper() {}

    static void print(Sheet sheet, Kit kit) {
        new StatusSection(sheet, kit).print();
        new CautionsSection(sheet).print();
        new WorkOrderSection(sheet).print();
        new PullTestSection(sheet, kit).print();
        new AssemblySection(sheet, kit).print();
        new RelayWiringSection(sheet, kit).print();
        FeedsSection outside = new FeedsSection(sheet, kit);
        outside.printSplices();
        outside.printMainDevices();
        new OutsideLeadsSection(sheet, kit).print();
        new FinalChecksSection(sheet, kit).print();
        new SignOffSection(sheet).print();
    }
}
