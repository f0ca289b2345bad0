package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.words.Text;
import org.fusewright.jobs.load.JobReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

class FormDocumentTest {
    private static final JsonMapper MAPPER = new JsonMapper();

    /** Fields as "name=value" lines. */
    private static ObjectNode document(String... lines) {
        MultiValueMap<String, String> fields = new LinkedMultiValueMap<>();
        for (String line : lines) {
            fields.add(line.substring(0, line.indexOf('=')), line.substring(line.indexOf('=') + 1));
        }
        return FormDocument.of(fields);
    }

    private static JsonNode json(String text) {
        return MAPPER.readTree(text.replace('\'', '"'));
    }

    @Test
    void keepsPlacesThatNameABlockAndThePick() {
        assertThat(
                        document(
                                "/circuits/0/id=a",
                                "/circuits/0/place/block=B1",
                                "/circuits/0/place/part=WDB-4",
                                "/circuits/0/place/position=2",
                                "/circuits/0/place/fixed=false",
                                "/circuits/0/relay/place/block=",
                                "/circuits/0/relay/place/fixed=true",
                                "/circuits/1/id=b",
                                "/circuits/1/place/block=",
                                "/circuits/1/place/fixed=true",
                                "/choices/arrangement=coolest"))
                .hasToString(
                        string(
                                """
                                {'feeds':[],
                                 'circuits':[{'id':'a','place':{'block':'B1','part':'WDB-4',
                                                                'position':2,'fixed':false}},
                                             {'id':'b'}],
                                 'choices':{'arrangement':'coolest'}}
                                """));
    }

    @Test
    void keepsRowsListsAndKinds() {
        assertThat(
                        document(
                                "version=3",
                                "/reference=R 1",
                                "/supply/nominalV=12",
                                "/feeds/0/id=bat",
                                "/feeds/0/lengthM=0,6",
                                "/circuits/0/id=a",
                                "/circuits/0/essential=false",
                                "/circuits/0/essential=true",
                                "/circuits/0/devices=fuse,auto-reset",
                                "/circuits/0/loads/0/amount=5",
                                "/circuits/0/loads/0/unit=A",
                                "/circuits/0/loads/1/amount=21",
                                "/circuits/0/loads/1/unit=W",
                                "/choices/lockingWedge=false"))
                .hasToString(
                        string(
                                """
                                {'feeds':[{'id':'bat','lengthM':0.6}],
                                 'circuits':[{'id':'a','essential':true,'devices':['fuse','auto-reset'],
                                              'loads':[{'amps':5},{'watts':21}]}],
                                 'reference':'R 1','supply':{'nominalV':12},
                                 'choices':{'lockingWedge':false}}
                                """));
    }

    private static String string(String text) {
        return json(text).toString();
    }

    @Test
    void leavesOutWhatIsBlankButKeepsItsRow() {
        assertThat(document("/locations/0/name= ", "/locations/0/fromFeedM=", "/supply/chargingV="))
                .isEqualTo(json("{'feeds':[],'circuits':[],'locations':[{}]}"));
    }

    @Test
    void leavesOutARelayThatNothingTriggers() {
        assertThat(document("/circuits/0/id=a", "/circuits/0/relay/triggerM=1").at("/circuits/0"))
                .isEqualTo(json("{'id':'a'}"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1,5     | 1.5",
                "1.5     | 1.5",
                "-3      | -3",
                "10.0    | 10",
                "1e3     | \"1e3\"",
                "1.234,5 | \"1.234,5\"",
                "far     | \"far\"",
                "NaN     | \"NaN\"",
                "99999999999999999999 | \"99999999999999999999\"",
            })
    void takesNumbersWithPointOrComma(String typed, String read) {
        assertThat(document("/supply/chargingV=" + typed).at("/supply/chargingV"))
                .hasToString(read);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/circuits=x",
                "/circuits/0=x",
                "/circuits/7/id=x",
                "/circuits/x/id=x",
                "/=x",
                "//=x",
                "/supply=x",
                "/circuits/0/loads=x",
                "/circuits/99999/id=x",
                "/feeds/0/0/0=x",
            })
    void toleratesFieldsThatNoPageHas(String field) {
        ObjectNode document =
                document(field, "/circuits/0/id=a", "/supply/nominalV=12", "/feeds/0/id=b");
        assertThat(document.isObject()).isTrue();
        JobForm.of(document, List.of()).rows("/circuits");
    }

