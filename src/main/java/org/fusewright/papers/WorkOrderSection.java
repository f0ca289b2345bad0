package org.fusewright.papers;

/** The order of work at a bench that loads sealed blocks. */
final class WorkOrderSection {

    private final Sheet sheet;

    WorkOrderSection(Sheet sheet) {
        this.sheet = sheet;
    }

    void print() {
        new StepTable(sheet, "print.work.title", "print.work-step.", "print.work-how.")
                .step("cut")
                .step("strip")
                .step("seal")
                .step("crimp")
                .step("pull-test")
                .step("load")
                .step("tug")
                .step("plug")
                .step("splice")
                .step("wedge")
                .step("close");
        sheet.down(3);
        sheet.paragraph(Style.SMALL, sheet.say("print.work.basis"));
    }
}
