package org.fusewright.catalogs.load;

import org.fusewright.catalogs.CatalogImport;
import org.fusewright.catalogs.Catalogs;
import org.fusewright.catalogs.StaleCatalog;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.stereotype.Component;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Gives a new shop the invented sample catalog, before the first request is answered. The files
 * come from the folder {@code fusewright.sample}; where there is none, from those built into the
 * program.
 */
@Component
class SampleCatalog implements SmartInitializingSingleton {

    private static final Logger log = LoggerFactory.getLogger(SampleCatalog.class);
    private static final String BUILT_IN = "classpath:/catalog-sample/*.csv";

    private final Catalogs catalogs;
    private final Path folder;

    SampleCatalog(Catalogs catalogs, @Value("${fusewright.sample:catalog-sample}") Path folder) {
        this.catalogs = catalogs;
        this.folder = folder;
    }

    @Override
    public void afterSingletonsInstantiated() {
        if (catalogs.findContent().isPresent()) {
            return;
        }
        try {
            CatalogImport sample =
                    catalogs.importCatalog(CatalogReader.read(files()), Optional.empty());
            log.info("The sample catalog is loaded, version {}", sample.version());
        } catch (StaleCatalog anotherServiceWasFirst) {
            log.debug("Another service has loaded a catalog", anotherServiceWasFirst);
        }
    }

    private CatalogFiles files() {
        return Files.isDirectory(folder) ? CatalogFiles.ofFolder(folder) : builtIn();
    }

    static CatalogFiles builtIn() {
        try {
            Resource[] files = new PathMatchingResourcePatternResolver().getResources(BUILT_IN);
            List<BuiltIn> uploads = Arrays.stream(files).map(BuiltIn::new).toList();
            return CatalogFiles.ofUploads(uploads);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private record BuiltIn(Resource file) implements CatalogFiles.Upload {

        @Override
        public String name() {
            return String.valueOf(file.getFilename());
        }

        @Override
        public InputStream open() throws IOException {
            return file.getInputStream();
        }
    }
}
