package org.fusewright.catalogs.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.CatalogError;
import org.fusewright.catalogs.CatalogRejected;
import org.fusewright.catalogs.SampleFiles;
import org.fusewright.core.catalog.PartNumber;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Every slip in the files is named by file, line, column and value, and all of them at once. */
class CatalogErrorsTest {

    private final SampleFiles sample = new SampleFiles();
    private final Map<String, String> files = sample.texts();

    /** Each row: in this file, write this for that; then the one error says where and why. */
    @ParameterizedTest(name = "{0}: {2} for {1}")
    @CsvSource(
            delimiter = '|',
            nullValues = "-",
            value = {
                // headers
                "blocks.csv | pitchMm | pitch | 1 | pitch | pitch | unknown column",
                "caps.csv | fits,clearanceMm | fits,fits | 1 | fits | fits | column given twice",
                // numbers and what they may be
                "caps.csv | WDB-3,12,32,30 | WDB-3,12,9,30 | 2 | labelWidthMm | 9 | must be 10 to"
                        + " 200 with at most 6 decimals",
                "caps.csv | WDB-3,12,32,30 | WDB-3,12,32, | 2 | - | - | labelWidthMm and"
                        + " labelHeightMm must both be given or both be left out",
                "blocks.csv | WDB-3,\"Sealed block, 3 positions\",Wendlebrook,21.5 |"
                        + " WDB-3,\"Sealed block, 3 positions\",Wendlebrook,heavy | 2 | massG |"
                        + " heavy | must be a number such as 12.5, 0 to 100000",
                "blocks.csv | Wendlebrook,26.8 | Wendlebrook,-26.8 | 3 | massG | -26.8 |"
                        + " must be 0 to 100000",
                "devices.csv | Pyrrhil,0.78,fuse,mini,2, | Pyrrhil,0.78,fuse,mini,1e3, | 2 |"
                        + " ratingA | 1e3 | must be a number",
                "blocks.csv | Tansy,4,1+2 3+4 | Tansy,25,1+2 3+4 | 3 | positions | 25 |"
                        + " must be a whole number from 1 to 24",
                "blocks.csv | Tansy,4,1+2 3+4 | Tansy,4.0,1+2 3+4 | 3 | positions | 4.0 |"
                        + " must be a whole number from 1 to 24",
                "terminals.csv | Tansy,1,2.1 | Tansy,2.2,2.1 | 4 | maxAreaMm2 | 2.1 |"
                        + " must not be below minAreaMm2, which is 2.2",
                "stock.csv | WDB-3,12,6 | WDB-3,1.2345,6 | 2 | onHand | 1.2345 |"
                        + " with at most 3 decimals",
                // words
                "devices.csv | 0.78,fuse,mini,2 | 0.78,glass,mini,2 | 2 | kind | glass |"
                        + " must be one of fuse, manual-reset, auto-reset",
                "devices.csv | 0.78,fuse,mini,2 | 0.78,fuse,micro,2 | 2 | form | micro |"
                        + " must be one of mini, medium, high-current",
                "wires.csv | 0.5 mm2,BK | 0.5 furlong,BK | 2 | size | 0.5 furlong |"
                        + " must be a size such as 1.5 mm2, 16 AWG or 16 SAE",
                "wires.csv | 0.5 mm2,BK | 0.5 mm2,MAUVE | 2 | colour | MAUVE |"
                        + " must be a colour of IEC 60757",
                "relays.csv | 21,resistor,30,87,86,85 | 21,zener,30,87,86,85 | 2 | suppression |"
                        + " zener | must be one of resistor, diode, none",
                "offers.csv | SKERROW,WDB-3,1,EUR | SKERROW,WDB-3,1,XBT9 | 2 | currency | XBT9 |"
                        + " must be a currency code of ISO 4217",
                "plugs.csv | Plug for an empty cavity | - | 2 | title | - | must not be empty",
                // what a part's own record refuses
                "relays.csv | 21,resistor,30,87,86,85 | 21,resistor,30,87,86,86 | 2 | firstA | 30 |"
                        + " a relay has the terminals 30, 85, 86 and 87",
                "devices.csv | 135=..1800 200=2..60 | 200=2..60 135=..1800 | 12 | gates |"
                    + " 100=3600.. 200=2..60 135=..1800 350=0.5..8 600=0.1..1.5 1000=0.03..0.3 |"
                    + " gates must rise in percent",
                "offers.csv | 1=9.40 10=8.74 50=8.08 | 1=9.40 50=8.08 10=8.74 | 2 | breaks |"
                        + " 1=9.40 50=8.08 10=8.74 | price breaks must rise in quantity",
                "offers.csv | 1=9.40 10=8.74 50=8.08 | 2=9.40 10=8.74 | 2 | breaks |"
                        + " 2=9.40 10=8.74 | price breaks must start at quantity 1",
                "sets.csv | WDW-3=1 WDT-B=4 | WDW-3=1 WDW-3=4 | 2 | contains |"
                        + " WDB-3=1 WDC-3-HIGH=1 WDW-3=1 WDW-3=4 WDT-C=4 WDS-2=4 WDS-3=4 WDP-0=2 |"
                        + " a bag must list each part once",
                // lists within a cell
                "offers.csv | 1=9.40 10=8.74 50=8.08 | 1=9.40 10:8.74 | 2 | breaks | 10:8.74 |"
                        + " must have the form quantity=price",
                "devices.csv | 135=..1800 200=2..60 | 135=1800 200=2..60 | 12 | gates | 1800 |"
                        + " must be low..high with at least one end given",
                "blocks.csv | 1+2 3+4, | 1+2 4+5, | 3 | relayPairs | 1+2 4+5 |"
                        + " must be pairs of neighbouring positions such as 1+2, within 1 to 4",
                // numbers and names across the files
                "caps.csv | WDC-4-LOW | WDC-3-LOW | 4 | part | WDC-3-LOW |"
                        + " must be there once; it stands in caps.csv, line 2 already",
                "wedges.csv | WDW-8 | WDC-8-LOW | 4 | part | WDC-8-LOW |"
                        + " must be there once; it stands in caps.csv, line 6 already",
                "caps.csv | WDB-8,12 | WDB-9,12 | 6 | fits | WDB-9 | no part WDB-9 in these files",
                "caps.csv | WDB-8,12 | WDW-8,12 | 6 | fits | WDW-8 | must not name a wedge",
                "sets.csv | WDB-3=1 | WDB-33=1 | 2 | contains |"
                        + " WDB-33=1 WDC-3-HIGH=1 WDW-3=1 WDT-B=4 WDT-C=4 WDS-2=4 WDS-3=4 WDP-0=2 |"
                        + " no part WDB-33 in these files",
                "offers.csv | SKERROW,WDB-3, | NOBODY,WDB-3, | 2 | supplier | NOBODY |"
                        + " no supplier NOBODY",
                "offers.csv | SKERROW,WDB-3, | SKERROW,WDB-33, | 2 | part | WDB-33 |"
                        + " no part WDB-33 in these files",
                "offers.csv | OLDQUAY,WDB-3, | SKERROW,WDB-3, | 3 | part | WDB-3 |"
                        + " must be there once; it stands in offers.csv, line 2 already",
                "stock.csv | WDB-3,12 | WDB-33,12 | 2 | part | WDB-33 |"
                        + " no part WDB-33 in these files",
                "suppliers.csv | ,60.00,EUR | ,60.00, | 2 | currency | '' | must be given when the"
                        + " other one of minimumOrder and currency is",
                "suppliers.csv | ,60.00,EUR | ,60.001,EUR | 2 | minimumOrder | 60.001 |"
                        + " must have at most 2 decimals",
                "suppliers.csv | OLDQUAY,Old | SKERROW,Old | 3 | supplier | SKERROW |"
                        + " must be there once",
                "margins.csv | ,wire,50 | ,wires,50 | 3 | group | wires | must be one of set,"
                        + " block",
                "margins.csv | ,wire,50 | WDB-4,wire,50 | 3 | group | wire |"
                        + " must be empty where a part is named",
                "margins.csv | ,wire,50 | ,wire,-5 | 3 | markUpPercent | -5 | must be 0 to 10000",
                "margins.csv | ,seal,60 | ,terminal,60 | 5 | group | terminal |"
                        + " must be there once; it stands in margins.csv, line 4 already",
                "margins.csv | WDB-8,, | WDB-88,, | 8 | part | WDB-88 |"
                        + " no part WDB-88 in these files",
                "shipping.csv | letter,Padded letter,500 | letter,Padded letter,0 | 2 | upToG | 0 |"
                        + " must be a whole number from 1 to 10000000",
                "shipping.csv | small,Small parcel,2000 | small,Small parcel,500 | 3 | upToG | 500"
                        + " | must be there once",
                "shipping.csv | small,Small | letter,Small | 3 | code | letter |"
                        + " must be there once",
                "shipping.csv | 6.90,EUR | 6.90,EURO | 3 | currency | EURO |"
                        + " must be a currency code of ISO 4217",
                "taxes.csv | trade,Trade customer,20 | trade,Trade customer,120 | 3 | ratePercent |"
                        + " 120 | must be 0 to 100",
                "taxes.csv | trade,Trade | private,Trade | 3 | customerKind | private |"
                        + " must be there once",
                "taxes.csv | note | remark | 1 | remark | remark | unknown column",
                "labour.csv | crimp,Crimp | cut,Crimp | 3 | code | cut | must be there once",
                "blocks.csv | 26.8,Tansy | 26.8,Tansie | 3 | terminalFamily | Tansie |"
                        + " no terminal of family Tansie",
                // rows
                "plugs.csv | 0.21,Tansy | 0.21,Tansy,7 | 2 | - |"
                        + " WDP-0,Plug for an empty cavity,Wendlebrook,0.21,Tansy,7 |"
                        + " must have 5 cells like the header, not 6",
                "plugs.csv | WDP-0 | =WDP | 2 | part | =WDP | must be a part number",
            })
    void namesTheError(
            String file,
            String written,
            String slip,
            long line,
            String column,
            String value,
            String detail) {
        sample.replaceFirst(file, written, slip == null ? "" : slip);

        assertThat(errors())
                .filteredOn(error -> error.file().equals(file))
                .first()
                .returns(line, CatalogError::line)
                .returns(column == null ? "" : column, CatalogError::column)
                .returns(value == null ? "" : value, CatalogError::value)
                .extracting(error -> error.detail().english())
                .asString()
                .contains(detail);
    }

