package org.fusewright;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitCallTarget;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The map of the project as rules: which package may use which other one, and which library.
 *
 * <p>A place is a package below {@code org.fusewright}. Everything not named here is forbidden.
 */
final class ModuleBorders {
    private static final String BASE = "org.fusewright";

    /** The calculation, one street from left to right: each uses only those before it. */
    static final List<String> CORE =
            List.of(
                    "core.quantity",
                    "core.words",
                    "core.formula",
                    "core.check",
                    "core.catalog",
                    "core.pricing",
                    "core.job",
                    "core.sizing",
                    "core.fitting",
                    "core.kit",
                    "core.why",
                    "core.quote",
                    "core.order",
                    "core.count");

    /** The features in the order in which they build on each other. */
    static final List<String> FEATURES =
            List.of(
                    "catalogs",
                    "jobs",
                    "quotes",
                    "orders",
                    "counts",
                    "changes",
                    "backups",
                    "accounts");

    /** The features that keep papers as they went out, and so print those themselves. */
    private static final Set<String> ISSUING = Set.of("quotes", "orders", "counts");

    /** The page templates, as the build turns them into classes. */
    static final String PAGES = "pages";

    /** What may be used by each place, besides itself. */
    static final Map<String, Set<String>> MAP = drawMap();

    private static Map<String, Set<String>> drawMap() {
        Map<String, Set<String>> map = new LinkedHashMap<>();
        for (String part : CORE) {
            map.put(part, Set.copyOf(before(part, CORE)));
        }
        List<String> featureWebs = new ArrayList<>();
        List<String> featureLoads = new ArrayList<>();
        for (String face : FEATURES) {
            List<String> others = before(face, FEATURES);
            String store = face + ".store";
            String load = face + ".load";
            String web = face + ".web";
            List<String> usable = new ArrayList<>(concat(others, featureLoads));
            if (ISSUING.contains(face)) {
                usable.add("papers");
            }
            map.put(face, union(CORE, usable, store));
            map.put(store, union(CORE, List.of(face)));
            map.put(load, union(CORE, others, face, store));
            map.put(web, union(CORE, others, face, load, "papers", "web"));
            featureWebs.add(web);
            featureLoads.add(load);
        }
        map.put("papers", Set.copyOf(CORE));
        map.put("web", Set.copyOf(CORE));
        map.put(PAGES, union(CORE, concat(FEATURES, featureWebs), "web"));
        map.put("setup", union(CORE, concat(FEATURES, featureLoads), "papers", "web"));
        return map;
    }

    private static List<String> before(String place, List<String> street) {
        return street.subList(0, street.indexOf(place));
    }

    private static List<String> concat(List<String> first, List<String> second) {
        return Stream.of(first, second).flatMap(List::stream).toList();
    }

    private static Set<String> union(List<String> street, List<String> others, String... more) {
        return Stream.of(street, others, List.of(more))
                .flatMap(List::stream)
                .collect(Collectors.toUnmodifiableSet());
    }

    /** Libraries that are the business of some places only. */
    enum Library {
        DATABASE(
                "java.sql",
                "javax.sql",
                "jakarta.persistence",
                "org.hibernate",
                "org.springframework.data",
                "org.springframework.jdbc",
                "org.springframework.boot.jdbc",
                "org.postgresql",
                "org.flywaydb"),
        REQUESTS("jakarta.servlet", "org.springframework.web", "org.springframework.http"),
        LOG_IN("org.springframework.security", "org.springframework.session"),
        TEMPLATES("gg.jte"),
        PDF("org.openpdf"),
        BAR_CODES("uk.org.okapibarcode"),
        EMBEDDED_POSTGRESQL("io.zonky");

        private final List<String> packages;

        Library(String... packages) {
            this.packages = List.of(packages);
        }

        private boolean holds(JavaClass type) {
            return isWithin(type.getPackageName(), packages);
        }

        boolean isFor(String place) {
            return switch (this) {
                case DATABASE -> place.endsWith(".store") || place.equals("setup");
                case REQUESTS ->
                        place.equals("web")
                                || place.endsWith(".web")
                                || place.equals(PAGES)
                                || place.equals("setup");
                case LOG_IN -> place.equals("accounts") || place.equals("accounts.web");
                case TEMPLATES -> place.equals("web") || place.equals(PAGES);
                case PDF, BAR_CODES -> place.equals("papers");
                case EMBEDDED_POSTGRESQL -> place.equals("setup");
            };
        }
    }

    /** What the core is made of; no file, no network, no thread of control but the caller's. */
    private static final List<String> PLAIN_JAVA =
            List.of(
                    "java.lang",
                    "java.math",
                    "java.nio.charset",
                    "java.security",
                    "java.text",
                    "java.time",
                    "java.util",
                    "org.jspecify",
                    "org.joda.money");

