package org.fusewright.jobs;

import static java.util.Map.entry;

import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Language;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;

import tools.jackson.databind.JsonNode;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What a job's fields are called on the bench, and their values in words. */
final class FieldWords {
    private static final Text NOTHING = Text.verbatim("–");
    private static final int DECIMALS = 4;

    private static final Map<String, Unit> UNITS =
            Map.ofEntries(
                    entry("nominalV", Unit.VOLT),
                    entry("engineOffV", Unit.VOLT),
                    entry("chargingV", Unit.VOLT),
                    entry("ratedV", Unit.VOLT),
                    entry("chargingOutputA", Unit.AMPERE),
                    entry("idleOutputA", Unit.AMPERE),
                    entry("ratingA", Unit.AMPERE),
                    entry("amps", Unit.AMPERE),
                    entry("watts", Unit.WATT),
                    entry("batteryResistanceMilliohm", Unit.MILLIOHM),
                    entry("ambientC", Unit.CELSIUS),
                    entry("blockAmbientC", Unit.CELSIUS),
                    entry("sourceDistanceM", Unit.METRE),
                    entry("lengthM", Unit.METRE),
                    entry("fromFeedM", Unit.METRE),
                    entry("runM", Unit.METRE),
                    entry("triggerM", Unit.METRE),
                    entry("groundM", Unit.METRE),
                    entry("branchM", Unit.METRE),
                    entry("maxDropPercent", Unit.PERCENT),
                    entry("slackPercent", Unit.PERCENT),
                    entry("endAllowanceMm", Unit.MILLIMETRE),
                    entry("cutStepMm", Unit.MILLIMETRE),
                    entry("pigtailMm", Unit.MILLIMETRE),
                    entry("jumperMm", Unit.MILLIMETRE));

    private FieldWords() {}

    /** What a field is called; one that is unknown by its name in the document. */
    static Text label(String field) {
        String key = "field." + field.toLowerCase(Locale.ROOT);
        return Language.ENGLISH.keys().contains(key) ? Phrase.of(key) : Text.verbatim(field);
    }

    /** A value of a field with its unit, such as "1.1 m". */
    static Text print(String field, JsonNode value) {
        if (value.isMissingNode() || value.isEmpty() && value.isContainer()) {
            return NOTHING;
        }
        return switch (field) {
            case JobFields.AMOUNT -> amount(value);
            case JobFields.PLACE -> place(value);
            case JobFields.INRUSH ->
                    Phrase.of(
                            "field-value.inrush",
                            plain("multiple", value.path("multiple")),
                            plain("ms", value.path("ms")));
            case JobFields.RELAY -> plain("triggerFrom", value.path("triggerFrom"));
            default -> plain(field, value);
        };
    }

    private static Text amount(JsonNode value) {
        List<Text> amounts = new ArrayList<>();
        for (String unit : JobFields.AMOUNTS) {
            if (value.has(unit)) {
                amounts.add(plain(unit, value.get(unit)));
            }
        }
        return Text.listed(amounts);
    }

    private static Text place(JsonNode value) {
        String block = value.path("block").asString("");
        String position = value.has("position") ? "-" + value.get("position").asString("") : "";
        return value.path("fixed").asBoolean(false)
                ? Phrase.of("field-value.kept-at", block + position)
                : Text.verbatim(block + position);
    }

    private static Text plain(String field, JsonNode value) {
        if (value.isArray()) {
            List<Text> elements = new ArrayList<>();
            value.forEach(element -> elements.add(plain(field, element)));
            return Text.listed(elements);
        }
        if (value.isNumber()) {
            Unit unit = UNITS.getOrDefault(field, Unit.NONE);
            return new Amount(value.doubleValue(), unit, DECIMALS);
        }
        if (value.isBoolean()) {
            return Phrase.of(value.booleanValue() ? "field-value.yes" : "field-value.no");
        }
        String text = value.asString("");
        String code =
                switch (field) {
                    case "kind" -> "load-kind." + text;
                    case "devices" -> "device-kind." + text;
                    case "returnPath" -> "sheet.return." + text;
                    case "duty" -> "sheet.duty." + text;
                    default -> "";
                };
        if (text.isEmpty()) {
            return NOTHING;
        }
        return Language.ENGLISH.keys().contains(code) ? Phrase.of(code) : Text.verbatim(text);
    }

    /** What a row of a list is called: "circuit pump", or "load Pump" of one. */
    static Text subject(String list, JsonNode row, int index) {
        for (NamedList named : NamedList.values()) {
            if (named.field().equals(list)) {
                return Phrase.of("change-of." + named.field(), row.path(named.key()).asString(""));
            }
        }
        String title = row.path("title").asString("");
        return Phrase.of("change-of.loads", title.isEmpty() ? String.valueOf(index + 1) : title);
    }
}
