package org.seamledger.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.seamledger.source.KnownServers;
import org.seamledger.source.ServerListException;
import picocli.CommandLine.Option;

/** Which servers of models may be asked. */
final class ServersChoice {

  @Option(names = "--servers", paramLabel = "FILE", defaultValue = "${env:SEAMLEDGER_SERVERS}",
      description = "The list of servers of models that may be asked: a line NAME.url=ADDRESS, a line NAME.user=USER for each; also "
          + "SEAMLEDGER_SERVERS.")
  private Path file;

  /**
   * The list, which has at least one server, or empty where none is named.
   *
   * @throws UsageException where it can't be used
   */
  Optional<KnownServers> list() {
    try {
      Optional<KnownServers> known = Optional.ofNullable(file).map(KnownServers::read);
      if (known.isPresent() && known.get().names().isEmpty()) {
        throw new UsageException(file + ": expected at least one server, such as office.url=https://models.example.org, found none");
      }
      return known;
    } catch (ServerListException e) {
      throw new UsageException(e.getMessage());
    }
  }
}
