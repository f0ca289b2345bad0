package org.fusewright.accounts.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.api.SoftAssertions;
import org.fusewright.accounts.People;
import org.fusewright.accounts.Person;
import org.fusewright.accounts.Role;
import org.fusewright.accounts.web.Caller.Answer;
import org.fusewright.catalogs.Catalogs;
import org.fusewright.catalogs.SampleFiles;
import org.fusewright.core.words.Language;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.RequestMappingInfoHandlerMapping;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Calls every route that there is, as listed by the service itself, as nobody and as each role,
 * with prices whose decimals occur nowhere else.
 */
@AccountsTest
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class AccessTest {
    /** Stands behind the decimals of each unit price. */
    private static final String PRICE_MARK = "7319";

    /** Stands in what only a quote says. */
    private static final String QUOTE_MARK = "Quitting terms 40417";

    private static final JsonMapper MAPPER = new JsonMapper();
    private static final Pattern POST_FORM =
            Pattern.compile("(?s)<form[^>]*method=\"post\"[^>]*>.*?</form>");

    @LocalServerPort private int port;
    @Autowired private People people;
    @Autowired private Catalogs catalogs;
    @Autowired private Collection<RequestMappingInfoHandlerMapping> mappings;

    private record Route(String method, String pattern) {
        @Override
        public String toString() {
            return method + " " + pattern;
        }
    }

    private Caller owner;
    private Caller ownersProgram;
    private Caller builder;
    private Caller buildersProgram;
    private final Caller[] nobody = new Caller[1];

    private String document;
    private String job;
    private String quote;
    private String count;
    private String signed;
    private String shared;

    /** Amounts that only those may read who see prices. */
    private final Set<String> amounts = new TreeSet<>();

    @BeforeAll
    void openAShop() throws IOException {
        Caller.let(people, "Olga", Role.OWNER);
        Caller.let(people, "Ben", Role.BUILDER);
        owner = Caller.loggedIn(port, "Olga");
        builder = Caller.loggedIn(port, "Ben");
        ownersProgram = Caller.program(port, "Olga", Caller.PASSWORD);
        buildersProgram = Caller.program(port, "Ben", Caller.PASSWORD);
        nobody[0] = new Caller(port);

        SampleFiles files = new SampleFiles();
        String offers = files.texts().get("offers.csv");
        files.texts()
                .put(
                        "offers.csv",
                        offers.replaceAll("=(\\d+)\\.(\\d\\d)(?=[ ,])", "=$1.$2" + PRICE_MARK));
        catalogs.importCatalog(
                files.read(), catalogs.findContent().map(content -> content.catalog().version()));

        document =
                Files.readString(Path.of("catalog-sample", "jobs", "01-trail-quad.json"))
                        .replaceFirst("(\"reference\"\\s*:\\s*\")[^\"]*", "$1AC-1");
        job = made(ownersProgram, "/api/jobs", document);
        quote =
                made(
                        ownersProgram,
                        "/api/quotes",
                        "{\"job\": %s, \"kits\": 3, \"customerKind\": \"private\", \"terms\": [\"%s\"]}"
                                .formatted(job, QUOTE_MARK));
        Answer page = owner.get("/quotes/" + quote);
        assertThat(owner.post("/quotes/" + quote + "/send", version(page)).status()).isEqualTo(302);
        Answer link = owner.post("/quotes/" + quote + "/shares", "revision=1&days=2");
        assertThat(link.status()).isEqualTo(201);
        shared = found(link.text(), "(/shared/[\\w-]{43})\"");
        count =
                made(
                        ownersProgram,
                        "/api/counts",
                        "{\"jobId\": %s, \"by\": \"Somebody\"}".formatted(job));
        signed =
                made(
                        ownersProgram,
                        "/api/counts",
                        "{\"jobId\": %s, \"by\": \"Somebody\"}".formatted(job));
        String sign = version(owner.get("/counts/" + signed)) + "&name=Somebody";
        assertThat(owner.post("/counts/" + signed + "/signature", sign).status()).isEqualTo(302);
        noteAmounts();
    }

    private static String made(Caller caller, String path, String body) {
        Answer answer = json(caller, "POST", path, body);
        assertThat(answer.status()).as(answer.text()).isEqualTo(201);
        String location = answer.header("location");
        return location.substring(location.lastIndexOf('/') + 1);
    }

    private static Answer json(Caller caller, String method, String path, String body) {
        return caller.send(method, path, Optional.of(body), "application/json", Map.of());
    }

    /** Those of the kit with so many digits that they are hardly anything else. */
    private void noteAmounts() {
        JsonNode kit = MAPPER.readTree(ownersProgram.get("/api/jobs/" + job + "/kit").body());
        JsonNode offered =
                MAPPER.readTree(ownersProgram.get("/api/jobs/" + job + "/arrangements").body());
        Stream.of(
                        Stream.of(kit.at("/totals/parts"), kit.at("/fit/cost")),
                        kit.at("/parts").valueStream().map(part -> part.at("/extended")),
                        offered.at("/arrangements").valueStream().map(one -> one.at("/cost")))
                .flatMap(all -> all)
                .map(JsonNode::decimalValue)
                .flatMap(amount -> Stream.of(amount, amount.setScale(2, RoundingMode.HALF_UP)))
                .map(BigDecimal::toPlainString)
                .filter(amount -> amount.replace(".", "").length() >= 4)
                .forEach(amounts::add);
        assertThat(amounts).hasSizeGreaterThan(3);
    }

    private List<Route> routes() {
        List<Route> routes = new ArrayList<>();
        for (RequestMappingInfoHandlerMapping mapping : mappings) {
            for (RequestMappingInfo info : mapping.getHandlerMethods().keySet()) {
                Set<RequestMethod> methods = info.getMethodsCondition().getMethods();
                for (String pattern : info.getPatternValues()) {
                    for (RequestMethod method :
                            methods.isEmpty() ? Set.of(RequestMethod.GET) : methods) {
                        routes.add(new Route(method.name(), pattern));
                    }
                }
            }
        }
        return routes;
    }

    @Test
    void namesEachRouteThatThereIs() {
        List<Route> routes = routes();
        assertThat(routes).hasSizeGreaterThan(120);
        assertThat(
                        routes.stream()
                                .filter(
                                        route ->
                                                AccessTable.find(route.method(), route.pattern())
                                                        .isEmpty()))
                .as("routes that the table must name")
                .isEmpty();
    }

    /** Calls in an order in which what is needed later is deleted last. */
    private List<Route> inOrder() {
        return routes().stream()
                .distinct()
                .filter(route -> !route.pattern().equals("/error"))
                .filter(route -> !route.pattern().matches("/log-(in|out)"))
                .sorted(
                        Comparator.comparing(
                                        (Route route) ->
                                                route.method().equals("DELETE")
                                                        || route.pattern().endsWith("/delete"))
                                .thenComparing(Route::toString))
                .toList();
    }

    private String path(Route route) {
        String id =
                route.pattern().contains("/jobs/")
                        ? job
                        : route.pattern().contains("/quotes/")
                                ? quote
                                : route.pattern().contains("/record")
                                        ? signed
                                        : route.pattern().contains("/counts/") ? count : "1";
        return route.pattern()
                        .replace("{id}", id)
                        .replace("{revision}", "1")
                        .replace("{share}", "1")
                        .replace("{name}", "kit-list")
                        .replace("/{*number}", "/WDB-3")
                        .replace("{secret}", "no-such-secret")
                        .replaceAll("/\\*\\*$", "")
                + query(route);
    }

    private String query(Route route) {
        return switch (route.toString()) {
            case "GET /jobs/{id}/why" -> "?of=running:pump";
            case "GET /jobs/{id}/chart" -> "?circuit=pump";
            case "GET /jobs/{id}/proof" -> "?of=circuit:pump";
            case "GET /jobs/{id}/what-if" -> "?row=/circuits/0";
            case "GET /jobs/{id}/now" -> "?from=1";
            case "GET /jobs/{id}/comparison", "GET /api/jobs/{id}/comparison" -> "?from=1&to=2";
            case "GET /counts/new", "GET /quotes/new" -> "?job=" + job;
            default -> "";
        };
    }

    private Answer call(Caller caller, Route route) {
        String path = path(route);
        if (route.method().equals("GET")) {
            return caller.get(path);
        }
        if (path.startsWith("/api/")) {
            String body =
                    route.pattern().endsWith("/what-if")
                            ? "{\"job\": %s, \"circuit\": \"pump\", \"vary\": \"runM\", \"values\": [2]}"
                                    .formatted(document)
                            : document;
            return json(caller, route.method(), path, body);
        }
        return caller.post(
                path,
                switch (route.pattern()) {
                    case "/jobs/{id}" -> "part=true&from=1&%2Fcircuits%2F0%2FrunM=2";
                    case "/jobs/{id}/undo" -> "made=2";
                    case "/jobs/{id}/what-if" -> "ask=" + Caller.encoded("runM /circuits/0");
                    case "/jobs/{id}/drawer" -> "row=/circuits/0";
                    case "/jobs/{id}/read-text" -> "text=horn+4A+2m";
                    case "/counts" -> "job=" + job + "&revision=1&by=Mallory";
                    case "/counts/{id}/pieces" -> "part=WDB-3&pieces=1&by=Mallory";
                    case "/counts/{id}/scans" -> "code=WDB-3&by=Mallory";
                    default -> "version=1&by=Mallory&name=Mallory";
                });
    }

    private static boolean isLive(Route route) {
        return route.pattern().endsWith("/live");
    }

    @Test
    void letsNobodyInButToWhatAnybodyMaySee() {
        SoftAssertions softly = new SoftAssertions();
        for (Route route : inOrder()) {
            Who who = AccessTable.find(route.method(), route.pattern()).orElseThrow();
            Answer answer = call(nobody[0], route);
            String said = route + " says " + answer.status() + " " + answer.header("location");
            boolean turnedDown =
                    answer.status() == 401
                            || answer.status() == 403
                            || answer.header("location").startsWith("/log-in?to=");
            softly.assertThat(turnedDown).as(said).isEqualTo(who != Who.ANYBODY);
            softly.assertThat(answer.header("www-authenticate")).as(said).isEmpty();
            assertTellsNothing(softly, answer, route);
        }
        softly.assertAll();
    }

    @Test
    void showsABuilderEverythingButPricesAndQuotes() {
        Answer edit = call(builder, new Route("POST", "/jobs/{id}"));
        assertThat(edit.status()).as(edit.text()).isIn(200, 302, 303);
        SoftAssertions softly = new SoftAssertions();
        for (Route route : inOrder()) {
            if (isLive(route)) {
                continue;
            }
            Who who = AccessTable.find(route.method(), route.pattern()).orElseThrow();
            boolean api = route.pattern().startsWith("/api/");
            Answer answer = call(api ? buildersProgram : builder, route);
            String said = route + " says " + answer.status() + " " + answer.text();
            if (who == Who.OWNERS) {
                softly.assertThat(answer.status()).as(said).isEqualTo(403);
            } else {
                softly.assertThat(answer.status()).as(said).isNotIn(401, 403).isLessThan(500);
                if (route.method().equals("GET") && !route.pattern().contains("{secret}")) {
                    softly.assertThat(answer.status()).as(said).isIn(200, 302);
                }
            }
            assertTellsNothing(softly, answer, route);
        }
        softly.assertAll();
    }

    private void assertTellsNothing(SoftAssertions softly, Answer answer, Route route) {
        String text = answer.text();
        softly.assertThat(text).as(route.toString()).doesNotContain(PRICE_MARK, QUOTE_MARK);
        softly.assertThat(
                        amounts.stream()
                                .filter(
                                        amount ->
                                                Pattern.compile(
                                                                "(?<![\\d.])"
                                                                        + Pattern.quote(amount)
                                                                        + "(?!\\d)")
                                                        .matcher(text)
                                                        .find()))
                .as(route + " tells amounts")
                .isEmpty();
    }

    /** Else the tests before could not fail. */
    @Test
    void showsAnOwnerThePrices() {
        for (String path :
                List.of(
                        "/jobs/%s/kit.json",
                        "/jobs/%s/parts.csv",
                        "/jobs/%s",
                        "/jobs/%s/arrangements",
                        "/api/jobs/%s/arrangements")) {
            String text = call(path.startsWith("/api/") ? ownersProgram : owner, path);
            assertThat(text.contains(PRICE_MARK) || amounts.stream().anyMatch(text::contains))
                    .as(path)
                    .isTrue();
        }
        assertThat(json(ownersProgram, "POST", "/api/kits", document).text()).contains(PRICE_MARK);
        assertThat(owner.get("/catalog/parts/WDB-3").text()).contains(PRICE_MARK);
        assertThat(owner.get("/jobs/" + job + "/why?of=price:").status()).isEqualTo(200);
        assertThat(builder.get("/jobs/" + job + "/why?of=price:").status()).isEqualTo(404);
        assertThat(owner.get("/quotes/" + quote).text()).contains(QUOTE_MARK);
    }

    private String call(Caller caller, String path) {
        Answer answer = caller.get(path.formatted(job));
        assertThat(answer.status()).as(path).isEqualTo(200);
        return answer.text();
    }

    @Test
    void plansTheSameKitForABuilder() {
        JsonNode full = MAPPER.readTree(json(ownersProgram, "POST", "/api/kits", document).body());
        JsonNode bare =
                MAPPER.readTree(json(buildersProgram, "POST", "/api/kits", document).body());
        assertThat(bare.at("/fingerprint")).isEqualTo(full.at("/fingerprint"));
        for (String same : List.of("/circuits", "/feeds", "/blocks", "/checks", "/wire")) {
            assertThat(bare.at(same)).as(same).isEqualTo(full.at(same));
        }
        assertThat(quantities(bare)).isEqualTo(quantities(full)).isNotEmpty();
        assertThat(bare.findValues("unitPrice")).isEmpty();
        assertThat(bare.findValues("extended")).isEmpty();
        assertThat(bare.at("/totals/parts").isMissingNode()).isTrue();
        assertThat(bare.at("/fit/cost").isMissingNode()).isTrue();
        assertThat(bare.at("/fit/why").size()).isPositive();
    }

    private static List<String> quantities(JsonNode kit) {
        return kit.at("/parts")
                .valueStream()
                .map(part -> part.at("/part").stringValue() + " " + part.at("/quantity"))
                .toList();
    }

    @Test
    void keepsTheNameOfWhoeverIsLoggedIn() {
        String id =
                made(buildersProgram, "/api/jobs?by=Mallory", document.replace("AC-1", "AC-NAMED"));
        Answer edit =
                builder.post("/jobs/" + id, "part=true&from=1&by=Mallory&%2Fcircuits%2F0%2FrunM=2");
        assertThat(edit.status()).as(edit.text()).isIn(200, 302, 303);
        JsonNode revisions =
                MAPPER.readTree(buildersProgram.get("/api/jobs/" + id + "/revisions").body());
        assertThat(revisions.findValuesAsString("changedBy")).containsExactly("Ben", "Ben");
        String counted =
                made(
                        buildersProgram,
                        "/api/counts",
                        "{\"jobId\": %s, \"by\": \"Mallory\"}".formatted(job));
        assertThat(buildersProgram.get("/api/counts/" + counted).text())
                .contains("Ben")
                .doesNotContain("Mallory");
    }

    @Test
    void opensOneSentQuoteByItsLinkAndNothingElse() {
        Caller customer = new Caller(port);
        Answer page = customer.get(shared);
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.text()).contains(QUOTE_MARK).doesNotContain("href=\"/jobs");
        Answer paper = customer.get(shared + "/quote.pdf");
        assertThat(paper.status()).isEqualTo(200);
        assertThat(paper.text()).contains(QUOTE_MARK);
        assertThat(paper.body()).isEqualTo(owner.get("/quotes/" + quote + "/quote.pdf").body());
        // What the shop pays and adds is not for the customer.
        assertThat(page.text()).doesNotContain("SKERROW", "OLDQUAY", "DUNNOCK");
        assertThat(customer.get("/quotes/" + quote).header("location")).startsWith("/log-in");
        assertThat(customer.post(shared, "").status()).isEqualTo(401);

        Answer other = owner.post("/quotes/" + quote + "/shares", "revision=1&days=2");
        String link = found(other.text(), "(/shared/[\\w-]{43})\"");
        String share = found(other.text(), "/shares/(\\d+)/revoke");
        assertThat(customer.get(link).status()).isEqualTo(200);
        owner.post("/quotes/" + quote + "/shares/" + share + "/revoke", "revision=1");
        assertThat(customer.get(link).status()).isEqualTo(404);
        assertThat(customer.get(link + "/quote.pdf").status()).isEqualTo(404);
        assertThat(customer.get(shared).status()).isEqualTo(200);
    }

    @Test
    void sharesNoDraft() {
        String draft =
                made(
                        ownersProgram,
                        "/api/quotes",
                        "{\"job\": %s, \"kits\": 1, \"customerKind\": \"private\"}".formatted(job));
        assertThat(owner.post("/quotes/" + draft + "/shares", "revision=1&days=2").status())
                .isEqualTo(409);
    }

    @Test
    void putsATokenIntoEachFormOfEachPage() {
        int forms = 0;
        for (Route route : inOrder()) {
            if (!route.method().equals("GET") || isLive(route)) {
                continue;
            }
            Answer answer = owner.get(path(route));
            if (!answer.header("content-type").startsWith("text/html")) {
                continue;
            }
            String page = answer.text();
            Matcher form = POST_FORM.matcher(page);
            while (form.find()) {
                forms++;
                assertThat(form.group()).as(route.toString()).contains("name=\"_csrf\" value=\"");
            }
            if (page.contains("<body")) {
                assertThat(page).as(route.toString()).contains("<body hx-headers=\"{");
            }
        }
        assertThat(forms).isGreaterThan(50);
    }

    /** The token is put into forms that say "post" in so many words. */
    @Test
    void writesTheMethodOfEachFormInSoManyWords() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("src", "main", "jte"))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Matcher form =
                        Pattern.compile("<form\\b(?:\"[^\"]*\"|[^>\"])*>")
                                .matcher(Files.readString(file));
                while (form.find()) {
                    assertThat(form.group())
                            .as(file.toString())
                            .containsPattern("method=\"(get|post)\"");
                }
            }
        }
    }

    @Test
    void keepsTheLastOwner() {
        Person olga =
                people.list().stream()
                        .filter(person -> person.name().equals("Olga"))
                        .findFirst()
                        .orElseThrow();
        List<Person> others =
                people.list().stream()
                        .filter(person -> person.isOwner() && person.id() != olga.id())
                        .toList();
        others.forEach(other -> people.changeRole(other.id(), Role.BUILDER));
        assertThat(owner.post("/people/" + olga.id() + "/role", "role=builder").status())
                .isEqualTo(409);
        assertThat(owner.post("/people/" + olga.id() + "/active", "active=false").status())
                .isEqualTo(409);
        assertThat(owner.get("/people").status()).isEqualTo(200);
    }

    @Test
    void speaksGermanOnItsPages() {
        for (String path : List.of("/people", "/log-in", "/welcome/no-such-secret")) {
            Map<String, String> german = Map.of("Accept-Language", "de");
            String page = owner.send("GET", path, Optional.empty(), "", german).text();
            assertThat(page).as(path).contains("lang=\"de\"");
            for (String key : Language.ENGLISH.keys()) {
                String words = Language.ENGLISH.pattern(key);
                boolean ofThese = key.matches("(log-in|people|welcome|role|role-may|frame)\\..*");
                if (ofThese && !words.equals(Language.GERMAN.pattern(key))) {
                    assertThat(page).as(path + " " + key).doesNotContain(">" + words + "<");
                }
            }
        }
    }

    private static String version(Answer page) {
        return "version=" + found(page.text(), "name=\"version\" value=\"(\\d+)\"");
    }

    private static String found(String text, String pattern) {
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        assertThat(matcher.find()).as(pattern + " in " + text).isTrue();
        return matcher.group(1);
    }
}
