package org.seamledger.http;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.PostgresAddress;
import org.seamledger.run.Analyzer;
import org.seamledger.run.Result;
import org.seamledger.run.TakeoffAnalyzer;

/**
 * Runs the service on made-up results ({@code fixture}) or real ones ({@code real}): {@code FixtureServer WHICH DATA PORT [SAMPLES
 * [MODEL]]}.
 */
final class FixtureServer {

  /** Variable with the URL of a database to use. */
  static final String DATABASE = "FIXTURE_DATABASE";

  private FixtureServer() {
  }

  public static void main(String[] args) throws Exception {
    Analyzer<Result> analyzer = args[0].equals("real") ? new TakeoffAnalyzer(Optional.empty()) : new FixtureAnalyzer();
    Options options = Options.of(analyzer, Path.of(args[1])).port(Integer.parseInt(args[2]))
        .database(Optional.ofNullable(System.getenv(DATABASE)).map(url -> PostgresAddress.of(url, Optional.empty(), Optional.empty())));
    if (args.length > 3) {
      options = options.samples(Path.of(args[3]));
    }
    if (args.length > 4) {
      options = options.models(List.of(Path.of(args[4])));
    }
    Server server = Server.start(options);
    System.err.println("ready " + server.url());
    Thread.currentThread().join();
  }
}
