package org.fusewright.core.words;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The message bundle: complete in each language, and nothing in it that nobody says. */
class BundleTest {
    private static final Pattern QUOTED = Pattern.compile("\"([a-z0-9.-]+)\"");
    private static final Pattern PLURAL = Pattern.compile("(.*)\\.(one|other)");

    /** A bundle would say in English what a language's own file lacks. */
    @ParameterizedTest
    @EnumSource(names = "ENGLISH", mode = EnumSource.Mode.EXCLUDE)
    void hasTheSameTextsInEachLanguage(Language language) throws IOException {
        assertThat(keys("texts_" + language.code())).isEqualTo(keys("texts"));
    }

    private static Set<String> keys(String file) throws IOException {
        Properties texts = new Properties();
        texts.load(
                Files.newBufferedReader(Path.of("src/main/resources/words", file + ".properties")));
        return new TreeSet<>(texts.stringPropertyNames());
    }

    /** Of two texts of one name the first would never be said. */
    @ParameterizedTest
    @ValueSource(strings = {"texts", "texts_de"})
    void holdsEachTextOnce(String file) throws IOException {
        List<String> names =
                Files.readAllLines(Path.of("src/main/resources/words", file + ".properties"))
                        .stream()
                        .filter(line -> !line.isBlank() && !line.startsWith("#"))
                        .map(line -> line.split("=", 2)[0].strip())
                        .toList();

        assertThat(names).doesNotHaveDuplicates();
    }

    @ParameterizedTest
    @EnumSource
    void putsInTheSameValuesInEachLanguage(Language language) {
        assertThat(Language.ENGLISH.keys())
                .allSatisfy(
                        key ->
                                assertThat(slots(language.template(key)))
                                        .as(key)
                                        .isEqualTo(slots(Language.ENGLISH.template(key))));
    }

    /** A key stands in the code as a whole; one of a code stands there up to the code's dot. */
    @Test
    void holdsNoTextThatNobodySays() throws IOException {
        Set<String> named = namedInCode();

        assertThat(Language.ENGLISH.keys())
                .allSatisfy(key -> assertThat(isNamed(key, named)).as(key).isTrue());
    }

    private static boolean isNamed(String key, Set<String> named) {
        Matcher plural = PLURAL.matcher(key);
        String stem = plural.matches() ? plural.group(1) : key;
        return named.contains(stem)
                || named.contains(key)
                || named.contains(stem.substring(0, stem.lastIndexOf('.') + 1));
    }

    private static Set<Integer> slots(Template template) {
        return IntStream.range(0, template.pieces() - 1)
                .mapToObj(template::slotAfter)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static Set<String> namedInCode() throws IOException {
        try (Stream<Path> files =
                Stream.of(Path.of("src/main/java"), Path.of("src/main/jte"))
                        .flatMap(BundleTest::listFiles)) {
            return files.flatMap(file -> listQuoted(file).stream()).collect(Collectors.toSet());
        }
    }

    private static Stream<Path> listFiles(Path folder) {
        try {
            return Files.walk(folder).filter(Files::isRegularFile);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> listQuoted(Path file) {
        try {
            return QUOTED.matcher(Files.readString(file))
                    .results()
                    .map(found -> found.group(1))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
