package org.fusewright.core.kit;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.job.BlockPlace;
import org.fusewright.core.job.Job;
import org.fusewright.jobs.load.JobReader;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;

class FingerprintTest {
    /** A job with something in every field. */
    private static final String JOB =
            """
            {"reference": "R", "title": "T", "customer": "C", "currency": "EUR",
             "supply": {"nominalV": 12, "engineOffV": 12.2, "chargingV": 14.2,
                        "batteryResistanceMilliohm": 12, "chargingOutputA": 25,
                        "idleOutputA": 9},
             "surroundings": {"ambientC": 40, "blockAmbientC": 50, "bundledLeads": 5},
             "feeds": [{"id": "f", "terminal": "30", "lengthM": 0.6, "sourceDistanceM": 0.15,
                        "diversity": 0.8, "ratingA": 30, "gauge": "4 mm2"}],
             "circuits": [
               {"id": "own", "feed": "f", "runM": 1,
                "loads": [{"kind": "led", "amps": 1}]},
               {"id": "c", "title": "Pump", "feed": "f", "essential": true, "runM": 1.1,
                "returnPath": "wire", "colour": "VT", "devices": ["fuse", "auto-reset"],
                "ratingA": 10, "gauge": "1.5 mm2", "maxDropPercent": 4,
                "relay": {"triggerFrom": "f", "triggerM": 0.8, "groundM": 0.3,
                          "contactFrom": "own",
                          "place": {"block": "B1", "part": "P", "position": 3, "fixed": false}},
                "loads": [{"title": "L", "kind": "pump", "amps": 5.2, "ratedV": 13.5, "count": 2,
                           "inrush": {"multiple": 3, "ms": 20}, "duty": "momentary",
                           "branchM": 0.2}]}],
             "locations": [{"name": "main", "fromFeedM": 0.4}],
             "choices": {"devices": ["fuse"], "wireFamily": "W", "lockingWedge": true,
                         "plugEmptyCavities": true, "sparePositions": 1, "spareFusesPerRating": 1,
                         "slackPercent": 5, "endAllowanceMm": 40, "cutStepMm": 10,
                         "pigtailMm": 310, "jumperMm": 120, "arrangement": "coolest"}}
            """;

    private static final Catalog CATALOG = Catalog.of("one", List.of(), List.of());

    private static Job job() {
        Job job = JobReader.read(JOB.getBytes(StandardCharsets.UTF_8)).getJob();
        // A circuit that borrows its device has no place for it; here it counts all the same.
        BlockPlace place = job.circuits().getLast().relay().orElseThrow().place().orElseThrow();
        return job.withCircuits(
                List.of(
                        job.circuits().getFirst(),
                        job.circuits().getLast().withPlace(Optional.of(place))));
    }

    @Test
    void isEqualForEqualJobAndCatalog() {
        assertThat(Fingerprint.of(job(), CATALOG))
                .isEqualTo(Fingerprint.of(job(), CATALOG))
                .matches("[0-9a-f]{64}");
    }

    @Test
    void changesWithTheCatalog() {
        assertThat(Fingerprint.of(job(), Catalog.of("two", List.of(), List.of())))
                .isNotEqualTo(Fingerprint.of(job(), CATALOG));
    }

    @Test
    void changesWithEveryComponentOfTheJob() {
        List<Job> jobs = new ArrayList<>(List.of(job()));
        changed(job()).map(Job.class::cast).forEach(jobs::add);

        assertThat(jobs).doesNotHaveDuplicates().hasSizeGreaterThan(80);
        assertThat(jobs.stream().map(job -> Fingerprint.of(job, CATALOG))).doesNotHaveDuplicates();
    }

    /** Every value that differs from the given one in a single place. */
    private static Stream<?> changed(Object value) {
        return switch (value) {
            case Record whole -> changed(whole);
            // Halves suit shares as well, which end at 1.
            case Double number -> Stream.of(number / 2);
            case Integer number -> Stream.of(number + 1);
            case Long number -> Stream.of(number + 1);
            case Boolean flag -> Stream.of(!flag);
            // The last two are for terminals and for colours, which do not take any text.
            case String text -> Stream.of(text + "x", "15", "BU");
            case Enum<?> constant ->
                    Stream.of(constant.getDeclaringClass().getEnumConstants())
                            .filter(other -> other != constant);
            case CurrencyUnit currency -> Stream.of(CurrencyUnit.USD);
            case OptionalInt given ->
                    Stream.of(OptionalInt.empty(), OptionalInt.of(given.getAsInt() + 1));
            case OptionalDouble given ->
                    Stream.of(OptionalDouble.empty(), OptionalDouble.of(given.getAsDouble() + 1));
            case Optional<?> given ->
                    Stream.concat(
                            Stream.of(Optional.empty()),
                            changed(given.orElseThrow()).map(Optional::of));
            case List<?> list -> changed(list);
            default -> throw new AssertionError("no way to change a " + value.getClass());
        };
    }

    private static Stream<?> changed(List<?> list) {
        List<List<?>> lists = new ArrayList<>();
        lists.add(list.subList(0, list.size() - 1));
        changed(list.getLast())
                .forEach(
                        last -> {
                            List<Object> others = new ArrayList<>(list);
                            others.set(list.size() - 1, last);
                            lists.add(others);
                        });
        return lists.stream();
    }

    /** Values that a record does not take are left out. */
    private static Stream<?> changed(Record whole) {
        RecordComponent[] components = whole.getClass().getRecordComponents();
        List<Object> wholes = new ArrayList<>();
        for (int i = 0; i < components.length; i++) {
            int at = i;
            changed(valueOf(whole, components[i]))
                    .forEach(value -> with(whole, at, value).ifPresent(wholes::add));
        }
        return wholes.stream();
    }

    private static Optional<Object> with(Record whole, int changedAt, Object value) {
        RecordComponent[] components = whole.getClass().getRecordComponents();
        Class<?>[] types = new Class<?>[components.length];
        Object[] values = new Object[components.length];
        for (int i = 0; i < components.length; i++) {
            types[i] = components[i].getType();
            values[i] = i == changedAt ? value : valueOf(whole, components[i]);
        }
        try {
            return Optional.of(whole.getClass().getDeclaredConstructor(types).newInstance(values));
        } catch (InvocationTargetException notTaken) {
            return Optional.empty();
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(e);
        }
    }

    private static Object valueOf(Record whole, RecordComponent component) {
        try {
            return component.getAccessor().invoke(whole);
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(e);
        }
    }
}
