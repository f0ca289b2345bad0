package org.fusewright.contract;

import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * Makes job documents from a seed: the same seed always gives the same job. They ask only for what
 * the sample catalog stocks, but not only for what can be built.
 */
public final class JobGenerator {

    private static final JsonMapper JSON = JsonMapper.shared();

    private static final String[] KINDS = {
        "resistive", "filament-lamp", "led", "electronic", "motor", "pump", "coil", "socket"
    };
    private static final String[] COLOURS = {"BK", "RD", "VT", "YE", "BU", "RDBK", "TQ", "WHGN"};
    private static final String[] GAUGES = {"0.75 mm2", "1.5 mm2", "2.5 mm2", "16 AWG", "12 AWG"};
    private static final double[] FUSES = {2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30};
    private static final double[] MAIN_FUSES = {20, 30, 40, 60, 80};
    private static final String[] MAIN_GAUGES = {"1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2"};
    private static final String[] PLACES = {"under seat", "headstock", "tail"};
    private static final String[] BLOCK_PARTS = {"WDB-3", "WDB-4", "WDB-8"};
    private static final String[] ARRANGEMENTS = {
        "cheapest", "fewest-blocks", "most-spare", "coolest", "one-block-type"
    };

    private final Random random;
    private final double nominalV;

    private JobGenerator(long seed) {
        this.random = new Random(seed);
        this.nominalV = random.nextInt(10) == 0 ? 6 : random.nextInt(4) == 0 ? 24 : 12;
    }

    public static ObjectNode generate(long seed) {
        return new JobGenerator(seed).job("GEN-" + seed);
    }

    private ObjectNode job(String reference) {
        ObjectNode job = JSON.createObjectNode();
        job.put("reference", reference);
        job.put("title", "Generated machine");
        job.put("currency", chance(80) ? "EUR" : "USD");
        ObjectNode supply = job.putObject("supply");
        supply.put("nominalV", nominalV);
        supply.put("engineOffV", nominalV * 1.02);
        supply.put("chargingV", nominalV * 1.18);
        supply.put("batteryResistanceMilliohm", between(5, 40));
        if (chance(70)) {
            supply.put("chargingOutputA", between(5, 60));
        }
        if (chance(30)) {
            supply.put("idleOutputA", between(1, 5));
        }
        ObjectNode surroundings = job.putObject("surroundings");
        surroundings.put("ambientC", between(10, 60));
        surroundings.put("blockAmbientC", between(20, 80));
        surroundings.put("bundledLeads", 1 + random.nextInt(12));
        ArrayNode feeds = job.putArray("feeds");
        int feedCount = 1 + random.nextInt(3);
        for (int i = 0; i < feedCount; i++) {
            ObjectNode feed = feeds.addObject();
            feed.put("id", "feed-" + i);
            feed.put("terminal", i == 0 ? "30" : "15");
            feed.put("lengthM", between(0.2, 2));
            feed.put("sourceDistanceM", between(0.05, 0.5));
            if (chance(30)) {
                feed.put("diversity", between(0.1, 1));
            }
            if (chance(10)) {
                feed.put("ratingA", MAIN_FUSES[random.nextInt(MAIN_FUSES.length)]);
            }
            if (chance(10)) {
                feed.put("gauge", MAIN_GAUGES[random.nextInt(MAIN_GAUGES.length)]);
            }
        }
        ArrayNode circuits = job.putArray("circuits");
        int circuitCount = random.nextInt(15);
        for (int i = 0; i < circuitCount; i++) {
            circuits.add(circuit(i, feedCount, circuits));
        }
        ObjectNode choices = choices();
        job.set("choices", choices);
        if (chance(25)) {
            boolean fixed = chance(50);
            circuits.forEach(circuit -> addPlaces((ObjectNode) circuit, fixed));
        }
        if (chance(30)) {
            choices.put("arrangement", ARRANGEMENTS[random.nextInt(ARRANGEMENTS.length)]);
        }
        return job;
    }

    /** Some can be had and some cannot. */
    private void addPlaces(ObjectNode circuit, boolean fixed) {
        boolean device = circuit.at("/relay/contactFrom").isMissingNode();
        if (device && chance(40)) {
            addPlace(circuit, circuit.get("location").asString(), fixed);
        }
        if (circuit.get("relay") instanceof ObjectNode relay && chance(40)) {
            addPlace(relay, circuit.get("location").asString(), fixed);
        }
    }

