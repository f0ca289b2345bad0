package org.fusewright.setup;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import tools.jackson.databind.JsonNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The shipped compose file, by the schema of the Compose Specification (see its README). */
class ComposeFileTest {
    private static final Path FILE = Path.of("docker-compose.yml");
    private static final Schema SCHEMA = schema();

    private static Schema schema() {
        try {
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_7)
                    .getSchema(
                            Files.readString(
                                    Path.of("src/test/resources/compose/compose-spec.json")),
                            InputFormat.JSON);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void isValid() throws IOException {
        assertThat(SCHEMA.validate(Files.readString(FILE), InputFormat.YAML)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"ports:, porst:", "healthcheck:, healthchek:", "cap_drop:, cap_drops:"})
    void wouldNotBeValidWithAMistake(String right, String wrong) throws IOException {
        String file = Files.readString(FILE);
        assertThat(file).contains(right);
        assertThat(SCHEMA.validate(file.replaceFirst(right, wrong), InputFormat.YAML)).isNotEmpty();
    }

    @Test
    void runsAsNobodySpecialAndIsOpenToThisMachineAlone() throws IOException {
        JsonNode service =
                new YAMLMapper().readTree(Files.readString(FILE)).at("/services/service");
        assertThat(service.at("/build/dockerfile_inline").asString())
                .contains("useradd", "\nUSER fusewright\n");
        assertThat(service.at("/ports/0").asString()).startsWith("127.0.0.1:");
        assertThat(service.at("/cap_drop/0").asString()).isEqualTo("ALL");
        assertThat(service.at("/read_only").booleanValue()).isTrue();
    }
}
