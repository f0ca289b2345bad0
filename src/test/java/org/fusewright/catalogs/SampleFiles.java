package org.fusewright.catalogs;

import org.fusewright.catalogs.load.CatalogFiles;
import org.fusewright.catalogs.load.CatalogReader;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The sample's files as text, to be spoiled at will. */
public final class SampleFiles {

    private final Map<String, String> texts = new TreeMap<>();

    public SampleFiles() {
        try (Stream<Path> entries = Files.list(Path.of("catalog-sample"))) {
            for (Path entry : entries.filter(e -> e.toString().endsWith(".csv")).toList()) {
                texts.put(entry.getFileName().toString(), Files.readString(entry));
            }
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    public Map<String, String> texts() {
        return texts;
    }

    /** Writes {@code other} for the first {@code written}, which must be there. */
    public SampleFiles replaceFirst(String file, String written, String other) {
        String text = texts.get(file);
        int at = text.indexOf(written);
        if (at < 0) {
            throw new AssertionError(file + " does not hold " + written);
        }
        texts.put(file, text.substring(0, at) + other + text.substring(at + written.length()));
        return this;
    }

    public Map<String, byte[]> bytes() {
        Map<String, byte[]> bytes = new TreeMap<>();
        texts.forEach((name, text) -> bytes.put(name, text.getBytes(StandardCharsets.UTF_8)));
        return bytes;
    }

    public CatalogContent read() {
        return read(bytes());
    }

    public static CatalogContent read(Map<String, byte[]> files) {
        List<Upload> uploads =
                files.entrySet().stream()
                        .map(file -> new Upload(file.getKey(), file.getValue()))
                        .toList();
        return CatalogReader.read(CatalogFiles.ofUploads(uploads));
    }

    private record Upload(String name, byte[] bytes) implements CatalogFiles.Upload {

        @Override
        public InputStream open() {
            return new ByteArrayInputStream(bytes);
        }
    }
}
