package org.fusewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.fusewright.TestDatabase;
import org.fusewright.core.words.Language;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.EntityExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.springframework.web.util.HtmlUtils;

import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** No page that a German reader gets says anything in English that the bundle has in German. */
@ServiceTest
class GermanPagesTest {
    private static final Pattern DOCUMENT =
            Pattern.compile(
                    "/(api|v3|actuator|error|swagger-ui)(/.*)?|.*\\.(json|csv|xml|pdf|yaml)|.*/live");
    private static final Pattern SLOT = Pattern.compile("\\{\\d\\}");

    /** What stands between tags, and what tags say to people. */
    private static final Pattern SAID =
            Pattern.compile(
                    ">([^<>]+)<|(?:aria-label|placeholder|title|data-label|alt)=\"([^\"]*)\"");

    /** A short text that could be no id or code of somebody's data. */
    private static final Pattern MEANT_FOR_PEOPLE = Pattern.compile("\\p{Lu}.*\\p{L}.*|\\p{L}+ .*");

    @Autowired private RestTestClient client;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    private RequestMappingHandlerMapping routes;

    private final Map<String, String> pages = new LinkedHashMap<>();
    private final List<String> jobs = new ArrayList<>();

    @AfterEach
    void forget() throws SQLException {
        try (Connection connection = TestDatabase.connect();
                Statement statement = connection.createStatement()) {
            statement.execute(
                    "truncate quote, quote_revision, quote_demand, quote_count, quote_share");
            statement.execute("set session_replication_role = replica");
            statement.execute("delete from purchase_order_line");
            statement.execute("delete from purchase_order");
        }
        jobs.forEach(
                id ->
                        client.method(HttpMethod.DELETE)
                                .uri("/api/jobs/" + id)
                                .header(HttpHeaders.IF_MATCH, "*")
                                .exchange());
    }

    @Test
    void sayNothingInEnglish() throws IOException {
        visitJobs();
        visitQuotesAndOrders();
        visitCounts();
        visitTheRest();

        assertThat(listNotVisited()).as("routes of pages that this test must visit").isEmpty();
        Set<String> english = new TreeSet<>();
        pages.forEach((path, page) -> english.addAll(listEnglish(path, page)));
        assertThat(english).isEmpty();
    }

    private void visitJobs() throws IOException {
        get("/jobs");
        get("/jobs?q=no-such-job");
        post("/jobs", "%2Freference=");
        for (String sample : List.of("01-trail-quad", "07-too-much-on-one")) {
            String id = job(sample);
            String page = get("/jobs/" + id);
            visitFigures(page);
            for (String of : listFound(page, "/proof\\?of=([^\"]+)\"")) {
                visitFigures(get("/jobs/" + id + "/proof?of=" + of));
            }
            for (String row : List.of("/circuits/0", "/circuits/1")) {
                get("/jobs/" + id + "/what-if?row=" + row);
                post("/jobs/" + id + "/drawer", form(page) + "&row=" + encoded(row));
                for (String asked : List.of("ambientC", "runM", "gauge", "kind")) {
                    post(
                            "/jobs/" + id + "/what-if",
                            form(page) + "&ask=" + encoded(asked + " " + row));
                }
            }
            get("/jobs/" + id + "/arrangements");
            post(
                    "/jobs/" + id + "/read-text",
                    form(page) + "&text=" + encoded("horn 4A 2m; seventeen things; two lamps"));
            post("/jobs/" + id, form(page).replaceFirst("runM=[^&]*", "runM=long"));
            post(
                    "/jobs/" + id,
                    form(page) + "&do=paste&at=&pasted=" + encoded("Kind\tPrice\nled\t1"));
        }
        visitRevisions("/jobs/" + job("01-trail-quad"));
        get("/jobs/" + jobs.getFirst() + "/chart?circuit=pump");
        get("/jobs/" + jobs.getFirst() + "/proof?of=job:");
    }

    private void visitRevisions(String job) {
        String run = "&part=true&%2Fcircuits%2F0%2FrunM=";
        location(job, "by=Ada&from=1" + run + "2");
        post(job, "by=Ben&from=1" + run + "3");
        location(job, "by=Ada&from=2" + run + "4&%2Fsupply%2FnominalV=24");
        post(job + "/undo", "by=Ben&made=2");
        get(job + "/now?from=1");
        get(job + "/revisions");
        get(job + "/revisions?upTo=1");
        get(job + "/revisions/1");
        get(job + "/revisions/3");
        get(job + "/comparison?from=1&to=3");
        get(job + "/comparison?from=3&to=3");
        post(job + "/restore", "version=99&revision=1");
        post(job + "/delete", "version=99");
        get(location(job + "/restore", version(get(job)) + "&revision=1"));
    }

