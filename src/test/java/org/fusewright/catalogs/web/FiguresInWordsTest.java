package org.fusewright.catalogs.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.catalogs.SampleFiles;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.PartNumber;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresInWordsTest {

    private static final Catalog SAMPLE = new SampleFiles().read().catalog();

    @ParameterizedTest
    @CsvSource({
        "WDB-4, mass, 26.8 g",
        "WDB-4, max position, 30 A",
        "WDB-4, relay pairs, 1 and 2; 3 and 4",
        "WDB-3, relay pairs,",
        "WDC-4-LOW, fits, WDB-4",
        "WDC-4-LOW, label width, 42 mm",
        "WDT-B, min area, 0.6 mm²",
        "WDT-B, contact, 3.4 mΩ",
        "PYF-7.5, max voltage, 32 V",
        "PYF-7.5, resistance, 15.47 mΩ",
        "PYF-7.5, kind, fuse",
        "TNM-5, colour,",
        "OSR-12, coil, 100 Ω",
        "OSR-12, pinout, '30, 87, 86, 85'",
        "LTM-1.5-RD, size, 1.5 mm2",
        "LTM-1.5-RD, resistance, 12.7 mΩ/m",
        "LTM-1.5-RD, class, 125 °C",
    })
    void saysAFigureWithItsUnit(String part, String label, String words) {
        assertThat(FiguresInWords.of(SAMPLE.getPart(new PartNumber(part))).get(label))
                .isEqualTo(words);
    }
}
