package org.seamledger.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import org.seamledger.source.ServedProject;
import org.seamledger.watch.Servers;
import org.seamledger.watch.WatchTarget;

/** What a command names to be watched: whole servers, or projects by name or number. */
final class WatchTargets implements WatchTarget {

  /** A project of a server; all of its projects where the name is empty. */
  private record Target(String server, String project) {
    boolean takes(String name, ServedProject p) {
      return server.equals(name) && (project.isEmpty() || project.equals(p.name()) || project.equals(Long.toString(p.id())));
    }
  }

  private final List<Target> targets = new ArrayList<>();
  private final Set<Target> met = ConcurrentHashMap.newKeySet();

  /** @param words each {@code SERVER} or {@code SERVER/PROJECT} */
  WatchTargets(List<String> words, Servers servers) {
    for (String word : words) {
      int slash = word.indexOf('/');
      Target target = slash < 0 ? new Target(word, "") : new Target(word.substring(0, slash), word.substring(slash + 1));
      if (slash >= 0 && target.project.isEmpty()) {
        throw new UsageException("expected SERVER or SERVER/PROJECT, found " + word);
      }
      if (!servers.names().contains(target.server)) {
        throw new UsageException("the list of servers has none named " + target.server + "; it has " + String.join(", ", servers.names()));
      }
      targets.add(target);
    }
  }

  /** The servers that are named, in alphabetical order. */
  List<String> servers() {
    return List.copyOf(new TreeSet<>(targets.stream().map(Target::server).toList()));
  }

  @Override
  public boolean wants(String server, ServedProject project) {
    List<Target> taking = targets.stream().filter(t -> t.takes(server, project)).toList();
    met.addAll(taking);
    return !taking.isEmpty();
  }

  /** What was named and no server has shown so far, as it was named. */
  List<String> unmet() {
    return targets.stream().filter(t -> !met.contains(t) && !t.project.isEmpty()).map(t -> t.server + "/" + t.project).toList();
  }
}
