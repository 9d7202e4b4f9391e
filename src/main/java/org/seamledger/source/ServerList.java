package org.seamledger.source;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.time.Duration;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;

/** Reads the operator's list of servers; {@link KnownServers} says what it looks like. */
final class ServerList {

  private static final long LARGEST = 1 << 20;
  private static final Set<String> KEYS = new TreeSet<>(List.of("url", "user", "password", "insecure", "connect-seconds", "answer-seconds",
      "download-seconds", "max-megabytes", "attach"));
  private static final Set<PosixFilePermission> OTHERS = EnumSet.of(PosixFilePermission.GROUP_READ, PosixFilePermission.GROUP_WRITE,
      PosixFilePermission.OTHERS_READ, PosixFilePermission.OTHERS_WRITE);

  /** A value and the line where it stands. */
  private static final class Entry {
    private final String value;
    private final int line;

    Entry(String value, int line) {
      this.value = value;
      this.line = line;
    }
  }

  private final Path file;
  private final UnaryOperator<String> environment;

  ServerList(Path file, UnaryOperator<String> environment) {
    this.file = file;
    this.environment = environment;
  }

  Map<String, ServerAccess> read() {
    Map<String, ServerAccess> servers = new TreeMap<>();
    Map<String, String> namesByVariable = new HashMap<>();
    entries().forEach((name, entries) -> {
      String twin = namesByVariable.put(variable(name), name);
      if (twin != null) {
        throw wrong(firstLine(entries), "servers " + twin + " and " + name + " would share the environment variable SEAMLEDGER_USER_"
            + variable(name));
      }
      servers.put(name, access(name, entries));
    });
    return servers;
  }

