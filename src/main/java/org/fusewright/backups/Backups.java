package org.fusewright.backups;

import org.fusewright.backups.store.BackupReader;
import org.fusewright.backups.store.BackupWriter;
import org.springframework.stereotype.Service;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.concurrent.locks.ReentrantLock;

/** Takes all that the service keeps into one file and back, while the service runs. */
@Service
public class Backups {
    private final BackupWriter writer;
    private final BackupReader reader;
    private final ReentrantLock restoring = new ReentrantLock();

    Backups(BackupWriter writer, BackupReader reader) {
        this.writer = writer;
        this.reader = reader;
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
     * @throws UnusableBackupException when the file is no whole backup, or of a newer program
     */
    public Restored restore(InputStream file, String by) throws IOException {
        Path kept = Files.createTempFile("fusewright-restore", ".zip");
        restoring.lock();
        try {
            Files.copy(file, kept, StandardCopyOption.REPLACE_EXISTING);
            return reader.restore(kept, by, Instant.now());
        } finally {
            restoring.unlock();
            Files.delete(kept);
        }
    }
}
