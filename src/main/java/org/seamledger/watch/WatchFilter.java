package org.seamledger.watch;

import java.util.List;
import org.seamledger.ledger.Watch;
import org.seamledger.ledger.Watches;
import org.seamledger.source.ServedProject;

/** What people switched on. */
public record WatchFilter(Watches watches) implements WatchTarget {

  @Override
  public boolean wants(String server, ServedProject project) {
    return watches.get(server, project.id()).filter(Watch::on).isPresent();
  }

  @Override
  public boolean wantsAny(String server) {
    return servers().contains(server);
  }

  /** The servers that have something switched on. */
  public List<String> servers() {
    return watches.list().stream().filter(Watch::on).map(Watch::server).distinct().toList();
  }
}
