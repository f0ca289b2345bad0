package org.fusewright.accounts.web;

import jakarta.servlet.http.HttpServletRequest;

import org.springframework.http.server.PathContainer;
import org.springframework.http.server.RequestPath;
import org.springframework.web.util.ServletRequestPathUtils;
import org.springframework.web.util.pattern.PathPattern;
import org.springframework.web.util.pattern.PathPatternParser;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * To whom each address is open where people log in: the one place that says so. An address that is
 * not named here is closed to all. Patterns stand as at their handlers; {@code GET} is {@code HEAD}
 * too.
 */
final class AccessTable {
    private static final String ANYBODY =
            """
            GET  /actuator/health
            GET  /actuator/health/**
            GET  /error
            GET  /favicon.svg
            GET  /*.css
            GET  /*.js
            GET  /webjars/**
            GET  /log-in
            POST /log-in
            GET  /welcome/{secret}
            POST /welcome/{secret}
            POST /reader
            GET  /shared/{secret}
            GET  /shared/{secret}/quote.pdf
            """;

    private static final String BUILDERS =
            """
            GET  /
            GET  /counts
            POST /counts
            GET  /counts/new
            GET  /counts/{id}
            POST /counts/{id}/delete
            POST /counts/{id}/pieces
            GET  /counts/{id}/record.pdf
            POST /counts/{id}/scans
            POST /counts/{id}/signature
            POST /counts/{id}/substitutes
            POST /counts/{id}/weighings
            POST /counts/{id}/withdrawals
            GET  /jobs
            POST /jobs
            GET  /jobs/{id}
            POST /jobs/{id}
            POST /jobs/{id}/arrangement
            GET  /jobs/{id}/arrangements
            GET  /jobs/{id}/chart
            GET  /jobs/{id}/comparison
            POST /jobs/{id}/delete
            POST /jobs/{id}/drawer
            GET  /jobs/{id}/kit.json
            GET  /jobs/{id}/live
            GET  /jobs/{id}/now
            GET  /jobs/{id}/papers/{name}.pdf
            GET  /jobs/{id}/parts.csv
            GET  /jobs/{id}/proof
            POST /jobs/{id}/read-text
            POST /jobs/{id}/restore
            GET  /jobs/{id}/revisions
            GET  /jobs/{id}/revisions/{revision}
            POST /jobs/{id}/stop
            POST /jobs/{id}/undo
            GET  /jobs/{id}/what-if
            POST /jobs/{id}/what-if
            GET  /jobs/{id}/why
            POST /jobs/{id}/wired
            POST /log-out
            POST /who
            GET  /v3/api-docs
            GET  /v3/api-docs.yaml
            GET  /api/counts
            POST /api/counts
            POST /api/counts/check
            DELETE /api/counts/{id}
            GET  /api/counts/{id}
            POST /api/counts/{id}/pieces
            GET  /api/counts/{id}/record
            POST /api/counts/{id}/scans
            POST /api/counts/{id}/signature
            POST /api/counts/{id}/substitutes
            POST /api/counts/{id}/weighings
            POST /api/counts/{id}/weight-statement
            POST /api/counts/{id}/withdrawals
            GET  /api/jobs
            POST /api/jobs
            DELETE /api/jobs/{id}
            GET  /api/jobs/{id}
            PUT  /api/jobs/{id}
            GET  /api/jobs/{id}/arrangements
            GET  /api/jobs/{id}/comparison
            GET  /api/jobs/{id}/kit
            GET  /api/jobs/{id}/papers/{name}
            GET  /api/jobs/{id}/revisions
            GET  /api/jobs/{id}/revisions/{revision}
            GET  /api/jobs/{id}/revisions/{revision}/kit
            POST /api/jobs/{id}/revisions/{revision}/restore
            POST /api/jobs/{id}/what-if
            POST /api/jobs/{id}/wired
            POST /api/kits
            POST /api/kits/arrangements
            POST /api/kits/papers/{name}
            POST /api/kits/what-if
            GET  /api/schema/job
            """;

