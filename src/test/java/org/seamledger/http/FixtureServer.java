package org.seamledger.http;

import java.nio.file.Path;
import java.util.List;

/** Runs the service on made-up results, for looking at the page: {@code FixtureServer DATA PORT [SAMPLES]}. */
final class FixtureServer {

  private FixtureServer() {
  }

  public static void main(String[] args) throws Exception {
    Options options = Options.of(new FixtureAnalyzer(), Path.of(args[0])).port(Integer.parseInt(args[1]));
    if (args.length > 2) {
      options = options.samples(Path.of(args[2]));
    }
    if (args.length > 3) {
      options = options.models(List.of(Path.of(args[3])));
    }
    Server server = Server.start(options);
    System.err.println("ready " + server.url());
    Thread.currentThread().join();
  }
}
