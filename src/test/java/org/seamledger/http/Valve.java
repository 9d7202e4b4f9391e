package org.seamledger.http;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
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
      begin(() -> pump(in, out));
      begin(() -> pump(out, in));
    }
  }

  private void pump(Socket from, Socket to) throws IOException, InterruptedException {
    try (from; to) {
      InputStream in = from.getInputStream();
      OutputStream out = to.getOutputStream();
      byte[] buffer = new byte[1 << 14];
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
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
