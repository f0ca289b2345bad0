package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.sizing.DeadShort;
import org.fusewright.papers.PlannedKits;
import org.fusewright.web.Figures;
import org.junit.jupiter.api.Test;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

class DeadShortsTableTest {

    private static final TemplateEngine ENGINE =
            TemplateEngine.createPrecompiled(null, ContentType.Html, null, "org.fusewright.pages");

    /** Cells in their order, a bar between. */
    private static String table(List<DeadShort> shorts, Device device) {
        StringOutput out = new StringOutput();
        ENGINE.render(
                "jobs/deadshorts.jte",
                Map.of(
                        "shorts",
                        shorts,
                        "device",
                        device,
                        "circuit",
                        "c",
                        "job",
                        1L,
                        "revision",
                        0),
                out);
        return out.toString()
                .replaceAll("</t[dh]>", "|")
                .replaceAll("<[^>]*>", "")
                .replaceAll("\\s+", " ")
                .replace("| ", "|");
    }

    @Test
    void tellsWhatTheKitHolds() {
        for (KitCircuit circuit : PlannedKits.equippedQuad().circuits()) {
            List<DeadShort> shorts = circuit.sized().study().orElseThrow().deadShorts();
            Device device = circuit.sized().device().orElseThrow();
            String text = table(shorts, device);
            assertThat(text)
                    .contains("breaks up to " + Figures.plain(device.interruptingA(), 0) + " A.");
            for (DeadShort told : shorts) {
                boolean near = told.place() == DeadShort.Place.AT_DEVICE;
                assertThat(text)
                        .contains(
                                String.join(
                                        "|",
                                        near ? "at the device" : "at the far end",
                                        Figures.short3(told.prospectiveA()),
                                        Figures.short3(told.clearsS().orElseThrow()),
                                        Figures.short3(told.letThroughA2s()),
                                        Figures.short3(told.survivesA2s()),
                                        Figures.plain(told.endC(), 0),
                                        told.lead()));
            }
        }
    }

    @Test
    void marksWhatDoesNotHoldAndLeavesNoCellEmpty() {
        Device device =
                PlannedKits.equippedQuad().circuits().getFirst().sized().device().orElseThrow();
        List<DeadShort> shorts =
                List.of(
                        new DeadShort(
                                DeadShort.Place.AT_DEVICE,
                                device.interruptingA() + 500,
                                OptionalDouble.of(0.02),
                                45_000,
                                11_482,
                                400,
                                "c/out"),
                        new DeadShort(
                                DeadShort.Place.FAR_END,
                                12,
                                OptionalDouble.empty(),
                                720,
                                11_482,
                                95,
                                "c/out"));

        assertThat(table(shorts, device))
                .contains("at the device|✗ more than it breaks: 1500|0.02|45000|✗ 11482|400|c/out|")
                .contains("at the far end|12|need not open|720 in 5 s|11482|95|c/out|");
    }
}
