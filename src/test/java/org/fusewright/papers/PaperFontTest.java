package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.FieldSource;
import org.openpdf.text.Document;
import org.openpdf.text.pdf.PdfWriter;

import java.util.List;

class PaperFontTest {

    static final List<PaperFont> FONTS = List.of(PaperFont.REGULAR, PaperFont.BOLD);

    @ParameterizedTest
    @FieldSource("FONTS")
    void holdsEverySignThatThePapersUse(PaperFont font) {
        assertThat("☐✔✘⚠²°Ωµ±×·–…→≤≥⌀éßŁčæø€£".codePoints()).allMatch(font::holds);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            ignoreLeadingAndTrailingWhitespace = false,
            value = {
                "plain text|plain text",
                "a\u0000b|a\uFFFDb",
                "a\u202Eb|a\uFFFDb",
                "a\u200Fb|a\uFFFDb",
                "a\uFEFFb|a\uFFFDb",
                "a\uE000b|a\uFFFDb",
                "a\uD83E\uDD84b|a\uFFFDb",
                "a\u4E2Db|a\uFFFDb",
                "e\u0301|\u00E9",
                "a\u26A0\uFE0Fb|a\u26A0\uFFFDb",
                "a\t\tb|a b",
                " a \u2003 b |a b",
                "a\u00A0b|a\u00A0b"
            })
    void replacesWhatItCannotPrintByAVisibleSign(String text, String printable) {
        assertThat(PaperFont.REGULAR.printable(text)).isEqualTo(printable);
    }

    @Test
    void replacesHalvesOfSigns() {
        assertThat(PaperFont.REGULAR.printable("a\uD800b")).isEqualTo("a\uFFFDb");
    }

    @Test
    void keepsLineBreaksAsSpaces() {
        assertThat(PaperFont.REGULAR.printable("a\r\n b\u2028c")).isEqualTo("a b c");
    }

    @Test
    void rejectsToDrawASignWithoutGlyph() {
        Document document = new Document();
        PdfWriter writer = PdfWriter.getInstance(document, java.io.OutputStream.nullOutputStream());
        document.open();
        Pen pen = new Pen(writer.getDirectContent());
        assertThatThrownBy(() -> pen.text(Style.BODY, "中", 0, 0))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("U+4E2D");
    }
}
