package org.fusewright.orders.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.fusewright.TestDatabase;
import org.fusewright.catalogs.Catalogs;
import org.fusewright.catalogs.SampleFiles;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.EntityExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;

@ServiceTest
class OrderApiTest {
    private static final String WISHES = "{\"currency\": \"EUR\"}";

    @Autowired private RestTestClient client;
    @Autowired private Catalogs catalogs;

    private record Answer(int status, String etag, String body) {
        JsonNode json() {
            return new JsonMapper().readTree(body);
        }
    }

    @BeforeEach
    void needSomething() throws SQLException {
        forget();
        catalogs.importCatalog(
                new SampleFiles().replaceFirst("stock.csv", "WDB-3,12,6", "WDB-3,2,60").read(),
                catalogs.findContent().map(known -> known.catalog().version()));
    }

    @AfterEach
    void forget() throws SQLException {
        try (Connection connection = TestDatabase.connect();
                Statement statement = connection.createStatement()) {
            statement.execute("set session_replication_role = replica");
            for (String table :
                    new String[] {
                        "delivery_line", "delivery", "purchase_order_line", "purchase_order"
                    }) {
                statement.execute("delete from " + table);
            }
        }
    }

    @Test
    void goesFromProposalToReceivedOrder() {
        Answer proposal = get("/api/orders/proposal?currency=EUR", "application/json");
        assertThat(proposal.status()).isEqualTo(200);
        assertThat(proposal.json().at("/optimal").booleanValue()).isTrue();
        assertThat(proposal.json().at("/total").decimalValue())
                .isLessThanOrEqualTo(proposal.json().at("/naive").decimalValue());

        assertThat(post("/api/orders", "", WISHES).status()).isEqualTo(428);
        assertThat(post("/api/orders", "\"0000\"", WISHES).status()).isEqualTo(412);
        Answer made = post("/api/orders", proposal.etag(), WISHES);
        assertThat(made.status()).isEqualTo(201);
        assertThat(post("/api/orders", proposal.etag(), WISHES).status()).isEqualTo(412);

        JsonNode order = orderWith(made.json(), "WDB-3");
        String path = "/api/orders/" + order.at("/id").longValue();
        assertThat(get(path, "application/xml").status()).isEqualTo(409);
        Answer draft = get(path, "application/json");
        Answer sent = post(path + "/send", draft.etag(), "");
        assertThat(sent.json().at("/state").stringValue()).isEqualTo("sent");
        assertThat(post(path + "/send", draft.etag(), "").status()).isEqualTo(412);
        assertThat(get(path, "application/pdf").body()).startsWith("%PDF-");
        assertThat(get(path + "?paper=letter", "application/pdf").body()).startsWith("%PDF-");
        assertThat(get(path, "text/csv").body()).startsWith("order,line,part,");
        assertThat(get(path, "application/xml").body())
                .contains("urn:oasis:names:specification:ubl:schema:xsd:Order-2");

        String parcel = "{\"note\": \"N-1\", \"lines\": [{\"part\": \"WDB-3\", \"quantity\": 2}]}";
        assertThat(post(path + "/deliveries", draft.etag(), parcel).status()).isEqualTo(412);
        Answer came = post(path + "/deliveries", sent.etag(), parcel);
        assertThat(came.json().at("/state").stringValue()).isEqualTo("partly received");
        Answer again = post(path + "/deliveries", sent.etag(), parcel);
        assertThat(again.status()).isEqualTo(200);
        assertThat(again.json().at("/deliveries").size()).isEqualTo(1);

        Answer refused =
                post(
                        path + "/deliveries",
                        came.etag(),
                        """
                        {"note": "N-2", "lines": [{"part": "XX-1", "quantity": 1}]}
                        """);
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.json().at("/errors/0/pointer").stringValue()).isEqualTo("/lines/0/part");
        assertThat(refused.json().at("/errors/0/detail").stringValue())
                .contains("XX-1 was never ordered");
        assertThat(post(path + "/cancel", came.etag(), "").json().at("/state").stringValue())
                .isEqualTo("cancelled");
    }

    @Test
    void namesEveryWrongField() {
        Answer query =
                get(
                        "/api/orders/proposal?currency=XYZ&wantedBy=1999-01-01&wirePercent=-1",
                        "application/json");
        assertThat(query.status()).isEqualTo(400);
        assertThat(
                        query.json()
                                .at("/errors")
                                .valueStream()
                                .map(e -> e.at("/pointer").stringValue()))
                .containsExactly("/currency", "/wantedBy", "/wirePercent");
        Answer body = post("/api/orders", "\"0\"", "{\"currency\": 3, \"colour\": \"red\"}");
        assertThat(body.status()).isEqualTo(400);
        assertThat(body.json().at("/errors").valueStream().map(e -> e.at("/pointer").stringValue()))
                .containsExactly("/currency", "/colour");
    }

    @Test
    void saysWhichOffersAreTooSlow() {
        Answer soon =
                get(
                        "/api/orders/proposal?currency=EUR&wantedBy="
                                + java.time.LocalDate.now().plusDays(3),
                        "application/json");
        assertThat(soon.json().at("/leftAside").valueStream())
                .anySatisfy(
                        one ->
                                assertThat(one.at("/reason").stringValue())
                                        .isEqualTo("too slow: takes 5 days"));
        assertThat(soon.json().at("/lines").valueStream())
                .allSatisfy(line -> assertThat(line.at("/leadTimeDays").intValue()).isLessThan(4));
    }

    @Test
    void showsThePages() {
        assertThat(get("/orders", "text/html").body())
                .contains("What to order", "How it splits over the suppliers", "Proven");
        Answer proposal = get("/api/orders/proposal?currency=EUR", "application/json");
        Answer made = post("/api/orders", proposal.etag(), WISHES);
        long id = made.json().at("/0/id").longValue();
        assertThat(get("/orders/" + id, "text/html").body())
                .contains("Send: freeze it as it is", "Discard the draft");
    }

    private static JsonNode orderWith(JsonNode orders, String part) {
        return orders.valueStream()
                .filter(
                        order ->
                                order.at("/lines")
                                        .valueStream()
                                        .anyMatch(l -> l.at("/part").stringValue().equals(part)))
                .findFirst()
                .orElseThrow();
    }

    private Answer get(String path, String accept) {
        return answer(
                client.get()
                        .uri(path)
                        .header("Accept", accept)
                        .exchange()
                        .expectBody()
                        .returnResult());
    }

    private Answer post(String path, String ifMatch, String body) {
        var request = client.post().uri(path);
        if (!ifMatch.isEmpty()) {
            request = request.header("If-Match", ifMatch);
        }
        return answer(
                (body.isEmpty()
                                ? request
                                : request.contentType(MediaType.APPLICATION_JSON)
                                        .body(body.getBytes(StandardCharsets.UTF_8)))
                        .exchange()
                        .expectBody()
                        .returnResult());
    }

    private static Answer answer(EntityExchangeResult<byte[]> result) {
        byte[] body = result.getResponseBody();
        String etag = result.getResponseHeaders().getETag();
        return new Answer(
                result.getStatus().value(),
                etag == null ? "" : etag,
                body == null ? "" : new String(body, StandardCharsets.UTF_8));
    }
}
