package org.fusewright.backups;

import org.fusewright.backups.store.BackupReader;
import org.fusewright.backups.store.BackupWriter;
import org.fusewright.core.words.Phrase;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Service;
import org.springframework.util.StreamUtils;
import org.springframework.util.unit.DataSize;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.locks.ReentrantLock;

/** Takes all that the service keeps into one file and back, while the service runs. */
@Service
public class Backups {
    private final BackupWriter writer;
    private final BackupReader reader;
    private final DataSize largest;
    private final ReentrantLock restoring = new ReentrantLock();

    Backups(
            BackupWriter writer,
            BackupReader reader,
            @Value("${fusewright.largest-backup}") DataSize largest) {
        this.writer = writer;
        this.reader = reader;
        this.largest = largest;
    }

    /** Writes everything as it is at this moment; whoever works meanwhile is not held up. */
    public void write(OutputStream file) throws IOException {
        writer.write(file, Instant.now());
    }

    /**
     * Puts everything in place of what there is, all of it or nothing. What there was stays in a
     * schema of its own until the next restore.
     *
     * @param by who asks for it
     * @throws UnusableBackupException when the file is no whole backup, of a newer program, or
     *     larger than any may be
     */
    public Restored restore(InputStream file, String by) throws IOException {
        Path kept = Files.createTempFile("fusewright-restore", ".zip");
        restoring.lock();
        try {
            keep(file, kept);
            return reader.restore(kept, by, Instant.now());
        } finally {
            restoring.unlock();
            Files.delete(kept);
        }
    }

    private void keep(InputStream file, Path kept) throws IOException {
        try (OutputStream out = Files.newOutputStream(kept)) {
            StreamUtils.copyRange(file, out, 0, largest.toBytes() - 1);
        }
        if (file.read() >= 0) {
            throw new UnusableBackupException(
                    Phrase.of("restore.too-large", largest.toMegabytes()));
        }
    }
}
