package org.fusewright.accounts.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.Shop;
import org.fusewright.SmallJob;
import org.fusewright.TestDatabase;
import org.fusewright.accounts.People;
import org.fusewright.accounts.Role;
import org.fusewright.accounts.web.Caller.Answer;
import org.junit.jupiter.api.Test;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;

import java.util.Map;
import java.util.Optional;

/** Two services on one database know the same people and sessions. */
class SessionsMoveTest {
    private static final String ACCOUNTS = "--fusewright.accounts=required";

    @Test
    void goOnAtTheOtherInstanceAndEndAtBoth() {
        ApplicationContextInitializer<ConfigurableApplicationContext> database =
                TestDatabase.newOne("fusewright_sessions");
        try (Shop one = Shop.open(database, ACCOUNTS);
                Shop other = Shop.open(database, ACCOUNTS)) {
            Caller.let(one.service().getBean(People.class), "Olga", Role.OWNER);
            Caller here = Caller.loggedIn(one.address().getPort(), "Olga");
            Caller there = here.at(other.address().getPort());
            assertThat(there.get("/quotes").status()).isEqualTo(200);
            Answer kept =
                    there.send(
                            "POST",
                            "/api/jobs",
                            Optional.of(SmallJob.document("MOVED")),
                            "application/json",
                            Map.of("X-CSRF-TOKEN", there.token()));
            assertThat(kept.status()).as(kept.text()).isEqualTo(201);
            assertThat(here.get("/jobs?q=MOVED").text()).contains("MOVED");

            there.post("/log-out", "");
            assertThat(here.get("/quotes").header("location")).contains("/log-in");
            assertThat(new Caller(other.address().getPort()).get("/quotes").header("location"))
                    .contains("/log-in");
        }
    }
}
