package org.seamledger.http;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;

/** A way to a server that can be shut: then nothing goes through in either direction, and nobody is told. */
final class Valve implements AutoCloseable {

  private final ServerSocket entry;
  private final int target;
  private boolean open = true;

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
      awaitOpen();
      Socket out = new Socket(InetAddress.getLoopbackAddress(), target);
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
    }
  }

  @Override
  public void close() throws IOException {
    open(true);
    entry.close();
  }
}
