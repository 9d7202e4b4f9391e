package org.seamledger.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.seamledger.source.KnownServers;
import org.seamledger.source.ModelFile;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ModelServerException;
import org.seamledger.source.ModelSource;
import org.seamledger.source.ServedProject;
import org.seamledger.source.ServedRevision;

/**
 * The models that a command line names: files, and revisions on servers as {@code server:NAME/PROJECT} or
 * {@code server:NAME/PROJECT@REVISION}, the project by its name or number. Without a revision it is the latest one. Logged in to the
 * servers until it is closed.
 */
final class ChosenModels implements AutoCloseable {

  static final String PREFIX = "server:";

  private final ServersChoice choice;
  private final Map<String, ModelServer> connected = new TreeMap<>();
  private List<ModelSource> sources = List.of();
  private List<String> words = List.of();

  private ChosenModels(ServersChoice choice) {
    this.choice = choice;
  }

  /**
   * @throws UsageException where a word names no server of the list
   * @throws ModelServerException where a server has no such model, or can't be asked
   */
  static ChosenModels of(List<String> words, ServersChoice choice) {
    ChosenModels chosen = new ChosenModels(choice);
    try {
      List<ModelSource> sources = new ArrayList<>();
      for (String word : words) {
        sources.add(word.startsWith(PREFIX) ? chosen.served(word.substring(PREFIX.length())) : new ModelFile(Path.of(word)));
      }
      chosen.sources = List.copyOf(sources);
      chosen.words = List.copyOf(words);
      return chosen;
    } catch (RuntimeException e) {
      chosen.close();
      throw e;
    }
  }

  /** In the order in which they were named. */
  List<ModelSource> sources() {
    return sources;
  }

  /** As they were typed, in the same order. */
  List<String> words() {
    return words;
  }

  private ModelSource served(String word) {
    int slash = word.indexOf('/');
    if (slash < 1 || slash == word.length() - 1) {
      throw new UsageException("expected server:NAME/PROJECT or server:NAME/PROJECT@REVISION, found " + PREFIX + word);
    }
    String name = word.substring(0, slash);
    ModelServer server = connected.computeIfAbsent(name, n -> known(n).connect(n));
    return server.model(new Wanted(server, name, word.substring(slash + 1)).revision());
  }

  private KnownServers known(String name) {
    KnownServers known = choice.list().orElseThrow(() -> new UsageException("which server " + name
        + " is, the list of servers says: --servers FILE or SEAMLEDGER_SERVERS"));
    if (!known.names().contains(name)) {
      throw new UsageException("the list of servers has none named " + name + "; it has " + String.join(", ", known.names()));
    }
    return known;
  }

  /** What stands behind the slash, looked up on a server. A name may have an @ in it, so the whole is tried as a name first. */
  private record Wanted(ModelServer server, String name, String word) {

    ServedRevision revision() {
      List<ServedProject> projects = server.projects();
      Optional<ServedProject> whole = project(projects, word);
      if (whole.isPresent()) {
        return latest(whole.get());
      }
      int at = word.lastIndexOf('@');
      Optional<ServedProject> before = at < 0 ? Optional.empty() : project(projects, word.substring(0, at));
      return numbered(before.orElseThrow(() -> missing("no project " + (at < 0 ? word : word.substring(0, at)) + "; it has "
          + (projects.isEmpty() ? "none" : String.join(", ", projects.stream().map(ServedProject::name).toList())))),
          word.substring(at + 1));
    }

    private Optional<ServedProject> project(List<ServedProject> projects, String wanted) {
      List<ServedProject> named = projects.stream().filter(p -> p.name().equals(wanted)).toList();
      if (named.size() > 1) {
        throw missing(named.size() + " projects named " + wanted + "; say which by its number: "
            + String.join(", ", named.stream().map(p -> Long.toString(p.id())).toList()));
      }
      return named.isEmpty() ? projects.stream().filter(p -> Long.toString(p.id()).equals(wanted)).findFirst() : Optional.of(named.get(0));
    }

    private ServedRevision latest(ServedProject project) {
      List<ServedRevision> all = server.revisions(project.id());
      if (all.isEmpty()) {
        throw missing("no revision of " + project.name());
      }
      return all.get(all.size() - 1);
    }

    private ServedRevision numbered(ServedProject project, String number) {
      List<ServedRevision> all = server.revisions(project.id());
      return all.stream().filter(r -> Integer.toString(r.number()).equals(number)).findFirst()
          .orElseThrow(() -> missing("no revision " + number + " of " + project.name() + "; it has "
              + (all.isEmpty() ? "none" : all.get(0).number() + " to " + all.get(all.size() - 1).number())));
    }

    private ModelServerException missing(String what) {
      return new ModelServerException(ModelServerException.Reason.NOT_FOUND, name + " has " + what);
    }
  }

  /** Logs out. */
  @Override
  public void close() {
    connected.values().forEach(ModelServer::close);
    connected.clear();
  }
}
