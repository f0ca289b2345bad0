package org.fusewright.setup;

import static org.assertj.core.api.Assertions.assertThat;

import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationVersion;
import org.fusewright.Shop;
import org.fusewright.Shop.Answer;
import org.fusewright.TestDatabase;
import org.junit.jupiter.api.Test;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyManager;

import tools.jackson.databind.JsonNode;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What was stored under the first schema is there, and works, under the newest. */
class UpgradeTest {
    private static final String FIRST_SCHEMA = "1";
    private static final String ON_HAND = "7";
    private static final String OFFERS =
            "(select row_number() over (order by part_number, supplier_code, currency, pack_size)"
                    + " as id, * from offer) offer";
    private static final String SOURCE = "fusewright_upgrade_source";
    private static final String OLD = "fusewright_upgrade_old";

    @Test
    void keepsWhatWasStoredUnderTheFirstSchema() throws SQLException, IOException {
        var source = TestDatabase.newOne(SOURCE);
        try (Shop shop = Shop.open(source)) {
            String job =
                    shop.get("/api/jobs/2", Shop.JSON)
                            .text()
                            .replaceFirst("\"title\":\"[^\"]*\"", "\"title\":\"Changed once\"");
            assertThat(
                            shop.send(
                                            "PUT",
                                            "/api/jobs/2",
                                            Shop.JSON,
                                            "*",
                                            Shop.JSON,
                                            job.getBytes(StandardCharsets.UTF_8))
                                    .status())
                    .isEqualTo(200);
        }
        var old = TestDatabase.newOne(OLD);
        Map<String, List<String>> before = new LinkedHashMap<>();
        try (Connection from = TestDatabase.connectTo(SOURCE);
                Connection to = TestDatabase.connectTo(OLD)) {
            Flyway.configure()
                    .dataSource(TestDatabase.sourceOf(OLD))
                    .target(MigrationVersion.fromVersion(FIRST_SCHEMA))
                    .load()
                    .migrate();
            for (String table : listTables(to)) {
                copy(from, to, table);
                before.put(table, rows(to, table, columns(to, table)));
            }
            assertThat(before.get("job")).hasSize(7);
            assertThat(before.get("job_revision")).hasSize(8);
            assertThat(before.get("part")).hasSizeGreaterThan(100);
            assertThat(before.get("offer_price")).hasSizeGreaterThan(100);
        }

        Map<String, String> columnsBefore = new LinkedHashMap<>();
        try (Connection connection = TestDatabase.connectTo(OLD)) {
            for (String table : before.keySet()) {
                columnsBefore.put(table, columns(connection, table));
            }
        }
        try (Shop shop = Shop.open(old);
                Connection connection = TestDatabase.connectTo(OLD)) {
            for (String table : List.of("part", "offer", "offer_price", "job", "job_revision")) {
                assertThat(rows(connection, asOnce(table), columnsBefore.get(table)))
                        .as(table)
                        .isEqualTo(before.get(table));
            }
            assertThat(
                            texts(
                                    connection,
                                    "select distinct quantity::integer::text from stock_move"
                                            + " where reason = 'opening'"))
                    .containsExactly(ON_HAND);
            JsonNode job = shop.get("/api/jobs/2", Shop.JSON).json();
            assertThat(job.at("/title").asString()).isEqualTo("Changed once");
            assertThat(shop.get("/api/jobs/2/revisions", Shop.JSON).json().size()).isEqualTo(2);
            assertThat(shop.get("/jobs/2", "text/html").status()).isEqualTo(200);
            assertThat(
                            shop.post("/api/kits", "", Shop.JSON, job.toString())
                                    .json()
                                    .at("/parts")
                                    .size())
                    .isPositive();
            Answer quoted =
                    shop.post(
                            "/api/quotes",
                            "",
                            Shop.JSON,
                            """
                            {"job": 2, "kits": 1, "variants": ["fuses"]}
                            """);
            assertThat(quoted.status()).as(quoted.text()).isEqualTo(201);
        }
    }

    private static List<String> listTables(Connection connection) throws SQLException {
        // In the order in which they refer to each other, which is that of their making.
        return texts(
                connection,
                "select relname from pg_class where relkind = 'r' and relnamespace ="
                        + " 'public'::regnamespace and relname <> 'flyway_schema_history'"
                        + " order by oid");
    }

    private static String columns(Connection connection, String table) throws SQLException {
        return String.join(
                ", ",
                texts(
                        connection,
                        "select column_name from information_schema.columns where table_schema ="
                                + " 'public' and table_name = '"
                                + table
                                + "' and is_generated = 'NEVER' order by ordinal_position"));
    }

    private static List<String> rows(Connection connection, String table, String columns)
            throws SQLException {
        return texts(
                connection,
                "select row("
                        + columns
                        + ")::text from "
                        + table
                        + " order by row("
                        + columns
                        + ")::text");
    }

    /** What a table of the first schema held, as a part of a query of the newest one. */
    private static String asOnce(String table) {
        return switch (table) {
            case "offer" -> OFFERS;
            case "offer_price" ->
                    "(select id as offer_id, key::integer as from_quantity,"
                            + " value::numeric(14, 6) as unit_price from "
                            + OFFERS
                            + ", jsonb_each(prices)) offer_price";
            default -> table;
        };
    }

    private static void copy(Connection from, Connection to, String table)
            throws SQLException, IOException {
        String columns = columns(to, table);
        // Stock is a ledger by now; what lay on the shelf was a column then.
        String known = columns.replace("on_hand", ON_HAND + " as on_hand");
        CopyManager out = from.unwrap(PGConnection.class).getCopyAPI();
        CopyManager in = to.unwrap(PGConnection.class).getCopyAPI();
        ByteArrayOutputStream content = new ByteArrayOutputStream();
        out.copyOut("copy (select " + known + " from " + asOnce(table) + ") to stdout", content);
        in.copyIn(
                "copy " + table + " (" + columns + ") from stdin",
                new ByteArrayInputStream(content.toByteArray()));
        // Numbers that were given are not given again.
        if (List.of(columns.split(", ")).contains("id") && !table.equals("offer")) {
            texts(
                    to,
                    "select setval(pg_get_serial_sequence('%1$s', 'id'), max(id))::text from %1$s"
                            .formatted(table));
        }
    }

    private static List<String> texts(Connection connection, String query) throws SQLException {
        List<String> texts = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(query)) {
            while (rows.next()) {
                texts.add(rows.getString(1));
            }
        }
        return texts;
    }
}
