package org.fusewright.papers;

import org.fusewright.catalogs.load.CatalogFolder;
import org.fusewright.core.job.Job;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitPlanner;
import org.fusewright.jobs.load.JobReader;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Kits as the planner makes them from the sample catalog. */
public final class PlannedKits {

    private static final KitPlanner PLANNER =
            KitPlanner.of(CatalogFolder.read(Path.of("catalog-sample")).catalog());

    private static final String QUAD =
            """
            {"reference": "TQ-014", "title": "Trail patrol quad", "customer": "Highmoor Trails",
             "currency": "EUR",
             "supply": {"nominalV": 12, "engineOffV": 12.2, "chargingV": 14.2,
                        "batteryResistanceMilliohm": 12, "chargingOutputA": 25},
             "surroundings": {"ambientC": 40, "blockAmbientC": 50, "bundledLeads": 5},
             "feeds": [
               {"id": "battery", "terminal": "30", "lengthM": 0.6, "sourceDistanceM": 0.15},
               {"id": "switched", "terminal": "15", "lengthM": 0.9, "sourceDistanceM": 0.2}],
             "circuits": [%s
               {"id": "pump", "title": "Fuel pump", "feed": "battery", "location": "under seat",
                "essential": true, "runM": 1.1, "returnPath": "wire", "colour": "VT",
                "devices": ["auto-reset", "fuse"],
                "relay": {"triggerFrom": "controller", "triggerM": 0.8, "groundM": 0.3},
                "loads": [{"title": "Pump", "kind": "pump", "amps": 5.2, "ratedV": 13.5,
                           "duty": "continuous"}]},
               {"id": "lamps", "title": "Work lamps", "feed": "switched",
                "location": "under seat", "runM": 1.6, "returnPath": "chassis",
                "loads": [{"title": "Left lamp", "kind": "led", "watts": 18, "branchM": 0.3},
                          {"title": "Right lamp", "kind": "led", "watts": 18, "branchM": 0.5}]}]}
            """;

    private PlannedKits() {}

    static Kit quad() {
        return plan(QUAD.formatted(""));
    }

    /** The quad with twelve circuits more, at two places. */
    public static Kit equippedQuad() {
        String more =
                IntStream.rangeClosed(1, 12)
                        .mapToObj(PlannedKits::circuit)
                        .collect(Collectors.joining());
        return plan(QUAD.replace("TQ-014", "TQ-015").formatted(more));
    }

    /** The kits of all sample jobs, by their references. */
    static List<Kit> listSamples() {
        try (Stream<Path> files = Files.list(Path.of("catalog-sample/jobs"))) {
            List<Kit> kits = new ArrayList<>();
            for (Path file : files.sorted().toList()) {
                kits.add(plan(Files.readString(file)));
            }
            return kits;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static List<Kit> listKits() {
        return List.of(quad(), equippedQuad());
    }

    private static String circuit(int number) {
        return """
        {"id": "extra-%1$d", "title": "Extra %1$d", "feed": "%2$s", "location": "%3$s",
         "runM": 1.%1$d, "returnPath": "wire",
         "loads": [{"title": "Load", "kind": "%4$s", "watts": %5$d}]},
        """
                .formatted(
                        number,
                        number % 2 == 0 ? "battery" : "switched",
                        number % 3 == 0 ? "tail" : "under seat",
                        List.of("led", "motor", "filament-lamp", "socket").get(number % 4),
                        10 + 7 * number);
    }

    private static Kit plan(String json) {
        Job job = JobReader.read(json.getBytes(StandardCharsets.UTF_8)).getJob();
        return PLANNER.plan(job);
    }
}
