package org.fusewright.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.util.List;

class JobDifferenceTest {
    private static final JsonMapper MAPPER = new JsonMapper();

    static final String JOB =
            """
            {"reference": "A-1", "title": "Quad", "supply": {"nominalV": 12},
             "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.6}],
             "circuits": [
               {"id": "pump", "feed": "battery", "runM": 1.1, "essential": false,
                "relay": {"triggerFrom": "battery", "triggerM": 0.8, "groundM": 0.3},
                "loads": [{"kind": "pump", "amps": 5.2}]},
               {"id": "lamps", "feed": "battery", "runM": 1.6,
                "loads": [{"title": "Left", "kind": "led", "watts": 18},
                          {"title": "Right", "kind": "led", "watts": 18}]}]}
            """;

    private static JsonNode json(String text) {
        return MAPPER.readTree(text);
    }

    private static List<String> says(String before, String after) {
        return JobDifference.list(json(before), json(after)).stream()
                .map(change -> change.says().english())
                .toList();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"runM\": 1.1 | \"runM\": 1.3 | circuit pump: run 1.1 m → 1.3 m",
                "\"amps\": 5.2 | \"watts\": 60 | circuit pump: draws 5.2 A → 60 W",
                "\"nominalV\": 12 | \"nominalV\": 24 | voltage 12 V → 24 V",
                "\"title\": \"Quad\" | \"title\": \"Trike\" | title Quad → Trike",
                "\"triggerM\": 0.8 | \"triggerM\": 1 |" + " circuit pump: trigger lead 0.8 m → 1 m",
                "\"essential\": false | \"essential\": true | circuit pump: essential no → yes",
                "\"title\": \"Left\", \"kind\": \"led\" | \"title\": \"Left\", \"kind\": \"coil\" |"
                        + " circuit lamps, load Left: kind led → coil",
                "\"id\": \"pump\" | \"id\": \"fuel-pump\" | circuit pump: id pump → fuel-pump",
                "\"lengthM\": 0.6 | \"lengthM\": 0.9 |"
                        + " feed battery: main device to block 0.6 m → 0.9 m",
                "\"runM\": 1.6 | \"runM\": 1.6, \"devices\": [\"fuse\", \"auto-reset\"] |"
                        + " circuit lamps: devices – → fuse, auto-reset",
                "\"runM\": 1.6 | \"runM\": 1.6, \"place\": {\"block\": \"B1\", \"position\": 2,"
                        + " \"fixed\": true} | circuit lamps: position – → B1-2, kept",
            })
    void saysWhatChanged(String before, String after, String says) {
        assertThat(JOB).contains(before);
        assertThat(says(JOB, JOB.replace(before, after))).containsExactly(says);
    }

    @Test
    void namesRowsThatCameAndWent() {
        String fewer = JOB.replaceFirst("(?s),\\s*\\{\"title\": \"Right\".*?}", "");
        assertThat(says(JOB, fewer)).containsExactly("circuit lamps, load Right removed");
        assertThat(says(fewer, JOB)).containsExactly("circuit lamps, load Right added");
        String more = JOB.replace("\"circuits\": [", "\"circuits\": [{\"id\": \"horn\"},");
        assertThat(says(JOB, more)).containsExactly("circuit horn added");
        assertThat(says(more, JOB)).containsExactly("circuit horn removed");
    }

    @Test
    void findsNothingWhereBothMeanTheSame() {
        assertThat(says(JOB, JOB)).isEmpty();
        assertThat(says(JOB, JOB.replace("1.6", "1.60"))).isEmpty();
        assertThat(says(JOB, JOB.replace("\"nominalV\": 12", "\"nominalV\": 12.0"))).isEmpty();
        assertThat(says(JOB, JOB.replace("\"essential\": false,", ""))).isEmpty();
        assertThat(says(JOB, JOB.replace("\"runM\": 1.6", "\"runM\": 1.6, \"ratingA\": null")))
                .isEmpty();
        assertThat(
                        says(
                                JOB,
                                JOB.replace(
                                        "\"supply\"",
                                        "\"choices\": {\"lockingWedge\": true}, \"supply\"")))
                .isEmpty();
    }

    @Test
    void tellsOfAnotherOrder() {
        String one = "{\"circuits\": [{\"id\": \"a\"}, {\"id\": \"b\"}]}";
        String other = "{\"circuits\": [{\"id\": \"b\"}, {\"id\": \"a\"}]}";
        assertThat(says(one, other)).containsExactly("order of circuits a, b → b, a");
    }
}
