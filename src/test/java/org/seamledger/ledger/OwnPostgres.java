package org.seamledger.ledger;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Path;
import org.opentest4j.TestAbortedException;

/** A PostgreSQL server of one test's own, which may be stopped and started again with what it holds. */
public final class OwnPostgres implements AutoCloseable {

  private final Path folder;
  private EmbeddedPostgres server;
  private final int port;

  /** Skips the test where this machine can't run one. */
  public OwnPostgres(Path folder) {
    this.folder = folder;
    try {
      server = EmbeddedPostgres.builder().setDataDirectory(folder).setCleanDataDirectory(false).start();
    } catch (IOException | RuntimeException e) {
      throw new TestAbortedException("PostgreSQL cannot be started on this machine: " + e, e);
    }
    port = server.getPort();
  }

  public int port() {
    return port;
  }

  /** The same database by other ports, such as that of something between. */
  public String url(int... ports) {
    StringBuilder hosts = new StringBuilder();
    for (int p : ports) {
      hosts.append(hosts.isEmpty() ? "" : ",").append("localhost:").append(p);
    }
    return "jdbc:postgresql://" + hosts + "/postgres?user=postgres";
  }

  /** Stops it as its administrator does in a hurry: who is in is thrown out, and what was not committed is lost. */
  public void stop() throws IOException {
    server.close();
  }

  public void startAgain() throws IOException {
    server = EmbeddedPostgres.builder().setDataDirectory(folder).setCleanDataDirectory(false).setPort(port).start();
  }

  @Override
  public void close() throws IOException {
    server.close();
  }
}
