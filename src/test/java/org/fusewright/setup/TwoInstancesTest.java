package org.fusewright.setup;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.Shop;
import org.fusewright.Shop.Answer;
import org.fusewright.SmallJob;
import org.fusewright.TestDatabase;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;

import tools.jackson.databind.JsonNode;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/** Two services on one database, asked in turn, as behind a plain round-robin. */
class TwoInstancesTest {
    private static final int PEOPLE = 6;
    private static final int EDITS = 10;
    private static final AtomicInteger TURN = new AtomicInteger();
    private static List<Shop> instances;

    @BeforeAll
    static void start() {
        ApplicationContextInitializer<ConfigurableApplicationContext> database =
                TestDatabase.newOne("fusewright_two");
        instances = List.of(Shop.open(database), Shop.open(database));
    }

    @AfterAll
    static void stop() {
        instances.forEach(Shop::close);
    }

    private static Shop next() {
        return instances.get(Math.floorMod(TURN.getAndIncrement(), instances.size()));
    }

    private static <T> List<T> atOnce(List<Callable<T>> tasks)
            throws InterruptedException, ExecutionException {
        try (ExecutorService people = Executors.newFixedThreadPool(tasks.size())) {
            List<T> results = new ArrayList<>();
            for (Future<T> done : people.invokeAll(tasks)) {
                results.add(done.get());
            }
            return results;
        }
    }

    @Test
    void losesNoUpdate() throws InterruptedException, ExecutionException {
        String job =
                next().post("/api/jobs", "", Shop.JSON, SmallJob.document("TWO-1", "new"))
                        .location();
        Queue<String> kept = new ConcurrentLinkedQueue<>();
        List<Callable<Void>> tasks = new ArrayList<>();
        for (int i = 0; i < PEOPLE; i++) {
            String person = "person " + i;
            tasks.add(
                    () -> {
                        for (int edit = 0; edit < EDITS; edit++) {
                            kept.add(edit(job, person + ", edit " + edit));
                        }
                        return null;
                    });
        }
        atOnce(tasks);
        JsonNode revisions = next().get(job + "/revisions", Shop.JSON).json();
        assertThat(revisions.size()).isEqualTo(1 + PEOPLE * EDITS);
        Set<String> titles = new TreeSet<>();
        revisions.forEach(revision -> titles.add(revision.at("/document/title").asString()));
        assertThat(titles).containsAll(kept);
    }

    /** As one who reads, changes, and begins anew when somebody else was quicker. */
    private static String edit(String job, String title) {
        while (true) {
            Answer seen = next().get(job, Shop.JSON);
            Answer changed =
                    next().send(
                                    "PUT",
                                    job,
                                    Shop.JSON,
                                    seen.etag(),
                                    Shop.JSON,
                                    SmallJob.document("TWO-1", title)
                                            .getBytes(StandardCharsets.UTF_8));
            if (changed.status() == 200) {
                return title;
            }
            assertThat(changed.status()).isEqualTo(412);
        }
    }

    @Test
    void ordersNothingTwiceAndReceivesNothingTwice()
            throws InterruptedException, ExecutionException {
        String job =
                next().post("/api/jobs", "", Shop.JSON, SmallJob.document("TWO-2", "order"))
                        .location();
        Answer quote =
                next().post(
                                "/api/quotes",
                                "",
                                Shop.JSON,
                                """
                                {"job": %s, "kits": 40, "variants": ["fuses"],
                                 "customerKind": "private"}
                                """
                                        .formatted(job.substring(job.lastIndexOf('/') + 1)));
        Answer sent = next().post(quote.location() + "/send", quote.etag(), "", "");
        assertThat(sent.status()).as(sent.text()).isEqualTo(200);
        Answer accepted =
                next().post(
                                quote.location() + "/accept",
                                sent.etag(),
                                Shop.JSON,
                                "{\"variant\": \"fuses\"}");
        assertThat(accepted.status()).isEqualTo(200);

        Answer proposal = next().get("/api/orders/proposal?currency=EUR", Shop.JSON);
        List<Answer> made =
                allAtOnce(
                        () ->
                                next().post(
                                                "/api/orders",
                                                proposal.etag(),
                                                Shop.JSON,
                                                "{\"currency\": \"EUR\"}"));
        assertThat(made).extracting(Answer::status).containsOnlyOnce(201).containsOnly(201, 412);

        Answer one = made.stream().filter(each -> each.status() == 201).findFirst().orElseThrow();
        String order = "/api/orders/" + one.json().at("/0/id").asString();
        Answer draft = next().get(order, Shop.JSON);
        Answer ordered = next().post(order + "/send", draft.etag(), "", "");
        JsonNode line = ordered.json().at("/order/lines/0");
        if (line.isMissingNode()) {
            line = ordered.json().at("/lines/0");
        }
        String note =
                """
                {"note": "DN-1", "lines": [{"part": "%s", "quantity": %d}]}
                """
                        .formatted(line.get("part").asString(), line.get("quantity").intValue());
        List<Answer> received =
                allAtOnce(
                        () -> next().post(order + "/deliveries", ordered.etag(), Shop.JSON, note));
        // The same note again is answered as it was booked.
        assertThat(received).extracting(Answer::status).containsOnly(200);
        assertThat(next().get(order, Shop.JSON).json().at("/deliveries").size()).isEqualTo(1);
        assertThat(received.stream().map(each -> each.json().at("/lines/0/received").doubleValue()))
                .containsOnly(line.get("quantity").doubleValue());
    }

    private static List<Answer> allAtOnce(Callable<Answer> task)
            throws InterruptedException, ExecutionException {
        List<Callable<Answer>> tasks = new ArrayList<>();
        for (int i = 0; i < PEOPLE; i++) {
            tasks.add(task);
        }
        return atOnce(tasks);
    }
}
