package org.fusewright.papers;

/** The order of work at a bench that loads sealed blocks. */
final class WorkOrderSection {

    private static final String BASIS =
            "Order of work, crimps, loading and wedge: common practice, no published source. No"
                    + " tinned strands in a crimp: NASA-STD-8739.4. The makers' instructions for"
                    + " terminals and tools come first.";

    private final Sheet sheet;

    WorkOrderSection(Sheet sheet) {
        this.sheet = sheet;
    }

    void print() {
        new StepTable(sheet, "Order of work")
                .step("Cut", "Every lead by the cut list, with its marker on each end.")
                .step(
                        "Strip",
                        "To the length beside the cavity. Nick no strand; too much bare conductor"
                                + " makes a poor crimp.")
                .step("Seal on", "Over the lead, before the terminal. One lead in each seal.")
                .step(
                        "Crimp",
                        "Front crimp on the bare conductor, rear crimp on the seal and with it the"
                                + " insulation. Never tin the strands first.")
                .step(
                        "Pull test",
                        "Sample crimps of each size and terminal, to the force below: at the start"
                                + " and after each change of wire, terminal or tool.")
                .step(
                        "Load",
                        "Spring towards the foot of the cavity's T: it goes in one way only. Push"
                                + " until it clicks.")
                .step("Tug", "Each lead, gently: it must not come back.")
                .step("Plug", "A plug in every empty cavity.")
                .step("Splice", "Outside the block, by the splice maker's data.")
                .step(
                        "Wedge last",
                        "When every cavity is loaded or plugged. It goes home without force. When"
                                + " it refuses, a terminal or a seal is not home: find it. That"
                                + " refusal is the test; never force it.")
                .step("Close", "Devices and relays in their positions, then cap, then legend.");
        sheet.down(3);
        sheet.paragraph(Style.SMALL, BASIS);
    }
}
