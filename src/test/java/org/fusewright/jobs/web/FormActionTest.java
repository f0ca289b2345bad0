package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.fusewright.core.job.MalformedJobException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

class FormActionTest {
    private final ObjectNode document =
            (ObjectNode)
                    JsonMapper.shared()
                            .readTree(
                                    """
                                    {"circuits": [{"id": "pump", "relay": {"triggerM": 1}},
                                                  {"id": "lamps"}]}
                                    """);

    @Test
    void placesADeviceAndLetsItMoveAgain() {
        FormAction.apply("place /circuits/1 3 under the seat", document);
        assertThat(document.at("/circuits/1/place").toString())
                .isEqualTo("{\"block\":\"under the seat\",\"position\":3,\"fixed\":true}");
        FormAction.apply("free /circuits/1", document);
        assertThat(document.at("/circuits/1").has("place")).isFalse();
    }

    @Test
    void placesARelayApartFromItsDevice() {
        FormAction.apply("place /circuits/0/relay 1 B1", document);
        assertThat(document.at("/circuits/0/relay/place/position").intValue()).isEqualTo(1);
        assertThat(document.at("/circuits/0").has("place")).isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "place /circuits/1/relay 1 B1",
                "place /circuits/7 1 B1",
                "place /circuits/0 one B1",
                "place /supply 1 B1",
                "free /circuits/7",
                "place /circuits/0 1 "
            })
    void rejectsWhatIsNotThere(String action) {
        String before = document.toString();
        assertThatExceptionOfType(MalformedJobException.class)
                .isThrownBy(() -> FormAction.apply(action, document));
        assertThat(document.toString()).isEqualTo(before);
    }
}
