package org.seamledger.http.setting;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.seamledger.ledger.ModelPlace;
import org.seamledger.ledger.PostgresAddress;
import org.seamledger.run.Analyzer;
import org.seamledger.run.Result;
import org.seamledger.watch.Servers;

/**
 * How to serve.
 *
 * @param bind address to listen on; anything but loopback needs a token
 * @param port port, 0 for any free one
 * @param data folder for uploads and storage, used by one server at a time
 * @param models models to open the page on, or empty
 * @param samples folder with sample models to offer where no model was given, or empty
 * @param token what a client has to show, at least 16 characters; needed off loopback
 * @param database where analyses and reviews are kept, or empty to keep them in the data folder
 * @param hosts names besides the address itself and localhost under which clients may call
 * @param servers the servers of models that may be asked
 * @param proxies addresses of reverse proxies whose X-Forwarded headers are believed
 * @param shared where the models are that workers, which do the analyses, have in common with this server; or empty to analyse here
 * @param watch the usual pause between two looks at the watched projects on these servers, or empty to watch none
 */
public record Options(String bind, int port, Path data, List<Path> models, Optional<Path> samples, Optional<String> token,
    List<String> hosts, Limits limits, Analyzer<Result> analyzer, Optional<PostgresAddress> database, Servers servers,
    Optional<Duration> watch, List<String> proxies, Optional<ModelPlace> shared) {

  public static final String LOOPBACK = "127.0.0.1";
  public static final int PORT = 8642;

  public Options {
    models = List.copyOf(models);
    hosts = List.copyOf(hosts);
    proxies = List.copyOf(proxies);
  }

  /** On loopback, with no model and no token. */
  public static Options of(Analyzer<Result> analyzer, Path data) {
    return new Options(LOOPBACK, PORT, data, List.of(), Optional.empty(), Optional.empty(), List.of(), Limits.standard(), analyzer,
        Optional.empty(),
        Servers.none(), Optional.empty(), List.of(), Optional.empty());
  }

  public Options bind(String address, Optional<String> accessToken) {
    return new Options(address, port, data, models, samples, accessToken, hosts, limits, analyzer, database, servers, watch, proxies,
        shared);
  }

  public Options port(int number) {
    return new Options(bind, number, data, models, samples, token, hosts, limits, analyzer, database, servers, watch, proxies, shared);
  }

  public Options models(List<Path> files) {
    return new Options(bind, port, data, files, samples, token, hosts, limits, analyzer, database, servers, watch, proxies, shared);
  }

  public Options samples(Path folder) {
    return new Options(bind, port, data, models, Optional.of(folder), token, hosts, limits, analyzer, database, servers, watch, proxies,
        shared);
  }

  public Options hosts(List<String> names) {
    return new Options(bind, port, data, models, samples, token, names, limits, analyzer, database, servers, watch, proxies, shared);
  }

  public Options proxies(List<String> addresses) {
    return new Options(bind, port, data, models, samples, token, hosts, limits, analyzer, database, servers, watch, addresses, shared);
  }

  public Options limits(Limits other) {
    return new Options(bind, port, data, models, samples, token, hosts, other, analyzer, database, servers, watch, proxies, shared);
  }

  /** Lets clients choose among these servers of models. */
  public Options servers(Servers list) {
    return new Options(bind, port, data, models, samples, token, hosts, limits, analyzer, database, list, watch, proxies, shared);
  }

  /** Watches the projects that people switch on. */
  public Options watch(Duration every) {
    return new Options(bind, port, data, models, samples, token, hosts, limits, analyzer, database, servers, Optional.of(every), proxies,
        shared);
  }

  public Options database(Optional<PostgresAddress> address) {
    return new Options(bind, port, data, models, samples, token, hosts, limits, analyzer, address, servers, watch, proxies, shared);
  }

  /** Has workers analyse that share the database and these models. */
  public Options shared(ModelPlace place) {
    return new Options(bind, port, data, models, samples, token, hosts, limits, analyzer, database, servers, watch, proxies,
        Optional.of(place));
  }

  /** The same with another folder for what this process writes. */
  public Options data(Path folder) {
    return new Options(bind, port, folder, models, samples, token, hosts, limits, analyzer, database, servers, watch, proxies, shared);
  }
}
