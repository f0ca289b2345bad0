package org.fusewright.setup;

import org.jspecify.annotations.Nullable;
import org.springframework.util.FileSystemUtils;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/**
 * The folder that holds everything the service keeps, in use by one service at a time.
 *
 * <p>Nobody but its owner can read it. A folder whose first start was interrupted before the
 * database took its first connection is cleared by the next start: nothing can have been stored.
 */
final class DataFolder implements AutoCloseable {
    private static final int PASSWORD_BYTES = 32;

    private final Path home;
    private final FileChannel lock;

    private DataFolder(Path home, FileChannel lock) {
        this.home = home;
        this.lock = lock;
    }

    /**
     * Creates the folder where it is missing, and takes it.
     *
     * @throws StartProblem when another service has it, or it cannot be written
     */
    static DataFolder open(Path folder) {
        try {
            Files.createDirectories(folder);
            Path home = folder.toRealPath();
            FileChannel lock = lock(home);
            try {
                DataFolder opened = new DataFolder(home, lock);
                opened.clearUnfinished();
                return opened;
            } catch (IOException | RuntimeException e) {
                lock.close();
                throw e;
            }
        } catch (IOException e) {
            throw new StartProblem(
                    "The data folder " + folder.toAbsolutePath() + " cannot be used: " + e,
                    "Make it a folder that this user may write, or set fusewright.home to another.",
                    e);
        }
    }

    private static FileChannel lock(Path home) throws IOException {
        FileChannel channel =
                FileChannel.open(
                        home.resolve("in-use.lock"),
                        StandardOpenOption.CREATE,
                        StandardOpenOption.WRITE);
        if (findLock(channel) == null) {
            channel.close();
            throw new StartProblem(
                    "The data folder " + home + " is in use by another Fusewright.",
                    "Stop the other one, or set fusewright.home to another folder.",
                    null);
        }
        restrictToOwner(home);
        return channel;
    }

    private static @Nullable FileLock findLock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException e) {
            return null;
        }
    }

    private void clearUnfinished() throws IOException {
        if (Files.exists(firstPassword())) {
            FileSystemUtils.deleteRecursively(cluster());
            Files.delete(firstPassword());
        }
        for (Path unpacked : listFolders(binaries())) {
            if (!Files.exists(unpacked.resolve(".exists"))) {
                FileSystemUtils.deleteRecursively(unpacked);
            }
        }
    }

    private static List<Path> listFolders(Path parent) throws IOException {
        if (!Files.isDirectory(parent)) {
            return List.of();
        }
        try (Stream<Path> children = Files.list(parent)) {
            return children.filter(Files::isDirectory).toList();
        }
    }

    /** Where PostgreSQL keeps its files. */
    Path cluster() {
        return home.resolve("database");
    }

    /** Where the programs of PostgreSQL are unpacked. */
    Path binaries() {
        return home.resolve("binaries");
    }

    /** What PostgreSQL said since the last start. */
    Path databaseLog() {
        return home.resolve("database.log");
    }

    /** The file with the password of the database; there once the first start went well. */
    Path password() {
        return home.resolve("database-password");
    }

    /** The password while the database is being made; it becomes {@link #password()} afterwards. */
    Path firstPassword() {
        return home.resolve("database-password.new");
    }

    /** The password of the database, a fresh one where there is no database yet. */
    String readOrCreatePassword() {
        try {
            if (Files.exists(password())) {
                return Files.readString(password());
            }
            if (Files.exists(cluster())) {
                throw new StartProblem(
                        "The file " + password() + " is missing, so the database cannot be opened.",
                        "Put it back, from a copy of the data folder for instance.",
                        null);
            }
            byte[] random = new byte[PASSWORD_BYTES];
            new SecureRandom().nextBytes(random);
            String password = HexFormat.of().formatHex(random);
            Files.createFile(firstPassword());
            restrictToOwner(firstPassword());
            Files.writeString(firstPassword(), password);
            return password;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Records that the database works with its password, and closes what was unpacked to others.
     */
    void confirmDatabase() {
        try {
            if (Files.exists(firstPassword())) {
                Files.move(firstPassword(), password(), StandardCopyOption.ATOMIC_MOVE);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void restrictToOwner(Path path) throws IOException {
        if (path.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            String allowed = Files.isDirectory(path) ? "rwx------" : "rw-------";
            Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(allowed));
        }
    }

    /** Lets another service have the folder. */
    @Override
    public void close() {
        try {
            lock.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public String toString() {
        return home.toString();
    }
}
