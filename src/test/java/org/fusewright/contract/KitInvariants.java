package org.fusewright.contract;

import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Seal;
import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.catalog.Wire;

import tools.jackson.databind.JsonNode;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Recomputes from a kit document what must hold in every one, and lists what does not. */
final class KitInvariants {

    private final JsonNode job;
    private final JsonNode kit;
    private final Catalog catalog;
    private final List<String> broken = new ArrayList<>();
    private final Map<String, Integer> need = new TreeMap<>();
    private final Map<String, JsonNode> leads = new TreeMap<>();

    private KitInvariants(JsonNode job, JsonNode kit, Catalog catalog) {
        this.job = job;
        this.kit = kit;
        this.catalog = catalog;
    }

    static List<String> listBroken(JsonNode job, JsonNode kit, Catalog catalog) {
        KitInvariants invariants = new KitInvariants(job, kit, catalog);
        invariants.collectLeads();
        invariants.checkBlocks();
        invariants.checkPlaces();
        invariants.checkPick();
        invariants.checkCircuits();
        invariants.checkFeeds();
        invariants.checkPartsCoverTheDrawing();
        invariants.checkLines();
        invariants.checkWire();
        invariants.checkCuts();
        invariants.checkSpares();
        invariants.checkVerdicts();
        return invariants.broken;
    }

    private void hold(boolean holds, String otherwise) {
        if (!holds) {
            broken.add(otherwise);
        }
    }

    private void collectLeads() {
        for (String owners : List.of("circuits", "feeds")) {
            for (JsonNode owner : kit.get(owners)) {
                for (JsonNode lead : owner.get("leads")) {
                    hold(
                            leads.put(lead.get("id").asString(), lead) == null,
                            "lead id twice: " + lead.get("id"));
                }
            }
        }
    }

    private void checkBlocks() {
        boolean wedges = job.at("/choices/lockingWedge").asBoolean(true);
        boolean plugs = job.at("/choices/plugEmptyCavities").asBoolean(true);
        int free = 0;
        for (JsonNode block : kit.get("blocks")) {
            String id = block.get("id").asString();
            int positions = block.get("positions").asInt();
            hold(block.get("cavities").size() == 2 * positions, id + ": two cavities a position");
            need(block, "part");
            need(block, "cap");
            hold(block.has("wedge") == wedges, id + ": wedge as chosen");
            if (block.has("wedge")) {
                need(block, "wedge");
            }
            free += positions - checkHolds(id, block, positions);
            for (JsonNode cavity : block.get("cavities")) {
                checkCavity(cavity, plugs);
            }
        }
        if (!kit.get("blocks").isEmpty() && kit.get("buildable").asBoolean()) {
            hold(
                    free >= job.at("/choices/sparePositions").asInt(0),
                    "asked-for spare positions are free");
        }
    }

    /** What has a place sits there, or it is told that it does not. */
    private void checkPlaces() {
        for (JsonNode circuit : job.get("circuits")) {
            checkPlace(circuit, "device", circuit.path("place"));
            checkPlace(circuit, "relay", circuit.at("/relay/place"));
        }
    }

    private void checkPlace(JsonNode circuit, String what, JsonNode place) {
        String id = circuit.get("id").asString();
        for (JsonNode block : kit.get("blocks")) {
            for (JsonNode held : block.get("holds")) {
                if (!held.get("circuit").asString().equals(id) || !held.has(what)) {
                    continue;
                }
                boolean there = place.isObject() && isAt(place, block, held);
                boolean fixed = place.isObject() && place.path("fixed").asBoolean(true);
                String item = id + "/" + what;
                hold(
                        isToldUnkept(item) == (fixed && !there),
                        item + ": a fixed place is kept, or said to be impossible");
                hold(
                        isToldMoved(id, what) == (place.isObject() && !fixed && !there),
                        item + ": said to move when it does");
            }
        }
    }

    private static boolean isAt(JsonNode place, JsonNode block, JsonNode held) {
        return block.get("id").equals(place.get("block"))
                && (!place.has("part") || block.get("part").equals(place.get("part")))
                && (!place.has("position")
                        || held.at("/positions/0").asInt() == place.get("position").asInt());
    }

