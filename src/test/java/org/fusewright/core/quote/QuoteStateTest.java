package org.fusewright.core.quote;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.stream.Collectors;

/** The whole table of states: what is not named is not allowed. */
class QuoteStateTest {
    @ParameterizedTest
    @CsvSource({
        "draft, CHANGE SEND DISCARD",
        "sent, ACCEPT DECLINE REVISE",
        "accepted, FULFIL",
        "declined, REVISE",
        "expired, DECLINE REVISE",
    })
    void allowsOnly(String state, String actions) {
        QuoteState found = QuoteState.parse(state).orElseThrow();
        assertThat(
                        Arrays.stream(QuoteAction.values())
                                .filter(found::allows)
                                .map(Enum::name)
                                .collect(Collectors.joining(" ")))
                .isEqualTo(actions);
    }

    @ParameterizedTest
    @CsvSource({
        "sent, 2026-03-31, sent", // the last day is included
        "sent, 2026-04-01, expired",
        "draft, 2026-04-01, draft",
        "accepted, 2026-04-01, accepted",
        "declined, 2026-04-01, declined",
    })
    void expiresAfterTheLastDay(String kept, LocalDate today, String state) {
        assertThat(QuoteState.parse(kept).orElseThrow().on(today, LocalDate.of(2026, 3, 31)).code())
                .isEqualTo(state);
    }
}