    @Test
    void namesAMissingFile() {
        files.remove("seals.csv");
        assertThat(errors())
                .extracting(CatalogErrorsTest::told)
                .contains(List.of("seals.csv", 0, "", "", "missing file"));
    }

    @Test
    void namesAnUnknownFile() {
        files.put("cogs.csv", "part");
        assertThat(errors())
                .singleElement()
                .returns("cogs.csv", CatalogError::file)
                .extracting(error -> error.detail().english())
                .asString()
                .startsWith("unknown file; allowed are blocks.csv, caps.csv, ");
    }

    @Test
    void namesAMissingColumn() {
        files.put("labour.csv", "code,title,minutes,hourlyRate\ncut,Cut,1,48\n");
        assertThat(errors())
                .extracting(CatalogErrorsTest::told)
                .containsExactly(List.of("labour.csv", 1, "currency", "", "missing column"));
    }

    @Test
    void namesAnEmptyFile() {
        files.put("labour.csv", "");
        assertThat(errors())
                .extracting(CatalogErrorsTest::told)
                .containsExactly(
                        List.of(
                                "labour.csv",
                                0,
                                "",
                                "",
                                "must start with the header row"
                                        + " code,title,minutes,hourlyRate,currency"));
    }

    @Test
    void saysThatCellsArePartedByCommas() {
        files.put("labour.csv", files.get("labour.csv").replace(',', ';'));
        assertThat(errors())
                .extracting(CatalogErrorsTest::told)
                .containsExactly(
                        List.of(
                                "labour.csv",
                                1,
                                "",
                                "code;title;minutes;hourlyRate;currency",
                                "cells must be parted by commas, not semicolons"));
    }

