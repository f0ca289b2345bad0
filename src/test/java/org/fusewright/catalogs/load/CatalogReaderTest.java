package org.fusewright.catalogs.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.CatalogRejected;
import org.fusewright.catalogs.SampleFiles;
import org.fusewright.catalogs.Supplier;
import org.fusewright.core.quote.ShippingClass;
import org.fusewright.core.quote.TaxKind;
import org.joda.money.Money;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** The same catalog is the same, however its files are written and brought. */
class CatalogReaderTest {

    private static final String VERSION =
            CatalogFolder.read(Path.of("catalog-sample")).catalog().version();

    private final SampleFiles sample = new SampleFiles();

    @Test
    void namesTheContentByHexDigits() {
        assertThat(VERSION).matches("[0-9a-f]{16}");
    }

    @Test
    void keepsTheVersionForRowsInAnotherOrder() {
        Random random = new Random(20_260_101);
        changeAll(
                text -> {
                    List<String> lines = new ArrayList<>(text.lines().toList());
                    Collections.shuffle(lines.subList(1, lines.size()), random);
                    return String.join("\n", lines) + "\n";
                });
        assertThat(sample.read().catalog().version()).isEqualTo(VERSION);
        assertThat(sample.read().catalog().listOffers())
                .isEqualTo(new SampleFiles().read().catalog().listOffers());
    }

    /** A catalog that was made before caps could say how large a label they take. */
    @Test
    void keepsTheVersionWhetherOptionalColumnsAreLeftOutOrEmpty() {
        String caps = sample.texts().get("caps.csv");
        sample.texts().put("caps.csv", caps.replaceAll(",\\d+,30\n", ",,\n"));
        String withEmptyCells = sample.read().catalog().version();
        sample.texts()
                .put(
                        "caps.csv",
                        caps.replaceAll(",\\d+,30\n", "\n")
                                .replace(",labelWidthMm,labelHeightMm", ""));
        assertThat(sample.read().catalog().version())
                .isEqualTo(withEmptyCells)
                .isNotEqualTo(VERSION);
    }

    @Test
    void keepsTheVersionForColumnsInAnotherOrder() {
        sample.texts().put("suppliers.csv", turnColumns(sample.texts().get("suppliers.csv")));
        assertThat(sample.texts().get("suppliers.csv"))
                .startsWith("currency,minimumOrder,title,supplier\n");
        assertThat(sample.read().catalog().version()).isEqualTo(VERSION);
    }

    private static String turnColumns(String plainTable) {
        return String.join(
                "\n",
                plainTable
                        .lines()
                        .map(line -> String.join(",", List.of(line.split(",")).reversed()))
                        .toList());
    }

    @Test
    void readsWhatAnOrderMustBeWorthAndLeavesItOutWhereNothingIsSaid() {
        assertThat(sample.read().suppliers())
                .extracting(Supplier::minimumOrder)
                .containsExactly(
                        Optional.of(Money.parse("USD 150.00")),
                        Optional.of(Money.parse("EUR 25.00")),
                        Optional.of(Money.parse("EUR 60.00")));
        sample.texts().computeIfPresent("suppliers.csv", (_, text) -> firstTwoColumns(text));
        assertThat(sample.read().suppliers())
                .extracting(Supplier::minimumOrder)
                .containsOnly(Optional.empty());
    }

    private static String firstTwoColumns(String table) {
        return table.lines()
                .map(line -> line.split(",")[0] + "," + line.split(",")[1])
                .collect(Collectors.joining("\n"));
    }

