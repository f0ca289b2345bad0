package org.fusewright.accounts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.mock.env.MockEnvironment;

class AccountsModeTest {
    @ParameterizedTest
    @CsvSource({
        "127.0.0.1, auto, false",
        "127.8.0.1, auto, false",
        "::1, auto, false",
        "localhost, auto, false",
        "127.0.0.1, required, true",
        "0.0.0.0, auto, true",
        "'::', auto, true",
        "192.0.2.7, auto, true",
        "'', auto, true",
        "no-such-host.invalid, auto, true",
    })
    void asksForLogInWhereverOtherMachinesReach(String address, String setting, boolean required) {
        MockEnvironment settings =
                new MockEnvironment()
                        .withProperty("server.address", address)
                        .withProperty("fusewright.accounts", setting);
        assertThat(AccountsMode.isRequired(settings)).isEqualTo(required);
    }

    @Test
    void offersNoWayToTurnLogInOff() {
        MockEnvironment settings =
                new MockEnvironment()
                        .withProperty("server.address", "0.0.0.0")
                        .withProperty("fusewright.accounts", "off");
        assertThatThrownBy(() -> AccountsMode.isRequired(settings))
                .hasMessage("fusewright.accounts must be auto or required");
    }
}
