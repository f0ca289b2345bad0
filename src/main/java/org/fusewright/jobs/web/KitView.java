package org.fusewright.jobs.web;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.kit.PartLine;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** A kit in the order in which its page shows it. */
public record KitView(Kit kit) {
    public List<Check> checks(Verdict verdict) {
        return kit.checks().stream().filter(check -> check.verdict() == verdict).toList();
    }

    /** The parts by group, in the order of a bench's work; groups without parts are left out. */
    public Map<PartGroup, List<PartLine>> partsByGroup() {
        Map<PartGroup, List<PartLine>> groups = new EnumMap<>(PartGroup.class);
        for (PartGroup group : PartGroup.values()) {
            List<PartLine> lines =
                    kit.parts().stream().filter(line -> line.group() == group).toList();
            if (!lines.isEmpty()) {
                groups.put(group, lines);
            }
        }
        return groups;
    }

    /** The verdict of the whole kit, as a sign and in words. */
    public String verdict() {
        int fails = checks(Verdict.FAIL).size();
        int cautions = checks(Verdict.CAUTION).size();
        if (fails > 0) {
            return "✗ Must not be built as it is: "
                    + counted(fails, "check fails", "checks fail")
                    + (cautions > 0 ? ", " + counted(cautions, "caution", "cautions") : "");
        }
        return cautions > 0
                ? "! Buildable, with "
                        + counted(cautions, "caution", "cautions")
                        + " for you to agree to"
                : "✓ Buildable: all " + kit.checks().size() + " checks pass";
    }

    /** Such as "4 × A-1, 2 × A-2". */
    public static String counted(List<BaggedSet.Content> contents) {
        return contents.stream()
                .map(content -> content.quantity() + " × " + content.part())
                .collect(Collectors.joining(", "));
    }

    private static String counted(int number, String one, String more) {
        return number + " " + (number == 1 ? one : more);
    }
}
