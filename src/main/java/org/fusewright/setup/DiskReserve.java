package org.fusewright.setup;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.Conditional;
import org.springframework.stereotype.Component;
import org.springframework.transaction.CannotCreateTransactionException;
import org.springframework.transaction.TransactionExecution;
import org.springframework.transaction.TransactionExecutionListener;
import org.springframework.util.unit.DataSize;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Turns changes away while the disk of the embedded database has little room left. PostgreSQL ends
 * when it cannot extend its log, and then reads end as well; so much is kept free that it never
 * comes to that.
 */
@Component
@Conditional(EmbeddedDatabaseSetup.NoServerNamed.class)
class DiskReserve implements TransactionExecutionListener {
    private final FileStore disk;
    private final DataSize reserve;

    // The database has made the folder by then.
    DiskReserve(
            EmbeddedDatabase database,
            @Value("${fusewright.home}") Path home,
            @Value("${fusewright.disk-reserve}") DataSize reserve)
            throws IOException {
        this.disk = Files.getFileStore(home);
        this.reserve = reserve;
    }

    /**
     * @throws CannotCreateTransactionException when what is about to begin might change something;
     *     its cause is what PostgreSQL itself says of a full disk
     */
    @Override
    public void beforeBegin(TransactionExecution transaction) {
        try {
            if (!transaction.isReadOnly() && disk.getUsableSpace() < reserve.toBytes()) {
                throw new CannotCreateTransactionException(
                        "The disk has no room left", DatabaseOutages.diskFull());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
