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
import java.util.concurrent.TimeUnit;

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
        Path pidFile = cluster.resolve("postmaster.pid");
        if (!Files.exists(pidFile)) {
            return;
        }
        try {
            List<String> lines = Files.readAllLines(pidFile);
            Optional<ProcessHandle> process =
                    ProcessHandle.of(Long.parseLong(lines.get(0).strip()));
            if (process.isEmpty()) {
                return;
            }
            LeftoverServer server = new LeftoverServer(cluster, process.get());
            Instant startedAt = Instant.ofEpochSecond(Long.parseLong(lines.get(2).strip()));
            if (server.isReally(startedAt)) {
                server.stopFast(log);
            } else {
                // PostgreSQL takes any process with that number for a rival, and would not start.
                Files.delete(pidFile);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private boolean isReally(Instant startedAt) {
        ProcessHandle.Info info = process.info();
        boolean isPostgres =
                info.command()
                        .map(command -> Path.of(command).getFileName().toString())
                        .filter(name -> name.equals("postgres") || name.equals("postgres.exe"))
                        .isPresent();
        // Windows does not tell the arguments of other processes.
        return isPostgres
                && info.arguments()
                        .map(arguments -> Arrays.asList(arguments).contains(cluster.toString()))
                        .orElseGet(() -> startedAt(startedAt, info));
    }

    private static boolean startedAt(Instant expected, ProcessHandle.Info info) {
        return info.startInstant()
                .map(actual -> Duration.between(expected, actual).abs())
                .filter(difference -> difference.compareTo(CLOCK_TOLERANCE) <= 0)
                .isPresent();
    }

    private void stopFast(Path log) throws IOException {
        Path postgres = Path.of(process.info().command().orElseThrow());
        String extension = postgres.getFileName().toString().endsWith(".exe") ? ".exe" : "";
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
        Process stopping =
                new ProcessBuilder(command)
                        .redirectErrorStream(true)
                        .redirectOutput(Redirect.appendTo(log.toFile()))
                        .start();
        try {
            stopping.waitFor();
            process.onExit().get(STOPPING.toSeconds(), TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("Interrupted while the old database stopped", e);
        } catch (Exception e) {
            throw new StartProblem(
                    "The database process " + process.pid() + " of an earlier run does not stop.",
                    "Look into " + log + ", end that process, and start again.",
                    e);
        }
    }
}
