package org.fusewright;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;

import org.fusewright.ModuleBorders.Library;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;

/** The project keeps to its map, and each rule of the map is seen to fail on made-up offenders. */
class ModuleBordersTest {
    private static JavaClasses project;

    @BeforeAll
    static void read() {
        project =
                new ClassFileImporter()
                        .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                        .importPackages("org.fusewright");
    }

    static List<Named<ArchRule>> listRules() {
        return Stream.of(
                        ModuleBorders.everyClassHasAPlace(),
                        ModuleBorders.placesUseOnlyWhatTheMapAllows(),
                        ModuleBorders.placesUseOnlyTheirLibraries(),
                        ModuleBorders.coreIsPlainJava(),
                        ModuleBorders.coreTakesTimeAndChanceAsParameters())
                .map(rule -> Named.of(rule.getDescription(), rule))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("listRules")
    void keepsTheBorder(ArchRule rule) {
        rule.check(project);
    }

    /** A rule about a package without classes guards nothing. Add each place once it is built. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "core.quantity",
                "core.check",
                "core.catalog",
                "core.pricing",
                "core.job",
                "core.sizing",
                "core.fitting",
                "core.kit",
                "core.count",
                "core.quote",
                "catalogs",
                "catalogs.store",
                "catalogs.load",
                "jobs",
                "jobs.load",
                "jobs.web",
                "counts",
                "counts.store",
                "counts.load",
                "counts.web",
                "changes",
                "changes.store",
                "changes.web",
                "quotes",
                "quotes.store",
                "quotes.web",
                "papers",
                "web",
                "pages",
                "setup"
            })
    void guardsAPlaceThatHasClasses(String place) {
        assertThat(ModuleBorders.MAP).containsKey(place);
        assertThat(project.stream().flatMap(type -> ModuleBorders.findPlace(type).stream()))
                .contains(place);
    }

    @ParameterizedTest
    @CsvSource({
        "core.quantity, core.check",
        "core.check, core.catalog",
        "core.catalog, core.pricing",
        "core.pricing, core.job",
        "core.job, core.sizing",
        "core.sizing, core.fitting",
        "core.fitting, core.kit",
        "core.kit, jobs",
        "core.kit, papers",
        "catalogs, jobs",
        "catalogs, catalogs.load",
        "catalogs.store, catalogs.web",
        "catalogs.store, catalogs.load",
        "catalogs.load, catalogs.web",
        "jobs, catalogs.store",
        "jobs, jobs.web",
        "jobs, papers",
        "jobs.store, catalogs.store",
        "jobs.load, catalogs.store",
        "jobs.web, jobs.store",
        "jobs.web, catalogs.store",
        "quotes, jobs.store",
        "core.kit, core.count",
        "counts, jobs.store",
        "counts, counts.web",
        "counts.web, counts.store",
        "quotes, quotes.web",
        "quotes, jobs.web",
        "core.quote, quotes",
        "papers, jobs",
        "papers, jobs.store",
        "papers, web",
        "web, jobs",
        "web, setup",
        "pages, jobs.store",
        "setup, jobs.store",
        "jobs, setup",
    })
    void showsNoWay(String from, String to) {
        assertThat(ModuleBorders.mayUse(from, to)).isFalse();
    }

    @ParameterizedTest
    @CsvSource({
        "core.check, core.quantity",
        "core.kit, core.fitting",
        "catalogs, core.catalog",
        "catalogs, catalogs.store",
        "catalogs.load, catalogs.store",
        "jobs, catalogs",
        "jobs.web, jobs",
        "jobs.web, papers",
        "counts, jobs.load",
        "counts, papers",
        "core.count, core.kit",
        "quotes, jobs",
        "quotes, jobs.load",
        "quotes, papers",
        "core.quote, core.kit",
        "papers, core.kit",
        "pages, jobs.web",
        "setup, catalogs.load",
    })
    void showsAWay(String from, String to) {
        assertThat(ModuleBorders.mayUse(from, to)).isTrue();
    }

    @Test
    void rejectsEveryWayThatTheMapDoesNotShow(@TempDir Path folder) throws IOException {
        Offenders offenders = new Offenders(folder);
        List<String> places = List.copyOf(ModuleBorders.MAP.keySet());
        for (String place : places) {
            offenders.add(place, "Thing", "");
        }
        for (int from = 0; from < places.size(); from++) {
            for (int to = 0; to < places.size(); to++) {
                offenders.add(
                        places.get(from),
                        "Uses" + to,
                        "org.fusewright." + places.get(to) + ".Thing thing;",
                        ModuleBorders.mayUse(places.get(from), places.get(to)));
            }
        }
        offenders.expectCaughtBy(ModuleBorders.placesUseOnlyWhatTheMapAllows());
    }

    @Test
    void rejectsLibrariesThatAreNotTheBusinessOfAPlace(@TempDir Path folder) throws IOException {
        Offenders offenders = new Offenders(folder);
        for (String place : ModuleBorders.MAP.keySet()) {
            for (Library library : Library.values()) {
                offenders.add(
                        place,
                        "Knows" + library.ordinal(),
                        exampleOf(library) + " thing;",
                        library.isFor(place));
            }
        }
        offenders.expectCaughtBy(ModuleBorders.placesUseOnlyTheirLibraries());
    }

    private static String exampleOf(Library library) {
        return switch (library) {
            case DATABASE -> "java.sql.Connection";
            case REQUESTS -> "jakarta.servlet.http.HttpServletRequest";
            case LOG_IN -> "org.springframework.security.core.Authentication";
            case TEMPLATES -> "gg.jte.TemplateEngine";
            case PDF -> "org.openpdf.text.Document";
            case BAR_CODES -> "uk.org.okapibarcode.backend.Code128";
            case EMBEDDED_POSTGRESQL -> "io.zonky.test.db.postgres.embedded.EmbeddedPostgres";
        };
    }

    @Test
    void rejectsEveryLibraryButPlainJavaInTheCore(@TempDir Path folder) throws IOException {
        Offenders offenders = new Offenders(folder);
        for (String place : ModuleBorders.CORE) {
            offenders.add(place, "Plain", "java.util.List<org.joda.money.Money> prices;");
            offenders.add(place, "Springy", "org.springframework.util.StringUtils t;", false);
            offenders.add(place, "Reading", "java.nio.file.Path file;", false);
            offenders.add(place, "Logging", "org.slf4j.Logger log;", false);
            offenders.add(place, "Wired", "java.net.URI address;", false);
        }
        offenders.expectCaughtBy(ModuleBorders.coreIsPlainJava());
    }

    @Test
    void rejectsTimeChanceAndSettingsInTheCore(@TempDir Path folder) throws IOException {
        Offenders offenders = new Offenders(folder);
        for (String place : ModuleBorders.CORE) {
            offenders.add(place, "Still", "Object a = java.time.Instant.ofEpochSecond(1);");
            offenders.add(place, "Instant", "Object a = java.time.Instant.now();", false);
            offenders.add(place, "Nano", "long a = System.nanoTime();", false);
            offenders.add(place, "Setting", "Object a = System.getenv(\"A\");", false);
            offenders.add(place, "Dice", "Object a = new java.util.Random();", false);
            offenders.add(place, "Place", "Object a = java.util.Locale.getDefault();", false);
        }
        offenders.expectCaughtBy(ModuleBorders.coreTakesTimeAndChanceAsParameters());
    }

    @Test
    void rejectsPackagesThatAreNotOnTheMap(@TempDir Path folder) throws IOException {
        Offenders offenders = new Offenders(folder);
        offenders.add("core.job", "Thing", "");
        offenders.add("pages.jobs", "Thing", "");
        offenders.add("util", "Thing", "", false);
        offenders.add("core", "Thing", "", false);
        offenders.add("core.job.impl", "Thing", "", false);
        offenders.add("jobs.model", "Thing", "", false);
        offenders.expectCaughtBy(ModuleBorders.everyClassHasAPlace());
    }

    /** Made-up classes at places of the map, some of which do what a rule forbids there. */
    private static final class Offenders {
        private final Path folder;
        private final List<String> files = new ArrayList<>();
        private final List<String> offending = new ArrayList<>();

        private Offenders(Path folder) {
            this.folder = folder;
        }

        private void add(String place, String name, String member) throws IOException {
            add(place, name, member, true);
        }

        private void add(String place, String name, String member, boolean allowed)
                throws IOException {
            String home = "org.fusewright." + place;
            Path file = folder.resolve(home.replace('.', '/')).resolve(name + ".java");
            Files.createDirectories(file.getParent());
            // Public, so that every other place can name it: only the map forbids that.
            Files.writeString(
                    file, "package %s; public class %s { %s }".formatted(home, name, member));
            files.add(file.toString());
            if (!allowed) {
                offending.add(home + "." + name);
            }
        }

        private void expectCaughtBy(ArchRule rule) {
            JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
            List<String> arguments =
                    new ArrayList<>(List.of("-classpath", System.getProperty("java.class.path")));
            arguments.addAll(List.of("-proc:none", "-nowarn", "-d", folder.toString()));
            arguments.addAll(files);
            assertThat(compiler.run(null, null, null, arguments.toArray(String[]::new))).isZero();

            Set<String> caught =
                    rule
                            .evaluate(new ClassFileImporter().importPath(folder))
                            .getFailureReport()
                            .getDetails()
                            .stream()
                            .map(detail -> detail.substring(0, detail.indexOf(' ')))
                            .collect(Collectors.toSet());
            assertThat(offending).isNotEmpty();
            assertThat(caught).containsExactlyInAnyOrderElementsOf(offending);
        }
    }
}
