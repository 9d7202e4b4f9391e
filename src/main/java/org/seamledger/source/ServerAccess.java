package org.seamledger.source;

import java.net.URI;
import java.util.Locale;
import java.util.Set;

/**
 * What it takes to log in to a server. Not a record, whose text would show the password.
 */
final class ServerAccess {

  private final String name;
  private final URI url;
  private final String user;
  private final String password;
  private final ServerLimits limits;
  private final String place;
  private final Set<String> attached;

  /** @param attached what is left with revisions there besides the ledger: of {@link KnownServers#ATTACHABLE} */
  ServerAccess(String name, URI url, String user, String password, ServerLimits limits, String place, Set<String> attached) {
    this.attached = Set.copyOf(attached);
    this.place = place;
    this.name = name;
    this.url = url;
    this.user = user;
    this.password = password;
    this.limits = limits;
  }

  /** What the operator calls the server. */
  String name() {
    return name;
  }

  /** Without a slash at its end. */
  URI url() {
    return url;
  }

  String user() {
    return user;
  }

  String password() {
    return password;
  }

  Set<String> attached() {
    return attached;
  }

  ServerLimits limits() {
    return limits;
  }

  /** What is said where nobody can log in because the list lacks the user or the password. */
  ModelServerException notSetUp() {
    String key = user.isEmpty() ? "user" : "password";
    String variable = user.isEmpty() ? ServerList.userVariable(name) : ServerList.passwordVariable(name);
    return new ModelServerException(ModelServerException.Reason.NOT_SET_UP,
        place + ": expected a " + key + " for server " + name + ", as " + name
            + "." + key + " here or as " + variable + " in the environment, found neither");
  }

  /** For messages: the operator's name and the place, without anything secret. */
  @Override
  public String toString() {
    return name + " (" + url + ")";
  }

  /** Whether what goes to that host never leaves this machine. By the name alone: looking it up could give anything. */
  static boolean isLoopback(String host) {
    String plain = host.toLowerCase(Locale.ROOT);
    return plain.equals("localhost") || plain.equals("[::1]") || plain.matches("127\\.\\d{1,3}\\.\\d{1,3}\\.\\d{1,3}");
  }
}
