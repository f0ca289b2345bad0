package org.fusewright.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import com.microsoft.playwright.Page;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.boot.test.web.server.LocalServerPort;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

class BrowserTest {
    @Test
    void leavesTestsOutWhereNoBrowserIs() {
        ConditionEvaluationResult decision = Browser.decide(Optional.empty(), false);
        assertThat(decision.isDisabled()).isTrue();
        assertThat(decision.getReason().orElseThrow()).contains("no Chromium");
    }

    @Test
    void rejectsAMissingBrowserWhereOneIsRequired() {
        assertThatIllegalStateException()
                .isThrownBy(() -> Browser.decide(Optional.empty(), true))
                .withMessageContaining("A browser is required");
    }

    @Test
    void runsTestsWhereABrowserIs() {
        assertThat(Browser.decide(Optional.of(Path.of("browser")), true).isDisabled()).isFalse();
    }

    @Test
    void prefersTheProgramThatTheEnvironmentNames() {
        String java = ProcessHandle.current().info().command().orElseThrow();
        assertThat(Browser.findProgram(Map.of("FUSEWRIGHT_BROWSER", java))).contains(Path.of(java));
    }

    @Nested
    @ServiceTest
    @ExtendWith(Browser.class)
    class WithAService {
        @LocalServerPort private int port;

        @Test
        void opensAPageAndRunsItsScript(Page page) {
            page.navigate("http://127.0.0.1:" + port + "/actuator/health");
            assertThat(page.evaluate("JSON.parse(document.body.innerText).status")).isEqualTo("UP");
        }
    }
}
