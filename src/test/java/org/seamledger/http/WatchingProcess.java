package org.seamledger.http;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.PostgresAddress;
import org.seamledger.ledger.Store;
import org.seamledger.watch.Download;
import org.seamledger.watch.FolderServers;
import org.seamledger.watch.Health;
import org.seamledger.watch.LocalAnalyst;
import org.seamledger.watch.Watching;

/** Watches a folder of revisions with made-up results: {@code WatchingProcess serve|watch DATA SHELF}, as the service or as the command. */
final class WatchingProcess {

  private static final Duration EVERY = Duration.ofMillis(100);

  private WatchingProcess() {
  }

  public static void main(String[] args) throws Exception {
    Optional<PostgresAddress> database =
        Optional.ofNullable(System.getenv(FixtureServer.DATABASE)).map(url -> PostgresAddress.of(url, Optional.empty(), Optional.empty()));
    FolderServers servers = new FolderServers(Path.of(args[2]));
    Path data = Path.of(args[1]);
    if (args[0].equals("serve")) {
      Server server =
          Server.start(Options.of(new FixtureAnalyzer(), data).port(0).database(database).servers(servers).watch(EVERY));
      System.err.println("ready " + server.url());
    } else {
      Store store = Store.open(data, database);
      store.analyses().unfinished();
      Path scratch = data.resolve("scratch");
      Clock clock = Clock.systemUTC();
      new Watching(new Watching.Setting(servers, (server, project) -> true, store,
          new Download(store.uploads(), scratch, Watching.MOST_BYTES), EVERY, new LocalAnalyst(store, scratch, new FixtureAnalyzer()),
          event -> System.err.println(event.line()), clock, new Health(clock))).start(servers.names());
      System.err.println("ready -");
    }
    Thread.currentThread().join();
  }
}
