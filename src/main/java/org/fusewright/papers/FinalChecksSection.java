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
        StepTable steps = new StepTable(sheet, "Final checks, before any battery");
        steps.step(
                        "Cavities",
                        "Each has its lead with terminal and seal, or a plug. No seal is pinched,"
                                + " every wedge sits flush.")
                .step("Continuity", "Each lead from end to end; none to the lead beside it.")
                .step(
                        "Shorts",
                        "Loads unplugged, devices in: no feed has continuity to ground, but through"
                                + " a relay's coil.")
                .step(
                        "Devices",
                        "Kind, rating and colour in each position as the legend says; no rating is"
                                + " higher.");
        if (kit.blocks().stream()
                .flatMap(block -> block.seats().stream())
                .anyMatch(seat -> seat.part() instanceof Relay)) {
            steps.step(
                    "Relays",
                    "Coil on a current-limited supply, 86 to plus and 85 to minus: it clicks, and"
                            + " 30 has continuity to 87 only then.");
        }
        steps.step("Main devices", "Each in its holder, but left open until the kit is installed.")
                .step(
                        "Bag",
                        "Spares in their bag, markers on every lead, legend on every cap, label on"
                                + " the bag.");
    }
}