    @Test
    void keepsTheVersionForFilesAsASpreadsheetWritesThem() {
        changeAll(text -> "\uFEFF" + text.replace("\n", "\r\n"));
        assertThat(sample.read().catalog().version()).isEqualTo(VERSION);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "blocks.csv | Wendlebrook,26.8 | Wendlebrook,26.80",
                "offers.csv | 1=9.40 10=8.74 | 1=9.4 10=8.740",
                "wires.csv | 0.5 mm2,BK | 0.50mm²,BK",
                "labour.csv | 48.00,EUR | 48,EUR",
                "stock.csv | WDB-3,12 | WDB-3,11",
                "margins.csv | ,,35 | ,,36",
                "shipping.csv | 6.90 | 7.90",
                "taxes.csv | customer,20 | customer,19",
            })
    void keepsTheVersionForTheSameContentWrittenOtherwise(
            String file, String written, String other) {
        sample.replaceFirst(file, written, other);
        assertThat(sample.read().catalog().version()).isEqualTo(VERSION);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "blocks.csv | Wendlebrook,26.8 | Wendlebrook,26.9",
                "offers.csv | 1=9.40 10=8.74 | 1=9.41 10=8.74",
                "wires.csv | 0.5 mm2,BK | 0.5 mm2,PK",
                "labour.csv | 48.00,EUR | 48.00,GBP",
                "suppliers.csv | Skerrow Loom | Skerrow Wire",
                "devices.csv | 135=0.75..600 | 135=0.75..601",
                "sets.csv | WDT-B=4 | WDT-B=5",
            })
    void changesTheVersionWithEveryPieceOfContent(String file, String written, String other) {
        sample.replaceFirst(file, written, other);
        assertThat(sample.read().catalog().version()).isNotEqualTo(VERSION);
    }

    @Test
    void readsStockOnlyWhenItIsThere() {
        assertThat(sample.read().stock()).isPresent();
        sample.texts().remove("stock.csv");
        assertThat(sample.read().stock()).isEmpty();
    }

    @Test
    void readsMarkUpsShippingAndTaxesOnlyWhenTheyAreThere() {
        CatalogContent all = sample.read();
        assertThat(all.markUps().orElseThrow()).hasSize(7);
        assertThat(all.shipping().orElseThrow())
                .extracting(ShippingClass::upToG)
                .containsExactly(500, 2000, 5000, 15000);
        assertThat(all.taxes().orElseThrow())
                .extracting(TaxKind::code)
                .containsExactly("private", "trade", "trade-abroad");
        List.of("margins.csv", "shipping.csv", "taxes.csv").forEach(sample.texts()::remove);
        CatalogContent none = sample.read();
        assertThat(none.markUps()).isEmpty();
        assertThat(none.shipping()).isEmpty();
        assertThat(none.taxes()).isEmpty();
        assertThat(none.catalog().version()).isEqualTo(VERSION);
    }

    @Test
    void readsTheFilesBuiltIntoTheProgram() {
        assertThat(CatalogReader.read(SampleCatalog.builtIn()).catalog().version())
                .isEqualTo(VERSION);
    }

    @Test
    void readsAZipArchiveWithAFolderInItAndPassesOverOtherFiles() throws IOException {
        sample.texts().put("README.md", "words");
        CatalogContent content =
                CatalogReader.read(CatalogFiles.ofZip("c.zip", zip("my catalog/")));
        assertThat(content.catalog().version()).isEqualTo(VERSION);
    }

    @Test
    void rejectsAFileThatIsTwiceInAZipArchive() throws IOException {
        byte[] twice = zipOf(List.of("a/plugs.csv", "b/plugs.csv"));
        assertThatExceptionOfType(CatalogRejected.class)
                .isThrownBy(() -> CatalogFiles.ofZip("c.zip", new ByteArrayInputStream(twice)))
                .satisfies(
                        rejected ->
                                assertThat(rejected.errors())
                                        .singleElement()
                                        .matches(error -> error.file().equals("plugs.csv"))
                                        .matches(
                                                error ->
                                                        error.detail()
                                                                .english()
                                                                .equals("given twice")));
    }

    @Test
    void rejectsWhatIsNoZipArchive() throws IOException {
        byte[] noZip = "part,title\n".getBytes(StandardCharsets.UTF_8);
        byte[] whole = zip("").readAllBytes();
        byte[] cut = Arrays.copyOf(whole, whole.length / 2);
        for (byte[] bytes : List.of(noZip, cut, new byte[0])) {
            assertThatExceptionOfType(CatalogRejected.class)
                    .isThrownBy(() -> CatalogFiles.ofZip("c.zip", new ByteArrayInputStream(bytes)))
                    .satisfies(
                            rejected ->
                                    assertThat(rejected.errors())
                                            .extracting(error -> error.detail().english())
                                            .containsExactly("not a zip archive that can be read"));
        }
    }

    @Test
    void rejectsAFolderThatIsNotThere(@TempDir Path parent) {
        assertThatExceptionOfType(CatalogRejected.class)
                .isThrownBy(() -> CatalogFolder.read(parent.resolve("none")))
                .withMessageContaining("no such folder");
    }

    private void changeAll(UnaryOperator<String> change) {
        sample.texts().replaceAll((name, text) -> change.apply(text));
    }

    private InputStream zip(String folder) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (var file : sample.texts().entrySet()) {
                zip.putNextEntry(new ZipEntry(folder + file.getKey()));
                zip.write(file.getValue().getBytes(StandardCharsets.UTF_8));
            }
        }
        return new ByteArrayInputStream(bytes.toByteArray());
    }

    private static byte[] zipOf(List<String> names) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (String name : names) {
                zip.putNextEntry(new ZipEntry(name));
                zip.write('x');
            }
        }
        return bytes.toByteArray();
    }
}
