package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The list of published tables in {@code src/docs/sizing.md} names the tests that read them. */
class FactsDocumentTest {

    private static final Pattern LIST =
            Pattern.compile("<!-- facts -->\n(.*?)<!-- end -->", Pattern.DOTALL);
    private static final Pattern NAME = Pattern.compile("`(\\w+)`");

    @Test
    void listsWhichTestsReadWhichTable() throws IOException {
        assertThat(listed()).isEqualTo(read());
    }

    private static Map<String, Set<String>> listed() throws IOException {
        String document = Files.readString(Path.of("src/docs/sizing.md"));
        String list = LIST.matcher(document).results().findFirst().orElseThrow().group(1);
        Map<String, Set<String>> tests = new TreeMap<>();
        list.lines()
                .filter(line -> line.startsWith("| `"))
                .map(line -> NAME.matcher(line).results().map(name -> name.group(1)).toList())
                .forEach(
                        names ->
                                tests.put(
                                        names.getFirst(),
                                        new TreeSet<>(names.subList(1, names.size()))));
        return tests;
    }

    /** Each file with the tests in whose source it is named as a resource or as a table to read. */
    private static Map<String, Set<String>> read() throws IOException {
        Map<String, Set<String>> tests = new TreeMap<>();
        for (Path file : files("src/test/resources/facts", ".csv")) {
            tests.put(name(file), new TreeSet<>());
        }
        for (Path source : files("src/test/java", "Test.java")) {
            String code = Files.readString(source);
            tests.forEach(
                    (table, of) -> {
                        if (code.contains("/facts/" + table + ".csv")
                                || code.contains('"' + table + '"')) {
                            of.add(name(source));
                        }
                    });
        }
        return tests;
    }

    private static Set<Path> files(String folder, String ending) throws IOException {
        try (Stream<Path> found = Files.walk(Path.of(folder))) {
            return found.filter(path -> path.toString().endsWith(ending))
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    private static String name(Path file) {
        return file.getFileName().toString().replaceAll("\\..*", "");
    }
}