  private Map<String, Map<String, Entry>> entries() {
    Map<String, Map<String, Entry>> servers = new TreeMap<>();
    List<String> lines = lines();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i).strip();
      if (!line.isEmpty() && line.charAt(0) != '#') {
        add(servers, line, i + 1);
      }
    }
    return servers;
  }

  private List<String> lines() {
    try {
      if (Files.isDirectory(file)) {
        throw wrong(0, "expected a list of servers, found a folder");
      }
      if (Files.size(file) > LARGEST) {
        throw wrong(0, "a list of servers is no larger than " + LARGEST + " bytes, found one of " + Files.size(file));
      }
      return Files.readAllLines(file);
    } catch (NoSuchFileException e) {
      throw wrong(0, "there is no such list of servers");
    } catch (CharacterCodingException e) {
      throw wrong(0, "the list of servers is not text in UTF-8");
    } catch (AccessDeniedException e) {
      throw wrong(0, "expected a list of servers that this user may read, found one that is closed to them");
    } catch (IOException e) {
      throw wrong(0, "the list of servers can't be read (" + e.getClass().getSimpleName() + ")");
    }
  }

  /** What is wrong with a line is said without its value, which may be a password. */
  private void add(Map<String, Map<String, Entry>> servers, String line, int number) {
    int equals = line.indexOf('=');
    int dot = line.indexOf('.');
    if (equals < 0 || dot < 1 || dot > equals) {
      throw wrong(number, "expected name.key=value, such as office.url=https://models.example.org, found a line without "
          + (equals < 0 ? "=" : "a name and a point before the key"));
    }
    String name = line.substring(0, dot);
    String key = line.substring(dot + 1, equals).strip();
    if (!name.matches("[A-Za-z0-9_-]+")) {
      throw wrong(number, "a server's name is letters, digits, hyphens and underscores, found " + Lines.quote(name));
    }
    if (!KEYS.contains(key)) {
      throw wrong(number, "expected one of " + String.join(", ", KEYS) + " after \"" + name + ".\", found " + Lines.quote(key));
    }
    Entry entry = new Entry(line.substring(equals + 1).strip(), number);
    Entry before = servers.computeIfAbsent(name, n -> new TreeMap<>()).put(key, entry);
    if (before != null) {
      throw wrong(number, name + "." + key + " stands here a second time: expected each key once, found it at lines "
          + before.line + " and " + number);
    }
  }

  /** Of an address that is none only what can't hold a secret. */
  private static String found(String scheme, URI uri) {
    return uri.getScheme() == null ? "no scheme" : Set.of("http", "https").contains(scheme) ? "no host" : "scheme " + Lines.quote(scheme);
  }

  private ServerAccess access(String name, Map<String, Entry> entries) {
    Entry url = entries.get("url");
    if (url == null) {
      throw wrong(firstLine(entries), "server " + name + " has no " + name + ".url: expected a line such as " + name
          + ".url=https://models.example.org, found none");
    }
    URI address = address(url);
    if (address.getScheme().equals("http") && !ServerAccess.isLoopback(address.getHost()) && !isTrue(entries.get("insecure"))) {
      throw wrong(url.line, "a password would go over plain http to another machine; use https, or " + name
          + ".insecure=true where the network is trusted");
    }
    return new ServerAccess(name, address, credential(name, "user", entries), credential(name, "password", entries), limits(entries),
        file.getFileName() + ":" + url.line, attached(entries.get("attach")));
  }

  private URI address(Entry url) {
    try {
      URI uri = new URI(url.value.replaceAll("/+$", "")).parseServerAuthority();
      String scheme = String.valueOf(uri.getScheme()).toLowerCase(Locale.ROOT);
      if (!Set.of("http", "https").contains(scheme) || uri.getHost() == null) {
        throw wrong(url.line, "expected an address that begins with https:// or http:// and names a host, found " + found(scheme, uri));
      }
      if (uri.getRawUserInfo() != null || uri.getRawQuery() != null || uri.getRawFragment() != null) {
        throw wrong(url.line, "an address has no user, password, ? or # in it");
      }
      return new URI(scheme, null, uri.getHost(), uri.getPort(), uri.getPath(), null, null);
    } catch (URISyntaxException e) {
      throw wrong(url.line, "expected an address such as https://models.example.org/bimserver, found " + (url.value.isEmpty() ? "nothing"
          : "something that is none"));
    }
  }

  private Set<String> attached(Entry entry) {
    Set<String> words = entry == null ? Set.of() : new TreeSet<>(List.of(entry.value.strip().split("\\s*,\\s*")));
    if (!KnownServers.ATTACHABLE.containsAll(words)) {
      throw wrong(entry.line, "expected " + String.join(", ", new TreeSet<>(KnownServers.ATTACHABLE)) + ", or several with commas between"
          + " them, found " + Lines.quote(entry.value));
    }
    return words;
  }

  private boolean isTrue(Entry entry) {
    if (entry == null || entry.value.equals("false")) {
      return false;
    }
    if (entry.value.equals("true")) {
      return true;
    }
    throw wrong(entry.line, "expected true or false, found " + Lines.quote(entry.value));
  }

  /** From the environment, or else from the file; the empty string where it stands in neither. */
  private String credential(String name, String key, Map<String, Entry> entries) {
    Entry entry = entries.get(key);
    if (entry != null && key.equals("password") && isOpenToOthers()) {
      throw wrong(entry.line, "a password may only stand in a file that nobody but its owner can read or write (chmod 600); or set "
          + passwordVariable(name));
    }
    String outside = environment.apply("SEAMLEDGER_" + key.toUpperCase(Locale.ROOT) + "_" + variable(name));
    if (outside != null && !outside.isEmpty()) {
      return outside;
    }
    return entry == null ? "" : entry.value;
  }

  /** Where files have no such permissions nobody can tell, so a password does not belong there. */
  private boolean isOpenToOthers() {
    PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
    try {
      return view == null || view.readAttributes().permissions().stream().anyMatch(OTHERS::contains);
    } catch (IOException e) {
      return true;
    }
  }

  private ServerLimits limits(Map<String, Entry> entries) {
    ServerLimits usual = ServerLimits.DEFAULT;
    return new ServerLimits(seconds(entries.get("connect-seconds"), usual.connect()),
        seconds(entries.get("answer-seconds"), usual.answer()),
        seconds(entries.get("download-seconds"), usual.download()), bytes(entries.get("max-megabytes"), usual.bytes()));
  }

  private Duration seconds(Entry entry, Duration usual) {
    return entry == null ? usual : Duration.ofSeconds(number(entry, 604_800));
  }

  private long bytes(Entry entry, long usual) {
    return entry == null ? usual : number(entry, 1 << 20) * 1_000_000;
  }

  private long number(Entry entry, long most) {
    if (entry.value.matches("[0-9]{1,9}")) {
      long number = Long.parseLong(entry.value);
      if (number >= 1 && number <= most) {
        return number;
      }
    }
    throw wrong(entry.line, "expected a whole number from 1 to " + most + ", found " + Lines.quote(entry.value));
  }

  private static int firstLine(Map<String, Entry> entries) {
    return entries.values().stream().mapToInt(entry -> entry.line).min().orElse(0);
  }

  /** The environment variable that can hold a server's password. */
  static String passwordVariable(String name) {
    return "SEAMLEDGER_PASSWORD_" + variable(name);
  }

  /** The environment variable that can hold the name of a server's user. */
  static String userVariable(String name) {
    return "SEAMLEDGER_USER_" + variable(name);
  }

  private static String variable(String name) {
    return name.toUpperCase(Locale.ROOT).replace('-', '_');
  }

  private ServerListException wrong(int line, String what) {
    return new ServerListException(file.toString(), line, what);
  }
}
