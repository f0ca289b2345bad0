package org.fusewright.quotes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.fusewright.core.quote.Quote;
import org.fusewright.core.quote.SampleQuotes;
import org.fusewright.core.quote.VariantKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

class QuoteTextTest {
    @Test
    void readsBackWhatItWrote() {
        Quote quote =
                SampleQuotes.quad(
                        3, VariantKind.AS_ASKED, VariantKind.FUSES, VariantKind.SOLID_STATE);
        String text = QuoteText.print(quote);
        assertThat(QuoteText.parse(text)).isEqualTo(quote);
        assertThat(QuoteText.print(QuoteText.parse(text))).isEqualTo(text);
    }

    /** A quote as version 1 of the form wrote it; it must stay readable, to the last digit. */
    @Test
    void readsTheFirstVersionOfItsForm() throws IOException {
        String text = Files.readString(Path.of("src/test/resources/quotes/quote-v1.json")).strip();
        Quote quote = QuoteText.parse(text);
        assertThat(QuoteText.print(quote)).isEqualTo(text);
        assertThat(quote.number()).isEqualTo("Q-2026-0001");
        assertThat(quote.currency().getCode()).isEqualTo("KWD");
        assertThat(quote.variants().getFirst().total().getAmount()).isEqualTo("7.260");
        assertThat(quote.variants().getFirst().lines().getFirst().unitPrice().getAmount())
                .isEqualTo("0.13965");
    }

    @ParameterizedTest
    @CsvSource({"'\"number\"', '\"nummer\"'", "'\"kits\":1,', ''", "'\"fuses\"', '\"candles\"'"})
    void rejectsATextOfAnotherForm(String written, String other) throws IOException {
        String text = Files.readString(Path.of("src/test/resources/quotes/quote-v1.json"));
        assertThat(text).contains(written);
        assertThatThrownBy(() -> QuoteText.parse(text.replace(written, other)))
                .isInstanceOf(RuntimeException.class);
    }
}