    private boolean isToldUnkept(String item) {
        for (JsonNode check : kit.get("checks")) {
            if (check.get("code").asString().equals("place-kept")
                    && check.get("subject").asString().endsWith(", " + item)) {
                return check.get("verdict").asString().equals("fail");
            }
        }
        return false;
    }

    private boolean isToldMoved(String circuit, String what) {
        for (JsonNode moved : kit.at("/fit/moved")) {
            if (moved.get("circuit").asString().equals(circuit)
                    && moved.get("what").asString().equals(what)) {
                return true;
            }
        }
        return false;
    }

    private void checkPick() {
        String asked = job.at("/choices/arrangement").asString("cheapest");
        String built = kit.at("/fit/arrangement").asString();
        hold(
                built.equals(asked) || (asked.equals("one-block-type") && built.equals("cheapest")),
                "the picked arrangement is built: " + asked + ", not " + built);
        if (built.equals("one-block-type")) {
            Set<String> types = new HashSet<>();
            kit.get("blocks").forEach(block -> types.add(block.get("part").asString()));
            hold(types.size() <= 1, "blocks of one type: " + types);
        }
    }

    private int checkHolds(String id, JsonNode block, int positions) {
        Block part = (Block) part(block.get("part").asString());
        Set<Integer> taken = new HashSet<>();
        for (JsonNode held : block.get("holds")) {
            List<Integer> at = new ArrayList<>();
            held.get("positions").forEach(position -> at.add(position.asInt()));
            for (int position : at) {
                hold(
                        position >= 1 && position <= positions && taken.add(position),
                        id + ": position " + position + " held once, inside the block");
            }
            if (held.has("relay")) {
                need(held, "relay");
                hold(
                        at.size() == 2
                                && at.get(1) == at.get(0) + 1
                                && part.relayPairs().contains(new Block.RelayPair(at.get(0))),
                        id + ": a relay on a listed pair, not " + at);
            } else {
                need(held, "device");
                hold(at.size() == 1, id + ": a device on one position");
            }
        }
        return taken.size();
    }

    private void checkCavity(JsonNode cavity, boolean plugs) {
        String id = cavity.get("id").asString();
        if (!cavity.has("lead")) {
            hold(cavity.has("plug") == plugs, id + ": plug as chosen");
            hold(!cavity.has("terminal") && !cavity.has("seal"), id + ": nothing but a plug");
            if (cavity.has("plug")) {
                need(cavity, "plug");
            }
            return;
        }
        hold(!cavity.has("plug"), id + ": no plug beside a lead");
        hold(cavity.has("terminal") && cavity.has("seal"), id + ": terminal and seal");
        JsonNode lead = leads.get(cavity.get("lead").asString());
        hold(lead != null, id + ": its lead exists");
        if (lead == null || !cavity.has("terminal") || !cavity.has("seal")) {
            return;
        }
        need(cavity, "terminal");
        need(cavity, "seal");
        hold(
                id.equals(lead.get("from").asString()) || id.equals(lead.get("to").asString()),
                id + ": its lead ends there");
        Wire wire = (Wire) part(lead.get("part").asString());
        Terminal terminal = (Terminal) part(cavity.get("terminal").asString());
        Seal seal = (Seal) part(cavity.get("seal").asString());
        hold(terminal.accepts(wire.copperMm2()), id + ": terminal takes " + wire.size());
        hold(seal.accepts(wire.outsideMm()), id + ": seal takes " + wire.outsideMm() + " mm");
    }

    private void checkCircuits() {
        Map<String, Integer> ends = new HashMap<>();
        for (JsonNode lead : leads.values()) {
            ends.merge(lead.get("from").asString(), 1, Integer::sum);
            ends.merge(lead.get("to").asString(), 1, Integer::sum);
        }
        for (JsonNode block : kit.get("blocks")) {
            for (JsonNode cavity : block.get("cavities")) {
                int expected = cavity.has("lead") ? 1 : 0;
                hold(
                        ends.getOrDefault(cavity.get("id").asString(), 0) == expected,
                        cavity.get("id") + ": " + expected + " lead ends there");
            }
        }
        Map<String, Integer> held = new HashMap<>();
        for (JsonNode block : kit.get("blocks")) {
            for (JsonNode item : block.get("holds")) {
                String what = item.has("relay") ? "relay of " : "device of ";
                held.merge(what + item.get("circuit").asString(), 1, Integer::sum);
            }
        }
        for (int i = 0; i < job.get("circuits").size(); i++) {
            JsonNode asked = job.get("circuits").get(i);
            JsonNode circuit = kit.get("circuits").get(i);
            String id = asked.get("id").asString();
            hold(circuit.get("id").asString().equals(id), id + ": circuits in the job's order");
            boolean borrows = asked.at("/relay/contactFrom").isString();
            hold(circuit.has("device") != borrows, id + ": a device of its own unless it borrows");
            if (kit.get("buildable").asBoolean()) {
                hold(
                        held.getOrDefault("device of " + id, 0) == (borrows ? 0 : 1),
                        id + ": its device has one position");
                hold(
                        held.getOrDefault("relay of " + id, 0) == (asked.has("relay") ? 1 : 0),
                        id + ": its relay has one pair");
            }
            needSplices(circuit);
        }
    }