    /** Where time, chance and settings come from: the core gets those as parameters. */
    private static final Set<String> OUTSIDE_WORLD =
            Set.of(
                    "java.lang.Math.random",
                    "java.lang.System.currentTimeMillis",
                    "java.lang.System.getProperty",
                    "java.lang.System.getenv",
                    "java.lang.System.nanoTime",
                    "java.util.Locale.getDefault",
                    "java.util.UUID.randomUUID",
                    "java.security.SecureRandom.<init>",
                    "java.util.Random.<init>",
                    "java.util.concurrent.ThreadLocalRandom.current");

    private ModuleBorders() {}

    static ArchRule everyClassHasAPlace() {
        return classes()
                .should(
                        new ArchCondition<>("be at a place of the map") {
                            @Override
                            public void check(JavaClass type, ConditionEvents events) {
                                if (findPlace(type).isEmpty()) {
                                    violated(events, type, "is at no place of the map");
                                }
                            }
                        });
    }

    static ArchRule placesUseOnlyWhatTheMapAllows() {
        return classes()
                .should(
                        use(
                                "only the places that the map allows",
                                (place, target) ->
                                        findPlace(target)
                                                .map(used -> mayUse(place, used))
                                                .orElse(true)));
    }

    static boolean mayUse(String place, String used) {
        return place.equals(used)
                || Optional.ofNullable(MAP.get(place)).orElse(Set.of()).contains(used);
    }

    static ArchRule placesUseOnlyTheirLibraries() {
        return classes()
                .should(
                        use(
                                "only libraries that are their business",
                                (place, target) ->
                                        Stream.of(Library.values())
                                                .filter(library -> library.holds(target))
                                                .allMatch(library -> library.isFor(place))));
    }

    static ArchRule coreIsPlainJava() {
        return classes()
                .should(
                        use(
                                "plain Java in the core",
                                (place, target) ->
                                        !CORE.contains(place)
                                                || findPlace(target).isPresent()
                                                || isWithin(target.getPackageName(), PLAIN_JAVA)));
    }

    static ArchRule coreTakesTimeAndChanceAsParameters() {
        return classes()
                .should(
                        new ArchCondition<>("not ask for time, chance or settings in the core") {
                            @Override
                            public void check(JavaClass type, ConditionEvents events) {
                                if (findPlace(type).filter(CORE::contains).isPresent()) {
                                    type.getCodeUnitCallsFromSelf().stream()
                                            .filter(call -> asksOutside(call.getTarget()))
                                            .forEach(
                                                    call ->
                                                            violated(
                                                                    events,
                                                                    type,
                                                                    call.getDescription()));
                                }
                            }
                        });
    }

    private static boolean asksOutside(CodeUnitCallTarget target) {
        String owner = target.getOwner().getName();
        boolean readsTheClock = owner.startsWith("java.time.") && target.getName().equals("now");
        return readsTheClock || OUTSIDE_WORLD.contains(owner + "." + target.getName());
    }

    /** The place of a class of the project, empty for others and where the map shows none. */
    static Optional<String> findPlace(JavaClass type) {
        String folder = type.getPackageName();
        if (folder.equals(BASE)) {
            return Optional.of("");
        }
        if (isWithin(folder, List.of(BASE + "." + PAGES))) {
            return Optional.of(PAGES);
        }
        return MAP.keySet().stream().filter(place -> folder.equals(BASE + "." + place)).findAny();
    }

    private static boolean isWithin(String folder, List<String> parents) {
        return parents.stream()
                .anyMatch(parent -> folder.equals(parent) || folder.startsWith(parent + "."));
    }

    private static ArchCondition<JavaClass> use(
            String description, BiPredicate<String, JavaClass> allowed) {
        return new ArchCondition<>("use " + description) {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                findPlace(type).ifPresent(place -> checkTargets(place, type, events));
            }

            private void checkTargets(String place, JavaClass type, ConditionEvents events) {
                List<String> refused = new ArrayList<>();
                type.getDirectDependenciesFromSelf().stream()
                        .map(dependency -> dependency.getTargetClass().getBaseComponentType())
                        .filter(target -> !target.isPrimitive() && !allowed.test(place, target))
                        .map(JavaClass::getName)
                        .distinct()
                        .forEach(refused::add);
                if (!refused.isEmpty()) {
                    violated(events, type, "uses " + String.join(", ", refused));
                }
            }
        };
    }

    private static void violated(ConditionEvents events, JavaClass type, String what) {
        events.add(SimpleConditionEvent.violated(type, type.getName() + " " + what));
    }
}
