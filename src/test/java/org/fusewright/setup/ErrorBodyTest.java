package org.fusewright.setup;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.http.MediaType;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.web.servlet.function.RouterFunction;
import org.springframework.web.servlet.function.RouterFunctions;
import org.springframework.web.servlet.function.ServerResponse;

// The log does tell the inside of a failure; here it would only be noise.
@TestPropertySource(properties = "logging.level.org.fusewright.web=off")
@ServiceTest
class ErrorBodyTest {
    @TestConfiguration
    static class BrokenPage {
        @Bean
        RouterFunction<ServerResponse> brokenPage() {
            return RouterFunctions.route()
                    .GET(
                            "/broken",
                            request -> {
                                throw new IllegalStateException("inner secret");
                            })
                    .build();
        }
    }

    @Autowired private RestTestClient client;

    @ParameterizedTest
    @ValueSource(strings = {MediaType.APPLICATION_JSON_VALUE, MediaType.TEXT_HTML_VALUE})
    void keepsTheInsideOfAFailureFromTheCaller(String accept) {
        // Parameters ask for details where the settings leave that to the caller.
        String body =
                client.get()
                        .uri("/broken?trace=true&message=true&errors=true")
                        .accept(MediaType.parseMediaType(accept))
                        .exchange()
                        .expectStatus()
                        .isEqualTo(500)
                        .expectBody(String.class)
                        .returnResult()
                        .getResponseBody();
        assertThat(body)
                .isNotBlank()
                .doesNotContain("inner secret", "IllegalStateException", "\tat ", "BrokenPage");
    }
}
