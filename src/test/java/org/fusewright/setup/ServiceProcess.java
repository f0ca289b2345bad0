package org.fusewright.setup;

import org.fusewright.FusewrightApplication;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;

/** The service as its user runs it, a process of its own that can be killed. */
final class ServiceProcess implements AutoCloseable {
    private static final String READY = "Fusewright is ready: ";

    private final Path home;
    private final Process process;
    private final List<String> output = new CopyOnWriteArrayList<>();

    private ServiceProcess(Path home, Process process) {
        this.home = home;
        this.process = process;
    }

    /** Starts the service on a free port, and waits until it says that it is ready, or ends. */
    static ServiceProcess start(Path home, String... more) throws IOException {
        return start(List.of(), home, more);
    }

    /** As above, by way of another command that runs it. */
    static ServiceProcess start(List<String> by, Path home, String... more) throws IOException {
        List<String> command = new ArrayList<>(by);
        command.add(ProcessHandle.current().info().command().orElseThrow());
        command.add("-XX:TieredStopAtLevel=1");
        command.add(FusewrightApplication.class.getName());
        command.add("--server.port=0");
        command.add("--fusewright.home=" + home);
        command.addAll(List.of(more));
        ProcessBuilder builder = new ProcessBuilder(command);
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
                Thread.ofVirtual().start(() -> reader.lines().forEach(output::add));
                return;
            }
        }
    }

    /** What it printed so far. */
    String output() {
        return String.join("\n", output);
    }

    /** The same, line by line. */
    List<String> lines() {
        return List.copyOf(output);
    }

    URI address() {
        return output.stream()
                .filter(line -> line.contains(READY))
                .map(line -> line.substring(line.indexOf(READY) + READY.length()))
                .map(address -> URI.create(address.replaceFirst("[\\s\"].*", "")))
                .findFirst()
                .orElseThrow();
    }

    long pid() {
        return process.pid();
    }

    /** Asks it to end, as a user does. */
    void askToStop() {
        process.destroy();
    }

    ProcessHandle handle() {
        return process.toHandle();
    }

    /** The process of its database, which outlives a killed service. */
    ProcessHandle database() throws IOException {
        return ProcessHandle.of(Long.parseLong(pidFile().get(0))).orElseThrow();
    }

    /** As above; empty when it is gone. */
    Optional<ProcessHandle> findDatabase() throws IOException {
        return Files.exists(home.resolve("database/postmaster.pid"))
                ? ProcessHandle.of(Long.parseLong(pidFile().get(0)))
                : Optional.empty();
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
