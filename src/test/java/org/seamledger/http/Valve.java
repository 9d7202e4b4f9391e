package org.seamledger.http;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A way to a server that can be shut: then nothing goes through in either direction, and nobody is told. Or it can be cut, which both ends
 * notice at once.
 */
final class Valve implements AutoCloseable {

  private final ServerSocket entry;
  private final int target;
  private final Set<Socket> sockets = ConcurrentHashMap.newKeySet();
  private boolean open = true;
  private volatile boolean refusing;
  /** What shuts it, in this order; empty where it does not shut by itself. */
  private final Deque<byte[]> stops = new ArrayDeque<>();

  Valve(int target) throws IOException {
    this.target = target;
    this.entry = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    begin(this::accept);
  }

  int port() {
    return entry.getLocalPort();
  }

  synchronized void open(boolean now) {
    open = now;
    notifyAll();
  }

  /** Cuts what is connected now. */
  void cut() throws IOException {
    for (Socket s : sockets) {
      s.close();
    }
  }

  /** Whether who comes from now on is sent away at once. */
  void refuse(boolean now) {
    refusing = now;
  }

  /** Shuts when the last of these comes from a client after the others have, and keeps it back. */
  synchronized void shutBefore(String... words) {
    for (String w : words) {
      stops.add(w.getBytes(StandardCharsets.US_ASCII));
    }
  }

  private synchronized void look(byte[] buffer, int length) {
    for (int i = 0; i < length && !stops.isEmpty(); i++) {
      byte[] stop = stops.peek();
      if (i + stop.length <= length && Arrays.equals(buffer, i, i + stop.length, stop, 0, stop.length)) {
        stops.remove();
        open = !stops.isEmpty();
      }
    }
  }

  /** Returns when it is shut. */
  void awaitShut() throws InterruptedException {
    for (int i = 0; i < 1200 && isOpen(); i++) {
      Thread.sleep(50);
    }
    if (isOpen()) {
      throw new AssertionError("never shut");
    }
  }

  private synchronized boolean isOpen() {
    return open;
  }

  private synchronized void awaitOpen() throws InterruptedException {
    while (!open) {
      wait();
    }
  }

  private interface Step {
    void run() throws IOException, InterruptedException;
  }

  private static void begin(Step step) {
    Thread t = new Thread(() -> {
      try {
        step.run();
      } catch (IOException | InterruptedException e) {
        // One side has gone.
      }
    }, "valve");
    t.setDaemon(true);
    t.start();
  }

  private void accept() throws IOException, InterruptedException {
    while (true) {
      Socket in = entry.accept();
      try {
        connect(in);
      } catch (IOException e) {
        // The server is not there: who came is told so, and others may come later.
        in.close();
      }
    }
  }

  private void connect(Socket in) throws IOException, InterruptedException {
    if (refusing) {
      in.close();
    } else {
      awaitOpen();
      Socket out = new Socket(InetAddress.getLoopbackAddress(), target);
      sockets.add(in);
      sockets.add(out);
      begin(() -> pump(in, out, true));
      begin(() -> pump(out, in, false));
    }
  }

  private void pump(Socket from, Socket to, boolean isClient) throws IOException, InterruptedException {
    try (from; to) {
      InputStream in = from.getInputStream();
      OutputStream out = to.getOutputStream();
      byte[] buffer = new byte[1 << 14];
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        if (isClient) {
          look(buffer, n);
        }
        awaitOpen();
        out.write(buffer, 0, n);
        out.flush();
      }
    } finally {
      sockets.remove(from);
    }
  }

  @Override
  public void close() throws IOException {
    open(true);
    entry.close();
  }
}
