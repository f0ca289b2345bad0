package org.fusewright.accounts.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.TestDatabase;
import org.fusewright.accounts.People;
import org.fusewright.accounts.Person;
import org.fusewright.accounts.Role;
import org.fusewright.accounts.web.Caller.Answer;
import org.fusewright.web.Secret;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;

@AccountsTest
class LogInTest {
    private static final AtomicInteger NUMBER = new AtomicInteger();

    @LocalServerPort private int port;
    @Autowired private People people;

    private final String name = "Person " + NUMBER.incrementAndGet();

    @BeforeEach
    void forgetAttempts() throws SQLException {
        execute("delete from log_in_attempt");
    }

    private static void execute(String sql) throws SQLException {
        try (Connection connection = TestDatabase.connectTo(AccountsTest.DATABASE);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static String asked(String sql) throws SQLException {
        try (Connection connection = TestDatabase.connectTo(AccountsTest.DATABASE);
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return String.valueOf(row.getString(1));
        }
    }

    private Person person() {
        return people.list().stream()
                .filter(person -> person.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void opensWithNameAndPasswordUntilLogOut() {
        Caller.let(people, name, Role.BUILDER);
        Caller caller = new Caller(port);
        assertThat(caller.get("/jobs").header("location")).isEqualTo("/log-in?to=%2Fjobs");
        Answer in = caller.logIn(name.toUpperCase(), Caller.PASSWORD);
        assertThat(in.status()).isEqualTo(302);
        assertThat(in.headers().allValues("set-cookie"))
                .isNotEmpty()
                .allMatch(cookie -> cookie.contains("HttpOnly") && cookie.contains("SameSite=Lax"));
        assertThat(caller.get("/jobs").status()).isEqualTo(200);
        String session = caller.cookie("session");
        assertThat(caller.post("/log-out", "").status()).isEqualTo(302);
        assertThat(caller.get("/jobs").status()).isEqualTo(303);
        Answer stolen =
                new Caller(port)
                        .send(
                                "GET",
                                "/jobs",
                                Optional.empty(),
                                "",
                                Map.of("Cookie", "session=" + session));
        assertThat(stolen.status()).isEqualTo(303);
    }

    @Test
    void changesTheSessionAtLogIn() {
        Caller.let(people, name, Role.BUILDER);
        Caller caller = Caller.loggedIn(port, name);
        String before = caller.cookie("session");
        String tokenBefore = caller.cookie("token");
        assertThat(caller.logIn(name, Caller.PASSWORD).status()).isEqualTo(302);
        assertThat(caller.cookie("session")).isNotEmpty().isNotEqualTo(before);
        assertThat(caller.cookie("token")).isNotEmpty().isNotEqualTo(tokenBefore);
    }

    @Test
    void keepsASessionForHalfADayAndInItOnlyWho() throws SQLException {
        Caller.let(people, name, Role.BUILDER);
        Caller.loggedIn(port, name);
        String mine = " from spring_session s where principal_name = '" + person().id() + "'";
        assertThat(asked("select max_inactive_interval" + mine)).isEqualTo("43200");
        assertThat(
                        asked(
                                "select (select string_agg(attribute_name, ' ' order by 1) from"
                                        + " spring_session_attributes where session_primary_id ="
                                        + " s.primary_id)"
                                        + mine))
                .contains("person")
                .doesNotContain("CONTEXT");
    }

    @Test
    void leavesNoSessionBehindForALook() throws SQLException {
        String before = asked("select count(*) from spring_session");
        new Caller(port).get("/log-in");
        assertThat(asked("select count(*) from spring_session")).isEqualTo(before);
    }

    @Test
    void makesGuessersWaitWhetherTheNameIsKnownOrNot() {
        Caller.let(people, name, Role.BUILDER);
        for (String guessed : new String[] {name, "nobody " + name}) {
            Caller caller = new Caller(port);
            for (int i = 0; i < 5; i++) {
                Answer wrong = caller.logIn(guessed, "a wrong password");
                assertThat(wrong.status()).isEqualTo(401);
                assertThat(wrong.text()).contains("do not belong together");
            }
            Answer wait = caller.logIn(guessed, Caller.PASSWORD);
            assertThat(wait.status()).isEqualTo(429);
            assertThat(wait.header("retry-after")).isEqualTo("1");
            assertThat(wait.text()).contains("try again in 1 s");
            Answer program = Caller.program(port, guessed, Caller.PASSWORD).get("/api/jobs");
            assertThat(program.status()).isEqualTo(429);
            assertThat(program.header("content-type")).isEqualTo("application/problem+json");
        }
    }

    @Test
    void waitsTwiceAsLongEachTimeAndForgetsAfterSuccess() throws SQLException {
        Caller.let(people, name, Role.BUILDER);
        Caller caller = new Caller(port);
        for (int i = 0; i < 5; i++) {
            caller.logIn(name, "a wrong password");
        }
        execute("update log_in_attempt set blocked_until = now()");
        caller.logIn(name, "a wrong password");
        assertThat(caller.logIn(name, "a wrong password").header("retry-after")).isEqualTo("2");
        execute("update log_in_attempt set blocked_until = now()");
        assertThat(caller.logIn(name, Caller.PASSWORD).status()).isEqualTo(302);
        assertThat(caller.logIn(name, "a wrong password").status()).isEqualTo(401);
        assertThat(caller.logIn(name, "a wrong password").status()).isEqualTo(401);
    }

    @Test
    void makesAnAddressWaitThatTriesManyNames() throws SQLException {
        execute(
                "insert into log_in_attempt values ('address 127.0.0.1', 29, now(), now())"
                        + " on conflict (who) do update set attempts = 29");
        Caller caller = new Caller(port);
        assertThat(caller.logIn("first " + name, "a wrong password").status()).isEqualTo(401);
        assertThat(caller.logIn("second " + name, "a wrong password").status()).isEqualTo(429);
    }

    @Test
    void opensTheInterfaceByPasswordWithoutSessionOrToken() {
        Caller.let(people, name, Role.BUILDER);
        Answer answer = Caller.program(port, name, Caller.PASSWORD).get("/api/jobs");
        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.header("set-cookie")).isEmpty();
        Answer wrong = Caller.program(port, name, "a wrong password").get("/api/jobs");
        assertThat(wrong.status()).isEqualTo(401);
        assertThat(wrong.header("www-authenticate")).isEmpty();
        assertThat(Caller.program(port, name, Caller.PASSWORD).get("/jobs").status())
                .isEqualTo(303);
    }

    @Test
    void changesNothingWithoutAToken() {
        Caller.let(people, name, Role.BUILDER);
        Caller caller = Caller.loggedIn(port, name);
        for (String path : new String[] {"/jobs", "/api/jobs", "/log-out", "/reader"}) {
            Answer answer = caller.send("POST", path, Optional.of("a=b"), Caller.FORM, Map.of());
            assertThat(answer.status()).as(path).isEqualTo(403);
        }
        Answer wrong =
                caller.send(
                        "POST",
                        "/log-out",
                        Optional.of("_csrf=AAAA"),
                        Caller.FORM,
                        Map.of("X-CSRF-TOKEN", "AAAA"));
        assertThat(wrong.status()).isEqualTo(403);
        Answer foreign =
                caller.send(
                        "POST",
                        "/log-out",
                        Optional.of(""),
                        Caller.FORM,
                        Map.of("X-CSRF-TOKEN", caller.token(), "Sec-Fetch-Site", "cross-site"));
        assertThat(foreign.status()).isEqualTo(403);
        assertThat(caller.get("/jobs").status()).isEqualTo(200);
    }

    @Test
    void leadsAPageWithoutASessionToTheLogIn() {
        Answer answer =
                new Caller(port)
                        .send(
                                "GET",
                                "/jobs/1/now?from=1",
                                Optional.empty(),
                                "",
                                Map.of(
                                        "HX-Request",
                                        "true",
                                        "HX-Current-URL",
                                        "http://127.0.0.1/jobs/1"));
        assertThat(answer.status()).isEqualTo(401);
        assertThat(answer.header("hx-redirect")).isEqualTo("/log-in?to=%2Fjobs%2F1");
    }

    @Test
    void shutsAPersonOutAtOnce() {
        Caller.let(people, name, Role.BUILDER);
        Caller caller = Caller.loggedIn(port, name);
        Caller.let(people, "owner of " + name, Role.OWNER);
        people.setActive(person().id(), false);
        assertThat(caller.get("/jobs").status()).isEqualTo(303);
        assertThat(caller.logIn(name, Caller.PASSWORD).status()).isEqualTo(401);
        assertThat(Caller.program(port, name, Caller.PASSWORD).get("/api/jobs").status())
                .isEqualTo(401);
    }

    @ParameterizedTest
    @CsvSource({"10, 1, 400", "12, 1, 302", "6, 2, 302", "72, 1, 302", "73, 1, 400", "37, 2, 400"})
    void takesPasswordsOf12To72Bytes(int letters, int bytesEach, int status) {
        Secret secret = Secret.draw();
        people.add(name, Role.BUILDER, secret.hash());
        Caller caller = new Caller(port);
        String link = "/welcome/" + secret.text();
        String password = (bytesEach == 1 ? "a" : "é").repeat(letters);
        caller.get(link);
        String both = Caller.encoded(password);
        Answer answer = caller.post(link, "password=" + both + "&again=" + both);
        assertThat(answer.status()).as(answer.text()).isEqualTo(status);
        assertThat(caller.logIn(name, password).status()).isEqualTo(status == 302 ? 302 : 401);
    }

    @Test
    void takesALinkOnce() {
        Secret secret = Secret.draw();
        people.add(name, Role.BUILDER, secret.hash());
        Caller caller = new Caller(port);
        String link = "/welcome/" + secret.text();
        String form = "password=" + Caller.PASSWORD.replace(" ", "+");
        assertThat(caller.get(link).status()).isEqualTo(200);
        assertThat(caller.post(link, form + "&again=another+one+here").status()).isEqualTo(400);
        form += "&again=" + Caller.PASSWORD.replace(" ", "+");
        assertThat(caller.post(link, form).status()).isEqualTo(302);
        assertThat(caller.post(link, form).status()).isEqualTo(404);
        assertThat(caller.get(link).status()).isEqualTo(404);
    }

    @Test
    void keepsOnlyHashes() throws SQLException {
        Secret secret = Secret.draw();
        people.add(name, Role.BUILDER, secret.hash());
        assertThat(asked("select count(*) from account_link where secret_hash ~ '^[0-9a-f]{64}$'"))
                .isNotEqualTo("0");
        assertThat(
                        asked(
                                "select count(*) from account_link where secret_hash = '"
                                        + secret.text()
                                        + "'"))
                .isEqualTo("0");
        people.choosePassword(secret.hash(), "", Caller.PASSWORD);
        assertThat(asked("select password_hash from account where name = '" + name + "'"))
                .startsWith("$2");
    }
}
