package org.fusewright.catalogs.load;

import org.fusewright.catalogs.CatalogError;
import org.fusewright.catalogs.CatalogRejected;
import org.fusewright.core.words.Phrase;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/**
 * The CSV files of one catalog by name, wherever they came from. Other files (a note to read, jobs)
 * are passed over.
 */
public final class CatalogFiles {

    /** A file may hold so many bytes: room for some hundred thousand offers. */
    public static final int MAX_FILE_BYTES = 64 << 20;

    private static final int MAX_ALL_BYTES = 128 << 20;
    private static final int MAX_ZIP_ENTRIES = 1_000;

    private final SortedMap<String, byte[]> contents = new TreeMap<>();
    private final List<CatalogError> errors = new ArrayList<>();
    private int allBytes;

    private CatalogFiles() {}

    /**
     * The CSV files directly inside a folder.
     *
     * @throws CatalogRejected when there is no such folder, or a file is too large
     * @throws UncheckedIOException when a file cannot be read
     */
    public static CatalogFiles ofFolder(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new CatalogRejected(List.of(error(folder.toString(), "catalog.no-folder")));
        }
        CatalogFiles files = new CatalogFiles();
        try (Stream<Path> entries = Files.list(folder)) {
            for (Path entry : entries.filter(entry -> isCsv(entry.toString())).sorted().toList()) {
                try (InputStream stream = Files.newInputStream(entry)) {
                    files.put(entry.getFileName().toString(), stream);
                }
            }
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
        return files.checked();
    }

    /**
     * The CSV files of a zip archive, in whichever of its folders.
     *
     * @throws CatalogRejected when it is no zip archive, or a file is too large or there twice
     */
    public static CatalogFiles ofZip(String name, InputStream archive) {
        CatalogFiles files = new CatalogFiles();
        int entries = 0;
        try (ZipInputStream zip = new ZipInputStream(archive, StandardCharsets.UTF_8)) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (++entries > MAX_ZIP_ENTRIES) {
                    files.reject(name, "catalog.zip-too-many");
                    break;
                }
                String path = entry.getName().replace('\\', '/');
                String file = path.substring(path.lastIndexOf('/') + 1);
                if (!entry.isDirectory() && isCsv(file)) {
                    files.put(file, zip);
                }
            }
        } catch (IOException | IllegalArgumentException broken) {
            files.reject(name, "catalog.no-zip");
        }
        if (entries == 0 && files.errors.isEmpty()) {
            files.reject(name, "catalog.no-zip");
        }
        return files.checked();
    }

    /**
     * Files one by one, as a form uploads them.
     *
     * @throws CatalogRejected when a file is too large or there twice
     */
    public static CatalogFiles ofUploads(List<? extends Upload> uploads) {
        CatalogFiles files = new CatalogFiles();
        for (Upload upload : uploads) {
            try (InputStream stream = upload.open()) {
                files.put(upload.name(), stream);
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        }
        return files.checked();
    }

    /** A file that is still to be read. */
    public interface Upload {

        String name();

        InputStream open() throws IOException;
    }

    Optional<byte[]> findContent(String file) {
        return Optional.ofNullable(contents.get(file));
    }

    /** The names of all files, sorted. */
    List<String> listNames() {
        return List.copyOf(Collections.unmodifiableSet(contents.keySet()));
    }

    private void put(String name, InputStream stream) throws IOException {
        byte[] bytes = stream.readNBytes(MAX_FILE_BYTES + 1);
        allBytes += bytes.length;
        if (allBytes > MAX_ALL_BYTES) {
            reject(name, "catalog.all-too-large");
            throw new CatalogRejected(errors);
        }
        if (bytes.length > MAX_FILE_BYTES) {
            reject(name, "catalog.file-too-large");
        } else if (contents.put(name, bytes) != null) {
            reject(name, "catalog.file-twice");
        }
    }

    private void reject(String file, String key) {
        errors.add(error(file, key));
    }

    private static CatalogError error(String file, String key) {
        return new CatalogError(file, 0, "", "", Phrase.of(key));
    }

    private CatalogFiles checked() {
        if (!errors.isEmpty()) {
            throw new CatalogRejected(errors);
        }
        return this;
    }

    private static boolean isCsv(String file) {
        return file.toLowerCase(Locale.ROOT).endsWith(".csv");
    }
}
