package org.fusewright.setup;

import org.fusewright.FusewrightApplication;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The service as its user runs it, a process of its own that can be killed. */
final class ServiceProcess implements AutoCloseable {
    private static final String READY = "Fusewright is ready: ";

    private final Path home;
    private final Process process;
    private final List<String> output = new ArrayList<>();

    private ServiceProcess(Path home, Process process) {
        this.home = home;
        this.process = process;
    }

    /** Starts the service on a free port, and waits until it says that it is ready, or ends. */
    static ServiceProcess start(Path home) throws IOException {
        ProcessBuilder builder =
                new ProcessBuilder(
                        ProcessHandle.current().info().command().orElseThrow(),
                        "-XX:TieredStopAtLevel=1",
                        FusewrightApplication.class.getName(),
                        "--server.port=0",
                        "--fusewright.home=" + home);
        builder.environment().put("CLASSPATH", System.getProperty("java.class.path"));
        ServiceProcess service =
                new ServiceProcess(home, builder.redirectErrorStream(true).start());
        service.readUntilReady();
        return service;
    }

    private void readUntilReady() throws IOException {
        BufferedReader reader = process.inputReader();
        for (String line = reader.readLine(); line != null; line = reader.readLine()) {
            output.add(line);
            if (line.contains(READY)) {
                return;
            }
        }
    }

    /** What it printed until it was ready, or ended. */
    String output() {
        return String.join("\n", output);
    }

    URI address() {
        String last = output.getLast();
        return URI.create(last.substring(last.indexOf(READY) + READY.length()));
    }

    /** The process of its database, which outlives a killed service. */
    ProcessHandle database() throws IOException {
        return ProcessHandle.of(Long.parseLong(pidFile().get(0))).orElseThrow();
    }

    private List<String> pidFile() throws IOException {
        return Files.readAllLines(home.resolve("database/postmaster.pid"));
    }

    /** Ends it at once, as {@code kill -9} does. */
    void kill() {
        process.destroyForcibly().onExit().join();
    }

    /** Ends it as a user does, and waits until it is gone. */
    @Override
    public void close() {
        process.destroy();
        process.onExit().join();
    }
}
