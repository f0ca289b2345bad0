package org.fusewright.catalogs.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.fusewright.catalogs.Catalogs;
import org.fusewright.catalogs.SampleFiles;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.io.ByteArrayResource;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.test.web.servlet.client.RestTestClient.ResponseSpec;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

@ServiceTest
class CatalogApiTest {

    @Autowired private RestTestClient client;
    @Autowired private Catalogs catalogs;

    private final SampleFiles sample = new SampleFiles();

    @BeforeEach
    @AfterEach
    void putTheSampleInForce() {
        catalogs.importCatalog(
                new SampleFiles().read(),
                catalogs.findContent().map(content -> content.catalog().version()));
    }

    @Test
    void showsVersionCountsAndSuppliers() {
        client.get()
                .uri("/api/catalog")
                .exchange()
                .expectStatus()
                .isOk()
                .expectHeader()
                .valueEquals(HttpHeaders.ETAG, '"' + version() + '"')
                .expectBody()
                .jsonPath("$.version")
                .isEqualTo(version())
                .jsonPath("$.counts.block")
                .isEqualTo(3)
                .jsonPath("$.counts.device")
                .isEqualTo(48)
                .jsonPath("$.suppliers.length()")
                .isEqualTo(3);
    }

    @Test
    void listsPartsOfAKindPageByPage() {
        client.get()
                .uri("/api/catalog/parts?kind=seal&limit=4")
                .exchange()
                .expectBody()
                .jsonPath("$.parts.length()")
                .isEqualTo(4)
                .jsonPath("$.parts[0].part")
                .isEqualTo("WDS-1")
                .jsonPath("$.next")
                .isEqualTo("WDS-4");
        client.get()
                .uri("/api/catalog/parts?kind=seal&limit=4&after=WDS-4")
                .exchange()
                .expectBody()
                .jsonPath("$.parts.length()")
                .isEqualTo(2)
                .jsonPath("$.next")
                .isEmpty();
        client.get()
                .uri("/api/catalog/parts?q=RELAY 24")
                .exchange()
                .expectBody()
                .jsonPath("$.parts.length()")
                .isEqualTo(1)
                .jsonPath("$.parts[0].part")
                .isEqualTo("OSR-24");
    }

    @Test
    void namesEveryParameterThatCannotBeUsed() {
        client.get()
                .uri("/api/catalog/parts?kind=cog&limit=0&after=-")
                .exchange()
                .expectStatus()
                .isBadRequest()
                .expectHeader()
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .expectBody()
                .jsonPath("$.errors[*].parameter")
                .isEqualTo(List.of("after", "kind", "limit"));
    }

    @Test
    void showsAPartWithItsFiguresAndOffers() {
        client.get()
                .uri("/api/catalog/parts/PYF-10")
                .exchange()
                .expectStatus()
                .isOk()
                .expectHeader()
                .valueEquals(HttpHeaders.ETAG, '"' + version() + '"')
                .expectBody()
                .jsonPath("$.kind")
                .isEqualTo("device")
                .jsonPath("$.figures.colour")
                .isEqualTo("red")
                .jsonPath("$.figures.ratingA")
                .isEqualTo(10.0)
                .jsonPath("$.figures.gates[0].maxS")
                .isEmpty()
                .jsonPath("$.figures.gates[2].minS")
                .isEqualTo(0.75)
                .jsonPath("$.offers[?(@.supplier=='SKERROW')].breaks[0].unitPrice")
                .isEqualTo(0.35);
    }

    @Test
    void answersUnchangedWhenThePartIsKnown() {
        client.get()
                .uri("/api/catalog/parts/PYF-10")
                .header(HttpHeaders.IF_NONE_MATCH, '"' + version() + '"')
                .exchange()
                .expectStatus()
                .isNotModified();
    }

    @ParameterizedTest
    @CsvSource({"PYF-11", "a/b/c", "--", "x y"})
    void answersNotFoundForAnUnknownPart(String number) {
        client.get()
                .uri("/api/catalog/parts/" + number)
                .exchange()
                .expectStatus()
                .isNotFound()
                .expectHeader()
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .expectBody()
                .jsonPath("$.detail")
                .isEqualTo("The catalog has no part " + number + ".");
    }

    @Test
    void findsAPartWhoseNumberHoldsASlash() {
        sample.texts().replaceAll((name, text) -> text.replace("WDP-0", "WDP/0"));
        upload("false", version(), sample.bytes()).expectStatus().isOk();
        client.get()
                .uri("/api/catalog/parts/WDP/0")
                .exchange()
                .expectStatus()
                .isOk()
                .expectBody()
                .jsonPath("$.part")
                .isEqualTo("WDP/0");
    }

