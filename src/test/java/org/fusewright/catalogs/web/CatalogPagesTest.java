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
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.util.MultiValueMap;

import java.util.Map;

@ServiceTest
class CatalogPagesTest {

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
    void listsPartsByKindWithTheirPrices() {
        assertThat(get("/catalog?kind=relay", 200))
                .contains("OSR-12", "OSR-24", "<td class=\"num\">8.60</td>", "Relays</a> 2")
                .doesNotContain(">WDB-4<");
    }

    @Test
    void findsPartsAndGoesOnToTheNextPage() {
        assertThat(get("/catalog?q=manual-reset 7.5", 200))
                .contains("TNM-7.5")
                .doesNotContain("TNM-10", "Next page");
        assertThat(get("/catalog", 200)).contains("Next page").doesNotContain(">WDB-4<");
        assertThat(get("/catalog?q=nothing-like-this", 200))
                .contains("No part of the catalog fits.");
    }

    @Test
    void showsAPartWithItsFiguresAndOffers() {
        assertThat(get("/catalog/parts/PYF-10", 200))
                .contains("Mini blade fuse 10 A, red", "Skerrow Loom Supplies")
                .contains(
                        "135 %: 0.75 to 600 s",
                        "100 %: 360000 s or more", "10 A", "× 0.85 at 65 °C")
                .contains("from 1: EUR 0.35");
    }

    @Test
    void answersNotFoundForAnUnknownPart() {
        get("/catalog/parts/PYF-11", 404);
    }

    @Test
    void neverRunsWhatTheFilesSay() {
        sample.replaceFirst("plugs.csv", "Plug for an empty cavity", "<script>alert(1)</script>");
        assertThat(post("true", sample.bytes(), 200)).contains("Changed");
        catalogs.importCatalog(
                sample.read(), catalogs.findContent().map(c -> c.catalog().version()));
        assertThat(get("/catalog/parts/WDP-0", 200))
                .contains("&lt;script&gt;alert(1)&lt;/script&gt;")
                .doesNotContain("<script>alert");
    }

    @Test
    void showsEveryErrorOfTheFilesInATable() {
        sample.replaceFirst("blocks.csv", "Wendlebrook,26.8", "Wendlebrook,heavy");
        sample.replaceFirst("caps.csv", "WDB-8,12", "WDB-9,12");
        String before = catalogs.current().version();
        assertThat(post("false", sample.bytes(), 400))
                .contains("Nothing was imported", "2 errors to mend")
                .contains("<td>massG</td><td>heavy</td>")
                .contains("no part WDB-9 in these files");
        assertThat(catalogs.current().version()).isEqualTo(before);
    }

    @ParameterizedTest
    @CsvSource({"true, this would be imported", "false, Imported"})
    void triesOrImports(String dryRun, String says) {
        sample.replaceFirst("blocks.csv", "Wendlebrook,26.8", "Wendlebrook,27");
        String before = catalogs.current().version();
        assertThat(post(dryRun, sample.bytes(), 200)).contains(says).contains("WDB-4");
        assertThat(catalogs.current().version().equals(before)).isEqualTo(dryRun.equals("true"));
    }

    @Test
    void rejectsAnImportMadeAgainstAnOlderCatalog() {
        MultiValueMap<String, Object> form = CatalogApiTest.parts(sample.bytes());
        form.add("dryRun", "false");
        form.add("expectedVersion", "0123456789abcdef");
        assertThat(post(form, 412)).contains("The catalog has changed meanwhile");
    }

    private String get(String path, int status) {
        return String.valueOf(
                client.get()
                        .uri(path)
                        .accept(MediaType.TEXT_HTML)
                        .exchange()
                        .expectStatus()
                        .isEqualTo(status)
                        .expectBody(String.class)
                        .returnResult()
                        .getResponseBody());
    }

    private String post(String dryRun, Map<String, byte[]> files, int status) {
        MultiValueMap<String, Object> form = CatalogApiTest.parts(files);
        form.add("dryRun", dryRun);
        form.add("expectedVersion", catalogs.current().version());
        return post(form, status);
    }

    private String post(MultiValueMap<String, Object> form, int status) {
        return String.valueOf(
                client.post()
                        .uri("/catalog/import")
                        .accept(MediaType.TEXT_HTML)
                        .contentType(MediaType.MULTIPART_FORM_DATA)
                        .body(form)
                        .exchange()
                        .expectStatus()
                        .isEqualTo(status)
                        .expectBody(String.class)
                        .returnResult()
                        .getResponseBody());
    }
}
