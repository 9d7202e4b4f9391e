package org.seamledger.source;

import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.UnaryOperator;

/**
 * The operator's list of servers: the only ones that this program ever asks. People name a server, never an address.
 *
 * <p>The list is a text file in UTF-8, one {@code name.key=value} a line; empty lines and lines that begin with {@code #} are passed
 * over, and a value is taken as it stands, without escapes or the blanks around it:
 * <pre>
 * office.url=https://models.example.org/bimserver
 * office.user=roofer@example.org
 * </pre>
 * A name is letters, digits, hyphens and underscores. The keys are {@code url} (http or https, needed), {@code user}, {@code password},
 * {@code insecure} ({@code true}: send the password over plain http to another machine), and the limits {@code connect-seconds},
 * {@code answer-seconds}, {@code download-seconds} and {@code max-megabytes} of {@link ServerLimits}; {@code attach} says what a
 * watch leaves there besides its usual answer: {@code ifc}, {@code bcf}, or both with a comma between them.
 *
 * <p>A password is taken from the file only where nobody but its owner can read the file. Else environment variables
 * {@code SEAMLEDGER_USER_NAME} and {@code SEAMLEDGER_PASSWORD_NAME} give both, NAME being the server's in capitals with {@code _} for
 * {@code -}; what stands there goes before the file.
 */
public final class KnownServers {

  /** What can be left with revisions besides ledger, report and changes. */
  public static final Set<String> ATTACHABLE = Set.of("bcf", "ifc");

  /** No server may be asked. */
  public static final KnownServers NONE = new KnownServers(Map.of());

  private final Map<String, ServerAccess> byName;

  private KnownServers(Map<String, ServerAccess> byName) {
    this.byName = Collections.unmodifiableMap(new TreeMap<>(byName));
  }

  /**
   * Reads a list, and user names and passwords from the process's environment.
   *
   * @throws ServerListException where it can't be read or something in it is wrong
   */
  public static KnownServers read(Path file) {
    return read(file, System::getenv);
  }

  /** Reads a list with another environment: a variable's name to its value or null. */
  static KnownServers read(Path file, UnaryOperator<String> environment) {
    return new KnownServers(new ServerList(file, environment).read());
  }

  /** What the operator wants left with revisions there: of {@link #ATTACHABLE}. */
  public Set<String> attached(String name) {
    return byName.containsKey(name) ? byName.get(name).attached() : Set.of();
  }

  /** What the operator calls them, in alphabetical order. */
  public List<String> names() {
    return List.copyOf(byName.keySet());
  }

  /**
   * Where a server is, for people; holds no secret.
   *
   * @throws ModelServerException where the list has no server of that name
   */
  public String address(String name) {
    return access(name).url().toString();
  }

  /**
   * Who logs in there; the empty string where the list does not say.
   *
   * @throws ModelServerException where the list has no server of that name
   */
  public String user(String name) {
    return access(name).user();
  }

  /**
   * Logs in. The caller closes it.
   *
   * @throws ModelServerException where the list has no server of that name, or the login fails
   */
  public ModelServer connect(String name) {
    return BimServer.login(access(name));
  }

  private ServerAccess access(String name) {
    ServerAccess access = byName.get(name);
    if (access == null) {
      throw new ModelServerException(ModelServerException.Reason.NOT_FOUND,
          byName.isEmpty() ? "no list of servers was given, so no server may be asked"
              : "the list of servers has none named " + Lines.quote(name) + "; it has " + String.join(", ", byName.keySet()));
    }
    return access;
  }

  @Override
  public String toString() {
    return byName.values().toString();
  }
}
