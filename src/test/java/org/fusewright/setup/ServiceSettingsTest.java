package org.fusewright.setup;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.fusewright.TestDatabase;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.RestTestClient;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

@ServiceTest
class ServiceSettingsTest {
    @Autowired private ApplicationContext context;
    @Autowired private RestTestClient client;

    @Test
    void startsNoDatabaseWhereAServerIsNamed() {
        assertThat(context.getBeansOfType(EmbeddedDatabase.class)).isEmpty();
        assertThat(TestDatabase.UNUSED_HOME).doesNotExist();
    }

    @Test
    void answersTheHealthCheckAndNothingMore() {
        client.get()
                .uri("/actuator/health")
                .exchange()
                .expectStatus()
                .isOk()
                .expectBody(String.class)
                .isEqualTo("{\"status\":\"UP\"}");
        for (String closed : List.of("/actuator", "/actuator/env", "/actuator/heapdump")) {
            client.get().uri(closed).exchange().expectStatus().isNotFound();
        }
    }

    @Test
    void describesTheApiInOpenApi31() {
        client.get()
                .uri("/v3/api-docs")
                .accept(MediaType.APPLICATION_JSON)
                .exchange()
                .expectBody()
                .jsonPath("$.openapi")
                .value(String.class, version -> assertThat(version).startsWith("3.1."));
    }

    @Test
    void explainsEveryTable() throws SQLException {
        List<String> unexplained = new ArrayList<>();
        int tables = 0;
        try (Connection connection = TestDatabase.connect();
                Statement statement = connection.createStatement();
                ResultSet rows =
                        statement.executeQuery(
                                """
                                select relname, obj_description(oid, 'pg_class') from pg_class
                                where relkind = 'r' and relnamespace = 'public'::regnamespace
                                    and relname <> 'flyway_schema_history'
                                """)) {
            while (rows.next()) {
                tables++;
                if (rows.getString(2) == null) {
                    unexplained.add(rows.getString(1));
                }
            }
        }
        assertThat(tables).isPositive();
        assertThat(unexplained).isEmpty();
    }
}
