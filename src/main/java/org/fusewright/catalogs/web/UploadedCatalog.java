package org.fusewright.catalogs.web;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.CatalogRejected;
import org.fusewright.catalogs.load.CatalogFiles;
import org.fusewright.catalogs.load.CatalogReader;
import org.springframework.web.multipart.MultipartFile;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;

/** A catalog that comes as CSV files or as one zip archive of them. */
final class UploadedCatalog {

    private UploadedCatalog() {}

    /**
     * @throws CatalogRejected with every error in the files
     */
    static CatalogContent read(List<MultipartFile> files) {
        // A form sends a nameless empty file when none was chosen.
        List<Upload> uploads =
                files.stream().map(Upload::new).filter(upload -> !upload.name().isEmpty()).toList();
        return CatalogReader.read(
                uploads.size() == 1 && uploads.getFirst().isZip()
                        ? unzip(uploads.getFirst())
                        : CatalogFiles.ofUploads(uploads));
    }

    private static CatalogFiles unzip(Upload archive) {
        try (InputStream stream = archive.open()) {
            return CatalogFiles.ofZip(archive.name(), stream);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private record Upload(MultipartFile file) implements CatalogFiles.Upload {

        @Override
        public String name() {
            String path = String.valueOf(file.getOriginalFilename()).replace('\\', '/');
            return path.substring(path.lastIndexOf('/') + 1);
        }

        @Override
        public InputStream open() throws IOException {
            return file.getInputStream();
        }

        boolean isZip() {
            return name().toLowerCase(Locale.ROOT).endsWith(".zip");
        }
    }
}
