package org.fusewright.jobs.web;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.kit.KitFeed;
import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.sizing.SizedFeed;
import org.fusewright.core.words.Phrase;
import org.fusewright.web.Figures;
import org.fusewright.web.Words;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** A kit in the order in which its page shows it. */
public final class KitView {
    private static final Said NOTHING = new Said(List.of());

    private final Kit kit;
    private final Map<String, Said> said = new HashMap<>();
    private final Map<String, SizedCircuit> circuits = new LinkedHashMap<>();
    private final Map<String, SizedFeed> feeds = new LinkedHashMap<>();
    private final Belonging belonging;
    private final List<KeptPlace> places;

    KitView(Kit kit) {
        this.kit = kit;
        belonging = new Belonging(kit);
        places = KeptPlace.listOf(kit);
        kit.checks().stream()
                .collect(Collectors.groupingBy(check -> key(check.subject())))
                .forEach((key, checks) -> said.put(key, new Said(checks)));
        for (KitCircuit circuit : kit.circuits()) {
            circuits.put(circuit.sized().id(), circuit.sized());
        }
        for (KitFeed feed : kit.feeds()) {
            feeds.put(feed.sized().id(), feed.sized());
        }
    }

    private static String key(Subject subject) {
        return subject.scope() + ":" + subject.id();
    }

    public Kit kit() {
        return kit;
    }

    public Belonging belonging() {
        return belonging;
    }

    /** The places asked for that are told of at a block. */
    public List<KeptPlace> places(KitBlock block) {
        return places.stream().filter(place -> place.block().equals(block.id())).toList();
    }

    /** A block from the wire side, as SVG. */
    public String wireSide(KitBlock block) {
        return WireSideDrawing.draw(block, belonging);
    }

    /** A block from the device side, as SVG. */
    public String deviceSide(KitBlock block) {
        return DeviceSideDrawing.draw(block, belonging, kit.job().circuits(), places);
    }

    /** What the checks say of a circuit, feed or block by its id, or of the job by an empty one. */
    public Said said(Subject.Scope scope, String id) {
        return said.getOrDefault(scope + ":" + id, NOTHING);
    }

    /** What belongs beside no circuit, feed or block. */
    public Said saidOfTheRest() {
        Set<String> blocks = kit.blocks().stream().map(KitBlock::id).collect(Collectors.toSet());
        return new Said(
                kit.checks().stream()
                        .filter(check -> !isShownElsewhere(check.subject(), blocks))
                        .toList());
    }

    private boolean isShownElsewhere(Subject subject, Set<String> blocks) {
        return switch (subject.scope()) {
            case JOB -> false;
            case CIRCUIT -> circuits.containsKey(subject.id());
            case FEED -> feeds.containsKey(subject.id());
            case BLOCK -> blocks.contains(subject.id());
        };
    }

    public Optional<SizedCircuit> findCircuit(String id) {
        return Optional.ofNullable(circuits.get(id));
    }

    public Optional<SizedFeed> findFeed(String id) {
        return Optional.ofNullable(feeds.get(id));
    }

    /** The device chosen for a circuit, such as "10 A auto-reset"; empty when there is none. */
    public String deviceOfCircuit(String id) {
        return findCircuit(id)
                .map(
                        circuit ->
                                circuit.device()
                                        .map(KitView::named)
                                        .orElseGet(
                                                () ->
                                                        circuit.resolved()
                                                                .circuit()
                                                                .contactFrom()
                                                                .map(
                                                                        other ->
                                                                                Words.say(
                                                                                        "sheet.device-of",
                                                                                        other))
                                                                .orElseGet(
                                                                        () ->
                                                                                Words.say(
                                                                                        "sheet.device-of-another"))))
                .orElse("");
    }

    /** The main device chosen for a feed; empty when there is none. */
    public String deviceOfFeed(String id) {
        return findFeed(id).flatMap(SizedFeed::mainDevice).map(KitView::named).orElse("");
    }

    private static String named(Device device) {
        return Words.say(
                "device." + device.kind().code(), Figures.plain(device.ratingA(), 2) + "\u00a0A");
    }

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
            return cautions > 0
                    ? Words.say(
                            "kit.must-not-be-built-with",
                            Phrase.counted("kit.checks-fail", fails),
                            Phrase.counted("kit.cautions", cautions))
                    : Words.say("kit.must-not-be-built", Phrase.counted("kit.checks-fail", fails));
        }
        return cautions > 0
                ? Words.say("kit.buildable-with", Phrase.counted("kit.with-cautions", cautions))
                : Words.say("kit.buildable", kit.checks().size());
    }

    /** Such as "4 × A-1, 2 × A-2". */
    public static String counted(List<BaggedSet.Content> contents) {
        return contents.stream()
                .map(content -> content.quantity() + " × " + content.part())
                .collect(Collectors.joining(", "));
    }
}
