package org.fusewright.jobs.load;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.stream.Stream;

/** The published schema and the reader must take and turn down the same documents. */
class JobSchemaTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final long SEED = 20_240_611;
    private static final int MUTATIONS_PER_JOB = 800;

    private static Schema schema;

    @BeforeAll
    static void readSchema() throws IOException {
        schema =
                SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(
                                Files.readString(
                                        Path.of("src/main/resources/schema/job.schema.json")));
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

    @ParameterizedTest
    @MethodSource("sampleJobs")
    void takesASampleJobAsTheReaderDoes(Path file) throws IOException {
        byte[] json = Files.readAllBytes(file);
        assertThat(schema.validate(new String(json, StandardCharsets.UTF_8), InputFormat.JSON))
                .isEmpty();
        assertThat(JobReader.read(json).problems()).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("sampleJobs")
    void agreesWithTheReaderOnEveryMutation(Path file) throws IOException {
        JsonNode job = MAPPER.readTree(Files.readAllBytes(file));
        Random random = new Random(SEED + file.getFileName().toString().hashCode());
        int taken = 0;
        for (int i = 0; i < MUTATIONS_PER_JOB; i++) {
            JsonNode mutated = job.deepCopy();
            for (int j = random.nextInt(3); j >= 0; j--) {
                JobMutations.mutate(mutated, random);
            }
            boolean read = JobReader.read(mutated).fieldProblems().isEmpty();
            String text = MAPPER.writeValueAsString(mutated);
            assertThat(schema.validate(text, InputFormat.JSON).isEmpty())
                    .describedAs(
                            "reader says %s of %s", JobReader.read(mutated).fieldProblems(), text)
                    .isEqualTo(read);
            taken += read ? 1 : 0;
        }
        // Both answers must occur often, or the mutations prove nothing.
        assertThat(taken).isBetween(MUTATIONS_PER_JOB / 20, MUTATIONS_PER_JOB * 3 / 4);
    }

    @Test
    void takesNoCurrencyThatDoesNotExistThoughTheSchemaDoes() {
        ObjectNode job = MAPPER.createObjectNode().put("reference", "R").put("currency", "XQZ");
        assertThat(JobReader.read(job).fieldProblems())
                .anyMatch(problem -> problem.pointer().equals("/currency"));
    }
}