    /** One figure of each kind and code. */
    private void visitFigures(String page) {
        Set<String> kinds = new HashSet<>();
        for (String figure : listFound(page, "href=\"(/jobs/\\d+/why[^\"]+)\"")) {
            if (kinds.add(figure.replaceFirst("(of=(check:)?[a-z-]+).*", "$1"))) {
                get(figure);
            }
        }
    }

    private void visitQuotesAndOrders() {
        get("/quotes/new?job=" + jobs.getFirst());
        post("/quotes", "job=" + jobs.getFirst() + "&kits=many");
        String quote =
                location(
                        "/quotes",
                        "job="
                                + jobs.getFirst()
                                + "&kits=40&variants=fuses&variants=solid-state"
                                + "&customerKind=private&validDays=30&shipping=true");
        String page = get(quote);
        post(quote + "/accept", version(page));
        post(quote + "/send", "version=99");
        location(quote + "/send", version(page));
        page = get(quote);
        String shared =
                found(
                        post(quote + "/shares", "revision=1&days=30"),
                        "href=\"[^\"]*(/shared/[^\"]+)\"");
        get(shared);
        get(shared + "-no-such");
        get(quote);
        location(quote + "/shares/1/revoke", "revision=1");
        get(quote);
        post(quote + "/shares", "revision=1&days=0");
        String revised = location(quote + "/revise", version(page));
        page = get(revised);
        post(quote + "/shares", "revision=2&days=1");
        location(quote + "/send", version(page));
        location(quote + "/accept", version(get(quote)) + "&variant=fuses");
        get(quote);
        get("/quotes");
        get("/quotes?q=no-such-quote");
        page = get("/orders");
        get("/orders?wantedBy=2001-01-01&wirePercent=much");
        String hidden =
                Stream.of("currency", "wirePercent", "version")
                        .map(
                                name ->
                                        name
                                                + "="
                                                + found(
                                                        page("/orders"),
                                                        "name=\"" + name + "\" value=\"([^\"]*)\""))
                        .collect(Collectors.joining("&"));
        location("/orders", hidden);
        for (String order :
                listFound(get("/orders"), "href=\"(/orders/\\d+)\"").stream().limit(1).toList()) {
            String draft = get(order);
            post(order + "/send", "version=99");
            location(order + "/send", version(draft));
            String sent = get(order);
            post(order + "/receive", version(sent) + "&note=");
            post(order + "/discard", version(sent));
        }
        post("/orders", hidden);
    }

    private void visitCounts() {
        get("/counts/new?job=" + jobs.getFirst());
        post("/counts", "job=" + jobs.getFirst() + "&revision=1&by=");
        String count = location("/counts", "job=" + jobs.getFirst() + "&revision=1&by=Ines");
        String path = count.replaceFirst("\\?.*", "");
        String page = get(count);
        post(path + "/scans", "code=no-such-part&by=Ines");
        post(path + "/scans", "code=PYF-5&by=Ines");
        post(path + "/scans", "code=PYF-30&by=Ines");
        post(path + "/weighings", "resolutionG=0.1&do=state&by=Ines");
        post(path + "/weighings", "resolutionG=much&do=state&by=Ines");
        location(path + "/weighings", "resolutionG=0.1&grossG=400&do=keep&by=Ines");
        get(path);
        get("/counts");
        post(path + "/signature", version(page) + "&name=Ines");
        location(path + "/delete", version(get(path)));
    }

    private void visitTheRest() {
        get("/catalog");
        get("/catalog?q=no-such-part");
        for (String part : List.of("WDB-4", "PYF-7.5", "OSR-12", "LTM-1.5-RD", "WDT-B", "WDS-1")) {
            get("/catalog/parts/" + part);
        }
        get("/catalog/parts/no-such-part");
        get("/catalog/import");
        String trail = get("/changes");
        get("/changes?what=job&record=" + jobs.getFirst());
        get("/changes?who=nobody");
        get("/changes?record=5");
        get(found(trail, "href=\"(/changes/\\d+)\""));
        get(found(get("/changes?what=job"), "href=\"(/changes/\\d+)\""));
        get("/changes/999999999");
        get("/no/such/page");
        get("/jobs/999999");
        get("/quotes/999999");
        get("/orders/999999");
        get("/counts/999999");
        get("/jobs/abc");
        post("/catalog", "");
    }

