package org.seamledger.http;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.net.InetAddress;
import java.net.URI;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.SessionRows;

/**
 * Who may come in. A page of another site must not be able to use a server that listens on this machine, so a request must name a host that
 * is meant (against names that are made to point here), and must not come from another origin; off loopback it must show the token.
 */
final class AccessGuard {

  static final String COOKIE = "seamledger";
  private static final int SHORTEST_TOKEN = 16;
  private static final Set<String> SAFE = Set.of("GET", "HEAD", "OPTIONS");
  private static final Set<String> OPEN = Set.of("/api/health", "/api/session", "/openapi.json");

  private final Set<String> hosts = new TreeSet<>();
  private final Optional<String> token;
  private final Set<String> proxies;
  private volatile Sessions sessions = new OwnSessions(System::nanoTime);
  private final GuessBrake brake = new GuessBrake(System::nanoTime);

  AccessGuard(Options options) {
    token = options.token();
    proxies = Set.copyOf(options.proxies());
    if (token.isPresent() && token.get().length() < SHORTEST_TOKEN) {
      throw new IllegalArgumentException("The token must have at least " + SHORTEST_TOKEN + " characters.");
    }
    if (token.isEmpty() && !isLoopback(options.bind())) {
      throw new IllegalArgumentException("To listen on " + options.bind() + ", which others can reach, a token is needed.");
    }
    hosts.add("localhost");
    hosts.add("127.0.0.1");
    hosts.add("[::1]");
    hosts.add(options.bind().contains(":") ? "[" + options.bind().toLowerCase(Locale.ROOT) + "]" : options.bind().toLowerCase(Locale.ROOT));
    options.hosts().forEach(h -> hosts.add(h.toLowerCase(Locale.ROOT)));
  }

  /** From now on sessions are those of all servers that share the rows. */
  void share(SessionRows rows) {
    sessions = new SharedSessions(rows);
  }

  static boolean isLoopback(String address) {
    try {
      return InetAddress.getByName(address).isLoopbackAddress();
    } catch (UnknownHostException e) {
      throw new IllegalArgumentException("There is no address called " + address + " on this machine.", e);
    }
  }

  /** Whether the request may come from where it comes from, whoever sends it. */
  void checkSource(Context ctx) {
    checkHost(ctx);
    checkOrigin(ctx);
  }

  /** Whether it shows the token, where one is needed. */
  void checkToken(Context ctx) {
    if (token.isPresent() && (ctx.path().startsWith("/api") || ctx.path().startsWith("/metrics")) && !OPEN.contains(ctx.path())
        && !shows(ctx)) {
      throw new HttpProblem(401, "token", "This server is open to those who show its token: as Authorization: Bearer, or on the page.");
    }
  }

  private void checkHost(Context ctx) {
    String host = ctx.header("Host");
    String name = host == null ? "" : host.replaceFirst(":\\d{1,5}$", "").toLowerCase(Locale.ROOT);
    boolean addressAllowed = token.isPresent() && name.matches("\\d{1,3}(\\.\\d{1,3}){3}|\\[[0-9a-f:.]+]");
    if (!hosts.contains(name) && !addressAllowed) {
      throw new HttpProblem(421, "host", "This server does not answer to that host name.");
    }
  }

  private static void checkOrigin(Context ctx) {
    String origin = ctx.header("Origin");
    String site = ctx.header("Sec-Fetch-Site");
    boolean changes = !SAFE.contains(ctx.req().getMethod());
    if (origin != null && (changes || !origin.equals("null")) && !sameOrigin(origin, ctx.header("Host"))) {
      throw new HttpProblem(403, "origin", "Requests from pages of other sites are refused.");
    }
    if (changes && site != null && !site.equals("same-origin") && !site.equals("none")) {
      throw new HttpProblem(403, "origin", "Requests from pages of other sites are refused.");
    }
  }

  private static boolean sameOrigin(String origin, String host) {
    try {
      return host != null && host.equalsIgnoreCase(URI.create(origin).getRawAuthority());
    } catch (IllegalArgumentException e) {
      return false;
    }
  }

  private boolean shows(Context ctx) {
    String cookie = ctx.cookie(COOKIE);
    if (cookie != null && sessions.isOpen(cookie)) {
      return true;
    }
    String header = ctx.header("Authorization");
    return header != null && header.startsWith("Bearer ") && isToken(ctx, header.substring(7).strip());
  }

  private boolean isToken(Context ctx, String shown) {
    return guessed(ctx, () -> token.filter(t -> same(shown, t))).isPresent();
  }

  /** What a secret that is shown opens, empty where it is wrong; who guessed wrong too often is not heard for a while. */
  <T> Optional<T> guessed(Context ctx, Supplier<Optional<T>> opened) {
    String address = address(ctx);
    if (brake.holds(address)) {
      ctx.header("Retry-After", String.valueOf(GuessBrake.PAUSE.toSeconds()));
      throw new HttpProblem(429, "token/guessing", "Too many wrong tokens came from this address; wait a minute.");
    }
    Optional<T> found = opened.get();
    if (found.isEmpty()) {
      brake.wrong(address);
    }
    return found;
  }

  /** Where a request comes from: as the operator's own proxy says, and as nobody else does. */
  private String address(Context ctx) {
    String remote = ctx.req().getRemoteAddr();
    String forwarded = ctx.header("X-Forwarded-For");
    return proxies.contains(remote) && forwarded != null ? forwarded.substring(forwarded.lastIndexOf(',') + 1).strip() : remote;
  }

  private boolean isEncrypted(Context ctx) {
    return "https".equals(ctx.scheme())
        || proxies.contains(ctx.req().getRemoteAddr()) && "https".equalsIgnoreCase(ctx.header("X-Forwarded-Proto"));
  }

  /** Compares without telling by its duration how much was right. */
  private static boolean same(String a, String b) {
    return MessageDigest.isEqual(a.getBytes(StandardCharsets.UTF_8), b.getBytes(StandardCharsets.UTF_8));
  }

  /** Lets a browser in that showed the token once, because an event stream cannot send headers. */
  void openSession(Context ctx, String shown) {
    if (!isToken(ctx, shown)) {
      throw new HttpProblem(401, "token", "That is not this server's token.");
    }
    Cookie cookie = new Cookie(COOKIE, sessions.open());
    cookie.setHttpOnly(true);
    cookie.setPath("/");
    cookie.setSameSite(SameSite.STRICT);
    cookie.setSecure(isEncrypted(ctx));
    ctx.cookie(cookie);
  }

  /** Ends the session of the browser that asks. */
  void closeSession(Context ctx) {
    String cookie = ctx.cookie(COOKIE);
    if (cookie != null) {
      sessions.revoke(cookie);
    }
    ctx.removeCookie(COOKIE, "/");
  }
}