    /** A block is at one location. */
    private void addPlace(ObjectNode holder, String location, boolean fixed) {
        ObjectNode place = holder.putObject("place");
        place.put("block", location.charAt(0) + "-" + (1 + random.nextInt(3)));
        if (chance(30)) {
            place.put("part", BLOCK_PARTS[random.nextInt(BLOCK_PARTS.length)]);
        }
        if (chance(60)) {
            place.put("position", 1 + random.nextInt(8));
        }
        if (!fixed || chance(50)) {
            place.put("fixed", fixed);
        }
    }

    private ObjectNode circuit(int index, int feedCount, ArrayNode before) {
        ObjectNode circuit = JSON.createObjectNode();
        circuit.put("id", "c" + index);
        circuit.put("title", "Circuit " + index);
        circuit.put("feed", "feed-" + random.nextInt(feedCount));
        circuit.put("location", PLACES[chance(70) ? 0 : random.nextInt(PLACES.length)]);
        circuit.put("essential", chance(40));
        circuit.put("runM", between(0.2, 3));
        circuit.put("returnPath", chance(50) ? "chassis" : "wire");
        if (chance(40)) {
            circuit.put("colour", COLOURS[random.nextInt(COLOURS.length)]);
        }
        if (chance(30)) {
            circuit.putArray("devices").add("fuse");
            if (chance(50)) {
                circuit.put("ratingA", FUSES[random.nextInt(FUSES.length)]);
            }
        }
        if (chance(15)) {
            circuit.put("gauge", GAUGES[random.nextInt(GAUGES.length)]);
        }
        if (nominalV > 6 && chance(30)) {
            circuit.set("relay", relay(circuit, feedCount, before));
        }
        ArrayNode loads = circuit.putArray("loads");
        int loadCount = chance(60) ? 1 : 1 + random.nextInt(5);
        for (int i = 0; i < loadCount; i++) {
            loads.add(load(i));
        }
        return circuit;
    }

    private ObjectNode relay(ObjectNode circuit, int feedCount, ArrayNode before) {
        ObjectNode relay = JSON.createObjectNode();
        relay.put("triggerFrom", chance(60) ? "controller" : "feed-" + random.nextInt(feedCount));
        relay.put("triggerM", between(0.1, 1.5));
        relay.put("groundM", between(0.1, 1));
        List<String> owners = new ArrayList<>();
        before.forEach(
                other -> {
                    boolean sharesPlace =
                            other.get("feed").equals(circuit.get("feed"))
                                    && other.get("location").equals(circuit.get("location"));
                    if (sharesPlace && other.at("/relay/contactFrom").isMissingNode()) {
                        owners.add(other.get("id").asString());
                    }
                });
        if (!owners.isEmpty() && chance(40)) {
            relay.put("contactFrom", owners.get(random.nextInt(owners.size())));
        }
        return relay;
    }

    private ObjectNode load(int index) {
        ObjectNode load = JSON.createObjectNode();
        load.put("title", "Load " + index);
        load.put("kind", KINDS[random.nextInt(KINDS.length)]);
        double amps = chance(85) ? between(0.1, 6) : between(6, 40);
        if (chance(50)) {
            load.put("amps", amps);
        } else {
            load.put("watts", amps * nominalV);
        }
        if (chance(50)) {
            load.put("ratedV", nominalV * 1.1);
        }
        if (chance(20)) {
            load.put("count", 1 + random.nextInt(4));
        }
        load.put("duty", chance(80) ? "continuous" : "momentary");
        if (chance(60)) {
            load.put("branchM", between(0, 1));
        }
        if (chance(20)) {
            load.putObject("inrush").put("multiple", between(1, 12)).put("ms", between(1, 400));
        }
        return load;
    }

    private ObjectNode choices() {
        ObjectNode choices = JSON.createObjectNode();
        List<String> kinds = new ArrayList<>(List.of("auto-reset", "manual-reset", "fuse"));
        Collections.shuffle(kinds, random);
        kinds.subList(0, 1 + random.nextInt(3)).forEach(choices.putArray("devices")::add);
        choices.put("lockingWedge", chance(80));
        choices.put("plugEmptyCavities", chance(80));
        choices.put("sparePositions", chance(60) ? 0 : random.nextInt(5));
        choices.put("spareFusesPerRating", random.nextInt(3));
        choices.put("slackPercent", random.nextInt(12));
        choices.put("endAllowanceMm", random.nextInt(60));
        choices.put("cutStepMm", 1 + random.nextInt(25));
        return choices;
    }

    private boolean chance(int percent) {
        return random.nextInt(100) < percent;
    }

    /** Rounded as a person would write it. */
    private double between(double low, double high) {
        return Math.round((low + random.nextDouble() * (high - low)) * 100) / 100.0;
    }
}
