package org.fusewright.jobs.load;

import org.fusewright.jobs.Jobs;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * Gives a new shop the invented sample jobs, before the first request is answered. They come from
 * the folder {@code jobs} below {@code fusewright.sample}; where there is none, from those built
 * into the program.
 */
@Component
class SampleJobs implements SmartInitializingSingleton {
    private static final Logger log = LoggerFactory.getLogger(SampleJobs.class);
    private static final String BUILT_IN = "classpath:/catalog-sample/jobs/*.json";

    private final Jobs jobs;
    private final TransactionOperations transaction;
    private final Path folder;

    SampleJobs(
            Jobs jobs,
            TransactionOperations transaction,
            @Value("${fusewright.sample:catalog-sample}") Path folder) {
        this.jobs = jobs;
        this.transaction = transaction;
        this.folder = folder.resolve("jobs");
    }

    @Override
    public void afterSingletonsInstantiated() {
        if (jobs.isEverUsed()) {
            return;
        }
        try {
            List<byte[]> documents = Files.isDirectory(folder) ? inFolder(folder) : builtIn();
            transaction.executeWithoutResult(
                    status -> documents.forEach(json -> jobs.create(JobReader.read(json))));
            log.info("{} sample jobs are loaded", documents.size());
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static List<byte[]> inFolder(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            List<byte[]> documents = new ArrayList<>();
            // The newest job stands first in lists, so the last of these does.
            for (Path file :
                    files.filter(path -> path.toString().endsWith(".json"))
                            .sorted(Comparator.reverseOrder())
                            .toList()) {
                documents.add(Files.readAllBytes(file));
            }
            return documents;
        }
    }

    private static List<byte[]> builtIn() throws IOException {
        List<byte[]> documents = new ArrayList<>();
        Resource[] files = new PathMatchingResourcePatternResolver().getResources(BUILT_IN);
        for (Resource file :
                Stream.of(files)
                        .sorted(
                                Comparator.comparing(
                                        Resource::getFilename, Comparator.reverseOrder()))
                        .toList()) {
            documents.add(file.getContentAsByteArray());
        }
        return documents;
    }
}