    @Test
    void namesTheLineOfAStrayQuoteMark() {
        files.put(
                "labour.csv",
                "code,title,minutes,hourlyRate,currency\n"
                        + "cut,Cut,1,48,EUR\n"
                        + "crimp,\"Crimp,1,48,EUR\n");
        assertThat(errors())
                .singleElement()
                .returns("labour.csv", CatalogError::file)
                .returns(3L, CatalogError::line);
    }

    @Test
    void rejectsTextThatIsNotUtf8() {
        Map<String, byte[]> bytes = sample.bytes();
        bytes.put(
                "labour.csv", "code,title\ncut,Z\u00fcnden".getBytes(StandardCharsets.ISO_8859_1));
        assertThat(errors(bytes))
                .extracting(CatalogErrorsTest::told)
                .containsExactly(List.of("labour.csv", 0, "", "", "must be text in UTF-8"));
    }

    @Test
    void rejectsAFileThatIsTooLarge() {
        Map<String, byte[]> bytes = sample.bytes();
        bytes.put("labour.csv", new byte[CatalogFiles.MAX_FILE_BYTES + 1]);
        assertThat(errors(bytes))
                .extracting(CatalogErrorsTest::told)
                .containsExactly(
                        List.of("labour.csv", 0, "", "", "a file may hold at most 64 MiB"));
    }

