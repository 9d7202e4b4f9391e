package org.seamledger.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.seamledger.source.KnownServers;
import org.seamledger.source.ServerListException;
import picocli.CommandLine.Option;

/** Which servers of models may be asked. */
final class ServersChoice {

  @Option(names = "--servers", paramLabel = "FILE", defaultValue = "${env:SEAMLEDGER_SERVERS}",
      description = "The list of servers of models that may be asked: a line NAME.url=ADDRESS, a line NAME.user=USER for each; also SEAMLEDGER_SERVERS.")
  private Path file;

  /** The list, or empty where none is named. */
  Optional<KnownServers> list() {
    try {
      return Optional.ofNullable(file).map(KnownServers::read);
    } catch (ServerListException e) {
      throw new UsageException(e.getMessage());
    }
  }
}
