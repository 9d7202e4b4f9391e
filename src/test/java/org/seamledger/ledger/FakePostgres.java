package org.seamledger.ledger;

import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/**
 * Something at a port that a database was expected at, for answers that a real one can't be made to give at will. Messages as in
 * PostgreSQL's documentation, chapter "Frontend/Backend Protocol", "Message Formats".
 */
final class FakePostgres implements AutoCloseable {

  private final ServerSocket socket;
  private final byte[] answer;

  private FakePostgres(byte[] answer) {
    this.answer = answer;
    try {
      socket = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Thread t = new Thread(this::serve, "fake database");
    t.setDaemon(true);
    t.start();
  }

  /** Refuses every session with an error message of the server. */
  static FakePostgres refusing(String state, String words) throws IOException {
    byte[] fields = ("SFATAL\0VFATAL\0C" + state + "\0M" + words + "\0\0").getBytes(StandardCharsets.UTF_8);
    ByteArrayOutputStream message = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(message);
    out.writeByte('E');
    out.writeInt(fields.length + Integer.BYTES);
    out.write(fields);
    return new FakePostgres(message.toByteArray());
  }

  /** Says something that is not PostgreSQL's. */
  static FakePostgres saying(String words) {
    return new FakePostgres(words.getBytes(StandardCharsets.UTF_8));
  }

  String url() {
    return "jdbc:postgresql://127.0.0.1:" + socket.getLocalPort() + "/roofs?sslmode=disable";
  }

  private void serve() {
    while (!socket.isClosed()) {
      try (Socket s = socket.accept()) {
        DataInputStream in = new DataInputStream(s.getInputStream());
        in.readNBytes(in.readInt() - Integer.BYTES);
        s.getOutputStream().write(answer);
        s.getOutputStream().flush();
      } catch (IOException e) {
        // The client left, or the test is over.
      }
    }
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