    @Test
    void rejectsAFileWithTooManyRows() {
        String rows =
                IntStream.rangeClosed(0, Sheet.MAX_ROWS)
                        .mapToObj(i -> "S" + i + ",Supplier\n")
                        .collect(Collectors.joining());
        files.put("suppliers.csv", "supplier,title\n" + rows);
        assertThat(errors())
                .extracting(CatalogErrorsTest::told)
                .containsExactly(
                        List.of(
                                "suppliers.csv",
                                Sheet.MAX_ROWS + 2,
                                "",
                                "",
                                "a file may hold at most 500,000 rows"));
    }

    @Test
    void stopsCountingErrorsAtAThousand() {
        files.put("suppliers.csv", "supplier,title\n" + ",\n".repeat(2_000));
        assertThat(errors()).hasSize(1_000).allMatch(e -> e.file().equals("suppliers.csv"));
    }

    @Test
    void gathersAllErrorsOfAllFilesAtOnce() {
        sample.replaceFirst("blocks.csv", "26.8,Tansy,4,1+2 3+4,80", "?,Tansy,four,1+2 3+4,lots");
        sample.replaceFirst("caps.csv", "WDB-8,12", "WDB-9,12mm");
        sample.replaceFirst("labour.csv", "crimp,Crimp", "cut,Crimp");
        sample.replaceFirst(
                "relays.csv", "24,400,15.6,2.4,20,3.5,21,resistor", "24,,15.6,2.4,20,3.5,21,");

        assertThat(errors())
                .extracting(e -> e.file() + " " + e.line() + " " + e.column())
                .containsExactly(
                        "blocks.csv 3 massG",
                        "blocks.csv 3 positions",
                        "blocks.csv 3 maxTotalA",
                        "caps.csv 6 clearanceMm",
                        "caps.csv 6 fits",
                        "labour.csv 3 code",
                        "relays.csv 3 coilOhm",
                        "relays.csv 3 suppression");
    }

    @Test
    void aRowWithASlipStillCountsAsThere() {
        sample.replaceFirst("blocks.csv", "Wendlebrook,26.8", "Wendlebrook,heavy");
        assertThat(errors()).hasSize(1);
    }

    @Test
    void keepsCellsThatASpreadsheetWouldRunAsPlainText() {
        sample.replaceFirst("plugs.csv", "Plug for an empty cavity", "=1+1");
        sample.replaceFirst("caps.csv", "Short cap for 3 positions", "@short");
        CatalogContent content = sample.read();
        assertThat(content.catalog().getPart(new PartNumber("WDP-0")).title()).isEqualTo("=1+1");
        assertThat(content.catalog().getPart(new PartNumber("WDC-3-LOW")).title())
                .isEqualTo("@short");
    }

    private static List<Object> told(CatalogError error) {
        return List.of(
                error.file(),
                Math.toIntExact(error.line()),
                error.column(),
                error.value(),
                error.detail().english());
    }

    private List<CatalogError> errors() {
        return errors(sample.bytes());
    }

    private static List<CatalogError> errors(Map<String, byte[]> bytes) {
        CatalogRejected rejected =
                catchThrowableOfType(CatalogRejected.class, () -> SampleFiles.read(bytes));
        assertThat(rejected).as("the files are refused").isNotNull();
        return rejected.errors();
    }
}