    @Test
    void triesAnImportWithoutChangingAnything() {
        String before = version();
        sample.replaceFirst("blocks.csv", "Wendlebrook,26.8", "Wendlebrook,27");
        upload("true", null, sample.bytes())
                .expectStatus()
                .isOk()
                .expectBody()
                .jsonPath("$.dryRun")
                .isEqualTo(true)
                .jsonPath("$.previousVersion")
                .isEqualTo(before)
                .jsonPath("$.changed")
                .isEqualTo(List.of("WDB-4"));
        assertThat(version()).isEqualTo(before);
    }

    @Test
    void importsAgainstTheVersionInForce() {
        String before = version();
        sample.replaceFirst("blocks.csv", "Wendlebrook,26.8", "Wendlebrook,27");
        upload("false", before, sample.bytes())
                .expectStatus()
                .isOk()
                .expectHeader()
                .exists(HttpHeaders.ETAG)
                .expectBody()
                .jsonPath("$.dryRun")
                .isEqualTo(false)
                .jsonPath("$.version")
                .value(String.class, imported -> assertThat(imported).isEqualTo(version()));
        assertThat(version()).isNotEqualTo(before);
    }

    @Test
    void importsAZipArchive() throws IOException {
        sample.replaceFirst("blocks.csv", "Wendlebrook,26.8", "Wendlebrook,27");
        String before = version();
        upload("false", before, Map.of("mine.zip", zip(sample.bytes()))).expectStatus().isOk();
        assertThat(version()).isNotEqualTo(before);
    }

    @Test
    void asksForTheVersionThatAnImportReplaces() {
        upload("false", null, sample.bytes()).expectStatus().isEqualTo(428);
        upload("false", "0123456789abcdef", sample.bytes())
                .expectStatus()
                .isEqualTo(412)
                .expectHeader()
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .expectBody()
                .jsonPath("$.detail")
                .value(String.class, detail -> assertThat(detail).contains(version()));
    }

    @ParameterizedTest
    @CsvSource({"true", "false"})
    void namesAllErrorsAndImportsNothing(String dryRun) {
        String before = version();
        sample.replaceFirst("blocks.csv", "Wendlebrook,26.8", "Wendlebrook,heavy");
        sample.replaceFirst("caps.csv", "WDB-8,12", "WDB-9,12");
        upload(dryRun, before, sample.bytes())
                .expectStatus()
                .isBadRequest()
                .expectHeader()
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .expectBody()
                .jsonPath("$.errors.length()")
                .isEqualTo(2)
                .jsonPath("$.errors[0].file")
                .isEqualTo("blocks.csv")
                .jsonPath("$.errors[0].line")
                .isEqualTo(3)
                .jsonPath("$.errors[0].column")
                .isEqualTo("massG")
                .jsonPath("$.errors[0].value")
                .isEqualTo("heavy")
                .jsonPath("$.errors[1].detail")
                .isEqualTo("no part WDB-9 in these files");
        assertThat(version()).isEqualTo(before);
    }

    @Test
    void namesEveryMissingFileWhenNoneIsSent() {
        upload("true", null, Map.of("plugs.csv", sample.bytes().get("plugs.csv")))
                .expectStatus()
                .isBadRequest()
                .expectBody()
                .jsonPath("$.errors[?(@.detail=='missing file')].length()")
                .isNotEmpty()
                .jsonPath("$.errors.length()")
                .isEqualTo(14);
    }

    private String version() {
        return catalogs.current().version();
    }

    private ResponseSpec upload(String dryRun, String ifMatch, Map<String, byte[]> files) {
        return client.post()
                .uri("/api/catalog/import?dryRun=" + dryRun)
                .headers(headers -> setIfMatch(headers, ifMatch))
                .contentType(MediaType.MULTIPART_FORM_DATA)
                .body(parts(files))
                .exchange();
    }

    private static void setIfMatch(HttpHeaders headers, String version) {
        if (version != null) {
            headers.setIfMatch('"' + version + '"');
        }
    }

    static MultiValueMap<String, Object> parts(Map<String, byte[]> files) {
        MultiValueMap<String, Object> parts = new LinkedMultiValueMap<>();
        files.forEach((name, bytes) -> parts.add("files", named(name, bytes)));
        return parts;
    }

    private static ByteArrayResource named(String name, byte[] bytes) {
        return new ByteArrayResource(bytes) {
            @Override
            public String getFilename() {
                return name;
            }
        };
    }

    private static byte[] zip(Map<String, byte[]> files) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (var file : files.entrySet()) {
                zip.putNextEntry(new ZipEntry(file.getKey()));
                zip.write(file.getValue());
            }
        }
        return bytes.toByteArray();
    }
}
