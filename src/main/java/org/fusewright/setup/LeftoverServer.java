package org.fusewright.setup;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * The PostgreSQL of a service that was killed: it lives on, and would keep the next start from
 * using its files.
 *
 * <p>The file {@code postmaster.pid} tells its process (PostgreSQL manual, section "Database File
 * Layout"), but that number may meanwhile belong to a stranger, who must not be touched.
 */
final class LeftoverServer {
    private static final Duration STOPPING = Duration.ofSeconds(60);
    private static final Duration CLOCK_TOLERANCE = Duration.ofSeconds(5);

    private final Path cluster;
    private final ProcessHandle process;

    private LeftoverServer(Path cluster, ProcessHandle process) {
        this.cluster = cluster;
        this.process = process;
    }

    /**
     * Stops the server that still works on these files, if there is one, once its transactions in
     * flight are rolled back. Committed ones are kept.
     *
     * @throws StartProblem when it does not stop
     */
    static void stop(Path cluster, Path log) {
        Path pidFile = pidFile(cluster);
        if (!Files.exists(pidFile)) {
            return;
        }
        try {
            List<String> lines = Files.readAllLines(pidFile);
            Optional<Long> pid = number(lines, 0);
            Optional<Instant> startedAt = number(lines, 2).map(Instant::ofEpochSecond);
            if (pid.isEmpty() || startedAt.isEmpty()) {
                // PostgreSQL takes a torn file for one that is just being written.
                Files.delete(pidFile);
                return;
            }
            Optional<LeftoverServer> found =
                    ProcessHandle.of(pid.get())
                            .filter(process -> process.info().command().isPresent())
                            .map(process -> new LeftoverServer(cluster, process));
            if (found.isEmpty()) {
                // Gone, or another user's: PostgreSQL tells these apart, and clears up by itself.
                return;
            }
            if (found.get().isReally(startedAt.get())) {
                found.get().stopFast(log);
            } else {
                // PostgreSQL takes any process of that number for a rival.
                Files.delete(pidFile);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The process of the server that works on these files. */
    static long readProcessId(Path cluster) throws IOException {
        return number(Files.readAllLines(pidFile(cluster)), 0)
                .orElseThrow(() -> new IOException("There is no process id in " + cluster));
    }

    private static Path pidFile(Path cluster) {
        return cluster.resolve("postmaster.pid");
    }

    private static Optional<Long> number(List<String> lines, int line) {
        try {
            return lines.size() > line
                    ? Optional.of(Long.valueOf(lines.get(line).strip()))
                    : Optional.empty();
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    private boolean isReally(Instant startedAt) {
        ProcessHandle.Info info = process.info();
        // The name goes on after that where the system has an ending, or the file was deleted.
        boolean isPostgres =
                info.command()
                        .map(command -> Path.of(command).getFileName().toString())
                        .filter(name -> name.startsWith("postgres"))
                        .isPresent();
        // Not all systems tell arguments, and they name the old folder after a move.
        return isPostgres && (names(cluster, info) || startedAt(startedAt, info));
    }

    private static boolean names(Path cluster, ProcessHandle.Info info) {
        return info.arguments()
                .map(arguments -> Arrays.asList(arguments).contains(cluster.toString()))
                .orElse(false);
    }

    private static boolean startedAt(Instant expected, ProcessHandle.Info info) {
        return info.startInstant()
                .map(actual -> Duration.between(expected, actual).abs())
                .filter(difference -> difference.compareTo(CLOCK_TOLERANCE) <= 0)
                .isPresent();
    }

    private void stopFast(Path log) {
        Path postgres = Path.of(process.info().command().orElseThrow());
        String extension = postgres.getFileName().toString().contains(".exe") ? ".exe" : "";
        Path control = postgres.resolveSibling("pg_ctl" + extension);
        List<String> command =
                EmbeddedDatabase.asOrdinaryUser(
                        List.of(
                                control.toString(),
                                "stop",
                                "-D",
                                cluster.toString(),
                                "-m",
                                "fast",
                                "-w",
                                "-t",
                                Long.toString(STOPPING.toSeconds())));
        try {
            new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(Redirect.appendTo(log.toFile()))
                    .start()
                    .waitFor();
            process.onExit().get(STOPPING.toSeconds(), TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("Interrupted while the old database stopped", e);
        } catch (IOException | ExecutionException | TimeoutException e) {
            throw new StartProblem(
                    "The database process " + process.pid() + " of an earlier run does not stop.",
                    "Look into " + log + ", end that process, and start again.",
                    e);
        }
    }
}