    private void checkFeeds() {
        for (JsonNode feed : kit.get("feeds")) {
            hold(
                    feed.has("device") == !feed.get("leads").isEmpty(),
                    feed.get("id") + ": a main device when it serves anything");
            if (feed.has("device")) {
                need(feed.get("device"), "part");
                need(feed, "holder");
            }
            needSplices(feed);
        }
    }

    private void needSplices(JsonNode owner) {
        for (JsonNode splice : owner.get("splices")) {
            need(splice, "part");
            long meeting =
                    leads.values().stream()
                            .filter(
                                    lead ->
                                            lead.get("from").equals(splice.get("id"))
                                                    || lead.get("to").equals(splice.get("id")))
                            .count();
            hold(
                    meeting == splice.get("leads").asInt(),
                    splice.get("id")
                            + ": "
                            + meeting
                            + " leads meet, it says "
                            + splice.get("leads"));
        }
    }

    private void need(JsonNode node, String field) {
        need.merge(node.get(field).asString(), 1, Integer::sum);
    }

    private void checkPartsCoverTheDrawing() {
        Map<String, Integer> given = new TreeMap<>();
        Map<String, Integer> surplus = new TreeMap<>();
        Set<String> loose = new HashSet<>();
        for (JsonNode line : kit.get("parts")) {
            String group = line.get("group").asString();
            int quantity = line.get("quantity").asInt();
            if (group.equals("set")) {
                for (JsonNode content : line.get("contains")) {
                    given.merge(
                            content.get("part").asString(),
                            quantity * content.get("quantity").asInt(),
                            Integer::sum);
                }
                for (JsonNode left : line.get("surplus")) {
                    surplus.merge(
                            left.get("part").asString(),
                            left.get("quantity").asInt(),
                            Integer::sum);
                }
            } else if (!group.equals("wire") && !group.equals("spare")) {
                String part = line.get("part").asString();
                given.merge(part, quantity, Integer::sum);
                hold(loose.add(part), part + ": one loose row");
                hold(line.get("usedAt").size() == quantity, part + ": a place for each piece");
            }
        }
        Set<String> all = new HashSet<>(need.keySet());
        all.addAll(given.keySet());
        for (String part : all) {
            int left = given.getOrDefault(part, 0) - need.getOrDefault(part, 0);
            hold(
                    left == surplus.getOrDefault(part, 0),
                    part
                            + ": given "
                            + given.get(part)
                            + ", needed "
                            + need.get(part)
                            + ", surplus "
                            + surplus.get(part));
            hold(left == 0 || !loose.contains(part), part + ": loose while a bag's piece is left");
        }
    }

    private void checkLines() {
        BigDecimal sum = BigDecimal.ZERO;
        double massG = 0;
        int minorDigits = 2;
        for (JsonNode line : kit.get("parts")) {
            BigDecimal extended = line.get("extended").decimalValue();
            BigDecimal exact =
                    line.get("quantity")
                            .decimalValue()
                            .multiply(line.get("unitPrice").decimalValue())
                            .setScale(minorDigits, RoundingMode.HALF_UP);
            hold(
                    extended.compareTo(exact) == 0,
                    line.get("part") + ": " + extended + " is " + exact);
            hold(!line.get("usedAt").isEmpty(), line.get("part") + ": used somewhere");
            sum = sum.add(extended);
            massG += line.get("massG").asDouble();
        }
        hold(sum.compareTo(kit.at("/totals/parts").decimalValue()) == 0, "total is " + sum);
        hold(Math.abs(massG - kit.at("/totals/massG").asDouble()) < 0.5, "mass is " + massG);
    }

