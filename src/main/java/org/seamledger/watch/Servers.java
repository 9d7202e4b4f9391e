package org.seamledger.watch;

import java.util.List;
import java.util.Set;
import org.seamledger.source.KnownServers;
import org.seamledger.source.ModelServer;

/** The servers that may be asked, by the names that the operator gave them. */
public interface Servers {

  /** Their names, in alphabetical order. */
  List<String> names();

  /**
   * Logs in. The caller closes it.
   *
   * @throws org.seamledger.source.ModelServerException where there is none of that name, or the login fails
   */
  ModelServer connect(String name);

  /** What else than the usual answer is left with revisions there: of {@link KnownServers#ATTACHABLE}. */
  default Set<String> attached(String name) {
    return Set.of();
  }

  /** Those on the operator's list. */
  static Servers of(KnownServers list) {
    return new Servers() {
      @Override
      public List<String> names() {
        return list.names();
      }

      @Override
      public ModelServer connect(String name) {
        return list.connect(name);
      }

      @Override
      public Set<String> attached(String name) {
        return list.attached(name);
      }
    };
  }

  /** None. */
  static Servers none() {
    return of(KnownServers.NONE);
  }
}
