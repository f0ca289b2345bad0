package org.fusewright.jobs;

import static java.util.Map.entry;

import tools.jackson.databind.JsonNode;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What a job's fields are called on the bench, and their values in words. */
final class FieldWords {
    private record Word(String label, String unit) {}

    private static final String NOTHING = "–";

    private static final Map<String, Word> WORDS =
            Map.ofEntries(
                    entry("nominalV", new Word("voltage", "V")),
                    entry("engineOffV", new Word("voltage with the engine off", "V")),
                    entry("chargingV", new Word("charging voltage", "V")),
                    entry("chargingOutputA", new Word("output at speed", "A")),
                    entry("idleOutputA", new Word("output at idle", "A")),
                    entry("batteryResistanceMilliohm", new Word("battery resistance", "mΩ")),
                    entry("ambientC", new Word("around the leads", "°C")),
                    entry("blockAmbientC", new Word("under the cap", "°C")),
                    entry("bundledLeads", new Word("leads in a bundle", "")),
                    entry("sourceDistanceM", new Word("source to main device", "m")),
                    entry("lengthM", new Word("main device to block", "m")),
                    entry("diversity", new Word("share drawn at once", "")),
                    entry("fromFeedM", new Word("added to each feed", "m")),
                    entry("location", new Word("place", "")),
                    entry("runM", new Word("run", "m")),
                    entry("returnPath", new Word("return", "")),
                    entry("maxDropPercent", new Word("most drop", "%")),
                    entry("ratingA", new Word("fixed rating", "A")),
                    entry("gauge", new Word("fixed gauge", "")),
                    entry("triggerFrom", new Word("relay triggered by", "")),
                    entry("triggerM", new Word("trigger lead", "m")),
                    entry("groundM", new Word("relay ground", "m")),
                    entry("contactFrom", new Word("contact fed by", "")),
                    entry("place", new Word("position", "")),
                    entry("amount", new Word("draws", "")),
                    entry("ratedV", new Word("at", "V")),
                    entry("branchM", new Word("branch", "m")),
                    entry("wireFamily", new Word("wire family", "")),
                    entry("arrangement", new Word("arrangement of blocks", "")),
                    entry("lockingWedge", new Word("locking wedges", "")),
                    entry("plugEmptyCavities", new Word("plug empty cavities", "")),
                    entry("sparePositions", new Word("spare positions", "")),
                    entry("spareFusesPerRating", new Word("spare fuses a rating", "")),
                    entry("slackPercent", new Word("slack", "%")),
                    entry("endAllowanceMm", new Word("allowance an end", "mm")),
                    entry("cutStepMm", new Word("cutting step", "mm")),
                    entry("pigtailMm", new Word("splice to cavity", "mm")),
                    entry("jumperMm", new Word("device to relay", "mm")));

    private FieldWords() {}

    /** What a field is called; one without a word of its own by its name. */
    static String label(String field) {
        return WORDS.getOrDefault(field, new Word(field, "")).label();
    }

    /** A value of a field with its unit, such as "1.1 m". */
    static String print(String field, JsonNode value) {
        String unit = WORDS.getOrDefault(field, new Word(field, "")).unit();
        if (value.isMissingNode() || value.isEmpty() && value.isContainer()) {
            return NOTHING;
        }
        return switch (field) {
            case JobFields.AMOUNT -> amount(value);
            case JobFields.PLACE -> place(value);
            case JobFields.INRUSH ->
                    plain(value.path("multiple")) + " × for " + plain(value.path("ms")) + " ms";
            case JobFields.RELAY -> relay(value);
            default -> plain(value) + (unit.isEmpty() ? "" : " " + unit);
        };
    }

    private static String amount(JsonNode value) {
        List<String> amounts = new ArrayList<>();
        for (String unit : JobFields.AMOUNTS) {
            if (value.has(unit)) {
                amounts.add(plain(value.get(unit)) + (unit.equals("watts") ? " W" : " A"));
            }
        }
        return String.join(" and ", amounts);
    }

    private static String place(JsonNode value) {
        String at = plain(value.path("block"));
        String position = value.has("position") ? "-" + plain(value.get("position")) : "";
        return at + position + (value.path("fixed").asBoolean(false) ? ", kept" : "");
    }

    private static String relay(JsonNode value) {
        return "triggered by " + plain(value.path("triggerFrom"));
    }

    private static String plain(JsonNode value) {
        if (value.isArray()) {
            List<String> elements = new ArrayList<>();
            value.forEach(element -> elements.add(plain(element)));
            return String.join(", then ", elements);
        }
        if (value.isNumber()) {
            return value.decimalValue().stripTrailingZeros().toPlainString();
        }
        if (value.isBoolean()) {
            return value.booleanValue() ? "yes" : "no";
        }
        return value.isMissingNode() ? NOTHING : value.asString("");
    }

    /** What a row of a list is called: "circuit pump", or "load Pump" of one. */
    static String subject(String list, JsonNode row, int index) {
        for (NamedList named : NamedList.values()) {
            if (named.field().equals(list)) {
                return named.word() + " " + row.path(named.key()).asString("");
            }
        }
        String title = row.path("title").asString("");
        return "load " + (title.isEmpty() ? String.valueOf(index + 1) : title);
    }
}