    private static final String OWNERS =
            """
            GET  /quotes
            POST /quotes
            GET  /quotes/new
            GET  /quotes/{id}
            POST /quotes/{id}
            POST /quotes/{id}/accept
            POST /quotes/{id}/decline
            POST /quotes/{id}/discard
            POST /quotes/{id}/fulfil
            GET  /quotes/{id}/quote.csv
            GET  /quotes/{id}/quote.pdf
            POST /quotes/{id}/refresh
            POST /quotes/{id}/revise
            POST /quotes/{id}/send
            POST /quotes/{id}/shares
            POST /quotes/{id}/shares/{share}/revoke
            POST /quotes/{id}/take-over
            GET  /api/quotes
            POST /api/quotes
            GET  /api/quotes/{id}
            PUT  /api/quotes/{id}
            DELETE /api/quotes/{id}
            POST /api/quotes/{id}/accept
            POST /api/quotes/{id}/decline
            POST /api/quotes/{id}/fulfil
            POST /api/quotes/{id}/refresh
            POST /api/quotes/{id}/revisions
            GET  /api/quotes/{id}/revisions/{revision}
            POST /api/quotes/{id}/send
            POST /api/quotes/{id}/take-over
            GET  /orders
            POST /orders
            GET  /orders/{id}
            POST /orders/{id}/cancel
            POST /orders/{id}/discard
            GET  /orders/{id}/order.csv
            GET  /orders/{id}/order.pdf
            GET  /orders/{id}/order.xml
            POST /orders/{id}/receive
            POST /orders/{id}/send
            GET  /api/orders
            POST /api/orders
            GET  /api/orders/proposal
            GET  /api/orders/{id}
            DELETE /api/orders/{id}
            POST /api/orders/{id}/cancel
            POST /api/orders/{id}/deliveries
            POST /api/orders/{id}/send
            GET  /catalog
            GET  /catalog/import
            POST /catalog/import
            GET  /catalog/parts/{*number}
            GET  /api/catalog
            POST /api/catalog/import
            GET  /api/catalog/parts
            GET  /api/catalog/parts/{*number}
            GET  /changes
            GET  /changes/{id}
            GET  /api/changes
            GET  /api/changes/{id}
            GET  /actuator/prometheus
            GET  /api/backup
            POST /api/restore
            GET  /people
            POST /people
            POST /people/{id}/active
            POST /people/{id}/link
            POST /people/{id}/role
            """;

    /** One address and to whom it is open. */
    private record Row(PathPattern pattern, Who who) {}

    /** By method; of those that match a path, the one that a handler is picked by comes first. */
    private static final Map<String, List<Row>> ROWS = read();

    private AccessTable() {}

    private static Map<String, List<Row>> read() {
        Map<String, List<Row>> rows = new HashMap<>();
        add(rows, ANYBODY, Who.ANYBODY);
        add(rows, BUILDERS, Who.BUILDERS);
        add(rows, OWNERS, Who.OWNERS);
        rows.values().forEach(own -> own.sort(Comparator.comparing(Row::pattern)));
        return rows;
    }

    private static void add(Map<String, List<Row>> rows, String text, Who who) {
        text.lines()
                .map(line -> line.split(" +"))
                .forEach(
                        words ->
                                rows.computeIfAbsent(words[0], _ -> new ArrayList<>())
                                        .add(
                                                new Row(
                                                        PathPatternParser.defaultInstance.parse(
                                                                words[1]),
                                                        who)));
    }

    /** For a request, by its path. */
    static Optional<Who> find(HttpServletRequest request) {
        RequestPath parsed =
                ServletRequestPathUtils.hasParsedRequestPath(request)
                        ? ServletRequestPathUtils.getParsedRequestPath(request)
                        : ServletRequestPathUtils.parseAndCache(request);
        PathContainer path = parsed.pathWithinApplication();
        return rows(request.getMethod()).stream()
                .filter(row -> row.pattern.matches(path))
                .findFirst()
                .map(Row::who);
    }

    /** For a handler, by its own pattern. */
    static Optional<Who> find(String method, String pattern) {
        return rows(method).stream()
                .filter(row -> row.pattern.getPatternString().equals(pattern))
                .findFirst()
                .map(Row::who);
    }

    private static List<Row> rows(String method) {
        return ROWS.getOrDefault(method.equals("HEAD") ? "GET" : method, List.of());
    }
}