    static Stream<Path> sampleJobs() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("catalog-sample/jobs"))) {
            return files
                    .filter(file -> file.toString().endsWith(".json"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    /** What a form shows of each field, sent back, is the same document. */
    @ParameterizedTest
    @MethodSource("sampleJobs")
    void comesBackFromTheFormAsItWas(Path file) throws IOException {
        JsonNode job = MAPPER.readTree(Files.readAllBytes(file));
        JobForm form = JobForm.of(job, List.of());
        MultiValueMap<String, String> fields = new LinkedMultiValueMap<>();
        collect(job, "", form, fields);
        assertThat(JobReader.read(FormDocument.of(fields)).getJob())
                .isEqualTo(JobReader.read(job).getJob());
    }

    private static void collect(
            JsonNode node, String pointer, JobForm form, MultiValueMap<String, String> fields) {
        if (node.isObject()) {
            node.propertyNames()
                    .forEach(
                            name -> {
                                if (name.equals("watts") || name.equals("amps")) {
                                    String amount = pointer + "/amount";
                                    fields.add(amount, form.text(amount));
                                    fields.add(pointer + "/unit", form.text(pointer + "/unit"));
                                } else {
                                    collect(node.get(name), pointer + "/" + name, form, fields);
                                }
                            });
        } else if (node.isArray() && !pointer.endsWith("/devices")) {
            for (int i = 0; i < node.size(); i++) {
                collect(node.get(i), pointer + "/" + i, form, fields);
            }
        } else {
            fields.add(pointer, form.text(pointer));
        }
    }

    private static JobProblem wrong(String pointer, String detail) {
        return new JobProblem(pointer, Text.verbatim(detail));
    }

    @Test
    void showsAFaultOfTheAmountBesideIt() {
        JobForm form =
                JobForm.of(
                        json("{'circuits':[{'loads':[{'watts':'x'}]}]}"),
                        List.of(
                                wrong("/circuits/0/loads/0/watts", "no number"),
                                wrong("/circuits/0/loads/1", "neither"),
                                wrong("/circuits/0/devices/1", "no kind")));
        assertThat(form.fault("/circuits/0/loads/0/amount")).isEqualTo("no number");
        assertThat(form.fault("/circuits/0/loads/1/amount")).isEqualTo("neither");
        assertThat(form.fault("/circuits/0/devices")).isEqualTo("no kind");
        assertThat(form.fault("/circuits/0/id")).isEmpty();
        assertThat(form.text("/circuits/0/loads/0/amount")).isEqualTo("x");
    }

    @Test
    void addsAndRemovesRows() {
        ObjectNode document = document("/feeds/0/id=bat", "/circuits/0/id=circuit-1");
        FormAction.apply("add /circuits", document);
        FormAction.apply("add /circuits/1/loads", document);
        FormAction.apply("remove /circuits/0", document);
        FormAction.apply("add /locations", document);
        assertThat(document.at("/circuits")).hasSize(1);
        assertThat(document.at("/circuits/0/id").asString()).isEqualTo("circuit-2");
        assertThat(document.at("/circuits/0/feed").asString()).isEqualTo("bat");
        assertThat(document.at("/circuits/0/loads")).hasSize(2);
        assertThat(document.at("/locations")).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "remove /circuits/5",
                "add /supply",
                "add /circuits/9/loads",
                "drop",
                "remove /circuits/0/loads/0",
            })
    void rejectsAButtonThatNoPageHas(String action) {
        ObjectNode document = document("/circuits/0/id=a");
        assertThatExceptionOfType(MalformedJobException.class)
                .isThrownBy(() -> FormAction.apply(action, document));
    }

    @Test
    void letsReferencesFollowANewName() {
        ObjectNode document =
                document(
                        "/feeds/0/id=main",
                        "/circuits/0/id=b",
                        "/circuits/0/feed=bat",
                        "/circuits/1/id=c",
                        "/circuits/1/feed=bat",
                        "/circuits/1/relay/triggerFrom=bat",
                        "/circuits/1/relay/contactFrom=a");
        JsonNode before = json("{'feeds':[{'id':'bat'}],'circuits':[{'id':'a'},{'id':'c'}]}");
        assertThat(Renaming.follow(before, document)).isTrue();
        assertThat(document.at("/circuits/0/feed").asString()).isEqualTo("main");
        assertThat(document.at("/circuits/1/relay/triggerFrom").asString()).isEqualTo("main");
        assertThat(document.at("/circuits/1/relay/contactFrom").asString()).isEqualTo("b");
        assertThat(Renaming.follow(document, document)).isFalse();
    }
}
