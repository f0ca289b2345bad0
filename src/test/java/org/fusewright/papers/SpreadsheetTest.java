package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpreadsheetTest {
    @ParameterizedTest
    @CsvSource({
        "=1+1, '''=1+1'",
        "+49, '''+49'",
        "-1, '''-1'",
        "@sum, '''@sum'",
        "'\tx', '''\tx'",
        "plain, plain",
        "a=b, a=b",
        "'', ''",
    })
    void defusesWhatASpreadsheetWouldCompute(String text, String written) {
        assertThat(Spreadsheet.defused(text)).isEqualTo(written);
    }
}