    private List<String> listNotVisited() {
        List<String> missing = new ArrayList<>();
        for (RequestMappingInfo route : routes.getHandlerMethods().keySet()) {
            Set<RequestMethod> methods = route.getMethodsCondition().getMethods();
            for (String pattern : route.getPatternValues()) {
                String asPath =
                        pattern.replaceAll("/\\{\\*[^}]+}", "/.+").replaceAll("\\{[^}]+}", "[^/]+");
                boolean page = methods.contains(RequestMethod.GET) && !pattern.equals("/");
                if (page
                        && !DOCUMENT.matcher(pattern).matches()
                        && pages.keySet().stream()
                                .noneMatch(path -> path.matches("GET " + asPath + "(\\?.*)?"))) {
                    missing.add(pattern);
                }
            }
        }
        return missing;
    }

    private static Set<String> listEnglish(String path, String page) {
        Set<String> english = new TreeSet<>();
        String html = page.replaceAll("(?s)<td class=\"part\">.*?</td>", "");
        String text = plain(html.replaceAll("(?s)<[^>]*>", " "));
        Set<String> said = new HashSet<>();
        Matcher found = SAID.matcher(html);
        while (found.find()) {
            said.add(plain(found.group(1) == null ? found.group(2) : found.group(1)));
        }
        for (String key : Language.ENGLISH.keys()) {
            String own = Language.ENGLISH.pattern(key);
            String german = plain(Language.GERMAN.pattern(key));
            for (String piece : SLOT.split(own)) {
                String words = plain(piece);
                boolean differs = !german.contains(words);
                boolean shown =
                        words.split(" ").length > 2
                                ? text.contains(words)
                                : MEANT_FOR_PEOPLE.matcher(words).matches() && said.contains(words);
                if (differs && shown) {
                    english.add(key + ": “" + words + "” on " + path);
                }
            }
        }
        return english;
    }

    private static String plain(String text) {
        return HtmlUtils.htmlUnescape(text).replace('\u00a0', ' ').replaceAll("\\s+", " ").strip();
    }

    private String job(String sample) throws IOException {
        String document =
                Files.readString(Path.of("catalog-sample", "jobs", sample + ".json"))
                        .replaceFirst(
                                "(\"reference\"\\s*:\\s*\")[^\"]*", "$1GP-" + (jobs.size() + 1));
        String location =
                String.valueOf(
                        client.post()
                                .uri("/api/jobs")
                                .contentType(MediaType.APPLICATION_JSON)
                                .body(document)
                                .exchange()
                                .returnResult()
                                .getResponseHeaders()
                                .getLocation());
        jobs.add(location.substring(location.lastIndexOf('/') + 1));
        return jobs.getLast();
    }

    private String page(String path) {
        return pages.get("GET " + path);
    }

    private String get(String path) {
        return keep(
                "GET " + path,
                client.get().uri(path.replace("#", "%23")).header(HttpHeaders.ACCEPT, "text/html"));
    }

    private String post(String path, String form) {
        return keep("POST " + path + " " + pages.size(), request(path, form));
    }

    private RestTestClient.RequestHeadersSpec<?> request(String path, String form) {
        return client.post()
                .uri(path)
                .header(HttpHeaders.ACCEPT, "text/html")
                .contentType(MediaType.APPLICATION_FORM_URLENCODED)
                .body(form);
    }

    private String keep(String name, RestTestClient.RequestHeadersSpec<?> request) {
        String page = text(send(request));
        pages.put(name, page);
        return page;
    }

    /** Where an action that works leads to. */
    private String location(String path, String form) {
        EntityExchangeResult<byte[]> result = send(request(path, form));
        assertThat(result.getStatus().is3xxRedirection())
                .as("%s %s: %s", path, form, text(result))
                .isTrue();
        return String.valueOf(result.getResponseHeaders().getLocation())
                .replaceFirst("^https?://[^/]+", "");
    }

    private static EntityExchangeResult<byte[]> send(RestTestClient.RequestHeadersSpec<?> request) {
        return request.header(HttpHeaders.ACCEPT_LANGUAGE, "de")
                .exchange()
                .expectBody()
                .returnResult();
    }

    private static String text(EntityExchangeResult<byte[]> result) {
        byte[] body = result.getResponseBody();
        return body == null ? "" : new String(body, StandardCharsets.UTF_8);
    }

    private static String version(String page) {
        return "version=" + found(page, "name=\"version\" value=\"(\\d+)\"");
    }

    private static String found(String page, String pattern) {
        return listFound(page, pattern).stream().findFirst().orElse("");
    }

    private static List<String> listFound(String page, String pattern) {
        return Pattern.compile(pattern)
                .matcher(page)
                .results()
                .map(found -> HtmlUtils.htmlUnescape(found.group(1)))
                .distinct()
                .toList();
    }

    private static String form(String page) {
        return JobFormFields.print(JobFormFields.of(page));
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
