package org.fusewright.papers;

import org.fusewright.core.catalog.Relay;
import org.fusewright.core.kit.Kit;

/** What is looked at and measured before the kit leaves the bench. */
final class FinalChecksSection {

    private final Sheet sheet;
    private final Kit kit;

    FinalChecksSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    void print() {
        if (kit.blocks().isEmpty()) {
            return;
        }
        StepTable steps =
                new StepTable(sheet, "print.final.title", "print.final-check.", "print.final-how.");
        steps.step("cavities").step("continuity").step("shorts").step("devices");
        if (kit.blocks().stream()
                .flatMap(block -> block.seats().stream())
                .anyMatch(seat -> seat.part() instanceof Relay)) {
            steps.step("relays");
        }
        steps.step("main-devices").step("bag");
    }
}
