package org.fusewright.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.util.List;

class JobMergeTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final String JOB = JobDifferenceTest.JOB;
    private static final String HORN =
            "{\"id\": \"horn\", \"feed\": \"battery\", \"runM\": 1, \"loads\": []}";

    private static JsonNode json(String text) {
        return MAPPER.readTree(text);
    }

    private static JobMerge.Joined join(String mine, String theirs) {
        return JobMerge.join(json(JOB), json(mine), json(theirs));
    }

    private static String with(String circuit) {
        return JOB.strip().replaceFirst("]}$", ", " + circuit + "]}");
    }

    private static String withoutLamps() {
        return JOB.replaceFirst("(?s),\\s*\\{\"id\": \"lamps\".*", "]}");
    }

    private static List<String> says(String expected, JobMerge.Joined joined) {
        return JobDifference.list(json(expected), joined.document()).stream()
                .map(change -> change.says().english())
                .toList();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"runM\": 1.1 | \"runM\": 1.3 | \"runM\": 1.6 | \"runM\": 2",
                "\"amps\": 5.2 | \"watts\": 60 | \"kind\": \"pump\" | \"kind\": \"motor\"",
                "\"triggerM\": 0.8 | \"triggerM\": 1 | \"groundM\": 0.3 | \"groundM\": 0.5",
                "\"id\": \"pump\" | \"id\": \"fuel\" | \"runM\": 1.1 | \"runM\": 1.3",
                "\"nominalV\": 12 | \"nominalV\": 24 | \"lengthM\": 0.6 | \"lengthM\": 1",
                "\"title\": \"Left\", \"kind\" | \"title\": \"L\", \"kind\" |"
                        + " \"runM\": 1.6 | \"runM\": 2",
            })
    void keepsBothWhereTheyChangedDifferentFields(
            String one, String mine, String other, String theirs) {
        JobMerge.Joined joined = join(JOB.replace(one, mine), JOB.replace(other, theirs));
        assertThat(joined.clashes()).isEmpty();
        assertThat(says(JOB.replace(one, mine).replace(other, theirs), joined)).isEmpty();
        JobMerge.Joined turned = join(JOB.replace(other, theirs), JOB.replace(one, mine));
        assertThat(turned.clashes()).isEmpty();
        assertThat(says(JOB.replace(one, mine).replace(other, theirs), turned)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"runM\": 1.1 | \"runM\": 1.3 | \"runM\": 1.5 |"
                        + " /circuits/0/runM | run of circuit pump | 1.3 m | 1.5 m",
                "\"amps\": 5.2 | \"watts\": 60 | \"amps\": 6 | /circuits/0/loads/0/amount |"
                        + " draws of circuit pump, load 1 | 60 W | 6 A",
                "\"nominalV\": 12 | \"nominalV\": 24 | \"nominalV\": 6 |"
                        + " /supply/nominalV | voltage | 24 V | 6 V",
            })
    void tellsOfAClashAndLeavesTheirs(
            String field,
            String mine,
            String theirs,
            String pointer,
            String about,
            String mineSays,
            String theirsSays) {
        JobMerge.Joined joined = join(JOB.replace(field, mine), JOB.replace(field, theirs));
        assertThat(says(JOB.replace(field, theirs), joined)).isEmpty();
        assertThat(joined.clashes())
                .singleElement()
                .satisfies(
                        clash -> {
                            assertThat(clash.kind()).isEqualTo(JobClash.Kind.BOTH_CHANGED);
                            assertThat(clash.pointer()).isEqualTo(pointer);
                            assertThat(clash.about().english()).isEqualTo(about);
                            assertThat(clash.mine().orElseThrow().english()).isEqualTo(mineSays);
                            assertThat(clash.theirs().orElseThrow().english())
                                    .isEqualTo(theirsSays);
                        });
    }

    @Test
    void findsNoClashWhereBothMadeTheSame() {
        String both = JOB.replace("\"runM\": 1.1", "\"runM\": 1.3");
        JobMerge.Joined joined = join(both, both);
        assertThat(joined.clashes()).isEmpty();
        assertThat(says(both, joined)).isEmpty();
    }

    @Test
    void keepsWhatBothAddedUnderNamesOfTheirOwn() {
        JobMerge.Joined joined = join(with(HORN), with(HORN.replace("\"runM\": 1", "\"runM\": 2")));
        assertThat(joined.clashes()).isEmpty();
        assertThat(joined.document().at("/circuits/2/id").asString()).isEqualTo("horn");
        assertThat(joined.document().at("/circuits/2/runM").asInt()).isEqualTo(2);
        assertThat(joined.document().at("/circuits/3/id").asString()).isEqualTo("horn-2");
        assertThat(joined.document().at("/circuits/3/runM").asInt()).isEqualTo(1);
    }

    @Test
    void changesARowThatMovedUpMeanwhile() {
        String theirs = JOB.replaceFirst("(?s)\\{\"id\": \"pump\".*?]},\\s*", "");
        JobMerge.Joined joined = join(JOB.replace("\"runM\": 1.6", "\"runM\": 2"), theirs);
        assertThat(joined.clashes()).isEmpty();
        assertThat(joined.document().at("/circuits")).hasSize(1);
        assertThat(joined.document().at("/circuits/0/runM").asInt()).isEqualTo(2);
    }

    @Test
    void removesARowThatNobodyElseChanged() {
        JobMerge.Joined joined =
                join(withoutLamps(), JOB.replace("\"runM\": 1.1", "\"runM\": 1.3"));
        assertThat(joined.clashes()).isEmpty();
        assertThat(joined.document().at("/circuits")).hasSize(1);
        assertThat(joined.document().at("/circuits/0/runM").asDouble()).isEqualTo(1.3);
    }

    @Test
    void tellsWhenOneRemovedWhatTheOtherChanged() {
        String changed = JOB.replace("\"runM\": 1.6", "\"runM\": 2");
        JobMerge.Joined mineGone = join(withoutLamps(), changed);
        assertThat(mineGone.document().at("/circuits")).hasSize(2);
        assertThat(mineGone.clashes())
                .singleElement()
                .satisfies(
                        clash -> {
                            assertThat(clash.kind()).isEqualTo(JobClash.Kind.I_REMOVED_IT);
                            assertThat(clash.pointer()).isEqualTo("/circuits/1");
                            assertThat(clash.about().english()).isEqualTo("circuit lamps");
                        });
        JobMerge.Joined theirsGone = join(changed, withoutLamps());
        assertThat(theirsGone.document().at("/circuits")).hasSize(1);
        assertThat(theirsGone.clashes())
                .singleElement()
                .satisfies(
                        clash -> {
                            assertThat(clash.kind()).isEqualTo(JobClash.Kind.THEY_REMOVED_IT);
                            assertThat(clash.pointer()).isEqualTo("/circuits");
                            assertThat(clash.value().at("/runM").asInt()).isEqualTo(2);
                        });
    }

    @Test
    void followsANewNameInWhatTheOtherAdded() {
        String renamed = JOB.replace("\"battery\"", "\"main\"");
        for (JobMerge.Joined joined :
                List.of(join(renamed, with(HORN)), join(with(HORN), renamed))) {
            assertThat(joined.clashes()).isEmpty();
            assertThat(joined.document().at("/circuits/2/feed").asString()).isEqualTo("main");
            assertThat(joined.document().at("/circuits/0/relay/triggerFrom").asString())
                    .isEqualTo("main");
        }
    }

    @Test
    void undoesOneChangeAndLeavesLaterOnes() {
        String made = JOB.replace("\"runM\": 1.1", "\"runM\": 1.3");
        String now = made.replace("\"runM\": 1.6", "\"runM\": 2");
        JobMerge.Joined undone = JobMerge.join(json(made), json(JOB), json(now));
        assertThat(undone.clashes()).isEmpty();
        assertThat(undone.document().at("/circuits/0/runM").asDouble()).isEqualTo(1.1);
        assertThat(undone.document().at("/circuits/1/runM").asInt()).isEqualTo(2);

        String changedAgain = made.replace("\"runM\": 1.3", "\"runM\": 1.5");
        assertThat(JobMerge.join(json(made), json(JOB), json(changedAgain)).clashes()).hasSize(1);
    }
}
