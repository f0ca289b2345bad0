package org.fusewright.setup;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/** The way to a server, which can be cut and mended. */
final class Relay implements AutoCloseable {
    private final InetSocketAddress server;
    private final int port;
    private final Queue<Socket> open = new ConcurrentLinkedQueue<>();
    private volatile ServerSocket door;
    private volatile boolean silent;

    Relay(String host, int serverPort) throws IOException {
        server = new InetSocketAddress(host, serverPort);
        door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        port = door.getLocalPort();
        letIn(door);
    }

    int port() {
        return port;
    }

    /** All connections end, and no new one is let in: as when the server has stopped. */
    void cut() throws IOException {
        door.close();
        hangUp();
    }

    private void hangUp() throws IOException {
        for (Socket socket = open.poll(); socket != null; socket = open.poll()) {
            socket.close();
        }
    }

    /** Connections stay, and nothing comes through any more: as when a cable was pulled. */
    void silence() {
        silent = true;
    }

    void mend() throws IOException {
        silent = false;
        hangUp();
        if (!door.isClosed()) {
            return;
        }
        ServerSocket again = new ServerSocket();
        again.setReuseAddress(true);
        again.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
        door = again;
        letIn(again);
    }

    private void letIn(ServerSocket from) {
        Thread.ofVirtual()
                .start(
                        () -> {
                            while (!from.isClosed()) {
                                try {
                                    join(from.accept());
                                } catch (IOException closed) {
                                    return;
                                }
                            }
                        });
    }

    private void join(Socket client) throws IOException {
        open.add(client);
        Socket there = new Socket();
        there.connect(server);
        open.add(there);
        Thread.ofVirtual().start(() -> pass(client, there));
        Thread.ofVirtual().start(() -> pass(there, client));
    }

    private void pass(Socket from, Socket to) {
        byte[] piece = new byte[8192];
        try (from;
                to) {
            InputStream in = from.getInputStream();
            OutputStream out = to.getOutputStream();
            for (int read = in.read(piece); read >= 0; read = in.read(piece)) {
                if (!silent) {
                    out.write(piece, 0, read);
                }
            }
        } catch (IOException cut) {
            // Both ends are closed above.
        }
    }

    @Override
    public void close() {
        try {
            cut();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