    private void checkWire() {
        Map<String, BigDecimal> cut = new TreeMap<>();
        Map<String, Integer> cuts = new TreeMap<>();
        for (JsonNode lead : leads.values()) {
            String part = lead.get("part").asString();
            cut.merge(part, lead.get("cutM").decimalValue(), BigDecimal::add);
            cuts.merge(part, 1, Integer::sum);
        }
        Set<String> seen = new HashSet<>();
        for (JsonNode row : kit.get("wire")) {
            String part = row.get("part").asString();
            hold(seen.add(part), part + ": one wire row");
            hold(
                    cut.getOrDefault(part, BigDecimal.ZERO)
                                    .compareTo(row.get("totalM").decimalValue())
                            == 0,
                    part + ": totalM " + row.get("totalM") + " is " + cut.get(part));
            hold(cuts.getOrDefault(part, 0) == row.get("cuts").asInt(), part + ": cuts");
        }
        hold(seen.equals(cut.keySet()), "wire rows " + seen + " for " + cut.keySet());
        Set<String> listed = new HashSet<>();
        for (JsonNode line : kit.get("parts")) {
            if (line.get("group").asString().equals("wire")) {
                String part = line.get("part").asString();
                listed.add(part);
                hold(
                        cut.getOrDefault(part, BigDecimal.ZERO)
                                        .compareTo(line.get("quantity").decimalValue())
                                == 0,
                        part + ": parts list holds its total");
            }
        }
        hold(listed.equals(cut.keySet()), "parts list holds every wire");
    }

    private void checkCuts() {
        double slack = job.at("/choices/slackPercent").asDouble(5) / 100;
        long allowanceMm = job.at("/choices/endAllowanceMm").asInt(40);
        long stepMm = job.at("/choices/cutStepMm").asInt(10);
        for (JsonNode lead : leads.values()) {
            long cutMm = lead.get("cutM").decimalValue().movePointRight(3).longValueExact();
            double leastMm = lead.get("routeM").asDouble() * (1 + slack) * 1000 + 2 * allowanceMm;
            hold(cutMm % stepMm == 0, lead.get("id") + ": cut in whole steps, not " + cutMm);
            hold(
                    cutMm >= leastMm - 0.6 && cutMm < leastMm + stepMm + 0.6,
                    lead.get("id") + ": cut " + cutMm + " mm for " + leastMm + " mm");
        }
    }

    private void checkSpares() {
        int each = job.at("/choices/spareFusesPerRating").asInt(1);
        for (JsonNode line : kit.get("parts")) {
            if (line.get("group").asString().equals("spare")) {
                hold(line.get("quantity").asInt() == each, line.get("part") + ": spares");
            }
        }
        if (each == 0) {
            return;
        }
        Set<Double> spareRatings = new HashSet<>();
        for (JsonNode line : kit.get("parts")) {
            if (line.get("group").asString().equals("spare")) {
                spareRatings.add(((Device) part(line.get("part").asString())).ratingA());
            }
        }
        for (JsonNode block : kit.get("blocks")) {
            for (JsonNode held : block.get("holds")) {
                if (held.has("device")) {
                    double rating = ((Device) part(held.get("device").asString())).ratingA();
                    hold(
                            spareRatings.stream().anyMatch(spare -> spare <= rating),
                            rating + " A: a spare that may stand in");
                }
            }
        }
    }

    private void checkVerdicts() {
        boolean fails = false;
        Set<String> seen = new HashSet<>();
        for (JsonNode check : kit.get("checks")) {
            String what = check.get("code").asString() + " of " + check.get("subject").asString();
            String verdict = check.get("verdict").asString();
            fails |= verdict.equals("fail");
            hold(seen.add(what), what + ": checked once");
            hold(!check.get("basis").asString().isBlank(), what + ": has a basis");
            hold(
                    !verdict.equals("pass") || check.get("margin").asDouble() >= 0,
                    what + ": passes with a margin of " + check.get("margin"));
        }
        hold(kit.get("buildable").asBoolean() == !fails, "buildable when nothing fails");
    }

    private Part part(String number) {
        return catalog.getPart(new PartNumber(number));
    }
}
