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
import org.seamledger.finding.Sha256;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.setting.Options;

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

  AccessGuard(Options options) {
    token = options.token();
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

  static boolean isLoopback(String address) {
    try {
      return InetAddress.getByName(address).isLoopbackAddress();
    } catch (UnknownHostException e) {
      throw new IllegalArgumentException("There is no address called " + address + " on this machine.", e);
    }
  }

  void check(Context ctx) {
    checkHost(ctx);
    checkOrigin(ctx);
    if (token.isPresent() && (ctx.path().startsWith("/api") || ctx.path().startsWith("/metrics")) && !OPEN.contains(ctx.path()) && !shows(ctx)) {
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
    String header = ctx.header("Authorization");
    boolean byHeader = header != null && header.startsWith("Bearer ") && matches(header.substring(7).strip());
    String cookie = ctx.cookie(COOKIE);
    return byHeader || cookie != null && same(cookie, session());
  }

  private boolean matches(String shown) {
    return token.isPresent() && same(shown, token.get());
  }

  /** Compares without telling by its duration how much was right. */
  private static boolean same(String a, String b) {
    return MessageDigest.isEqual(a.getBytes(StandardCharsets.UTF_8), b.getBytes(StandardCharsets.UTF_8));
  }

  /** What the cookie holds: who reads it in a browser still does not know the token. */
  private String session() {
    return Sha256.hex(("seamledger session " + token.orElseThrow()).getBytes(StandardCharsets.UTF_8));
  }

  /** Lets a browser in that showed the token once, because an event stream cannot send headers. */
  void openSession(Context ctx, String shown) {
    if (!matches(shown)) {
      throw new HttpProblem(401, "token", "That is not this server's token.");
    }
    Cookie cookie = new Cookie(COOKIE, session());
    cookie.setHttpOnly(true);
    cookie.setPath("/");
    cookie.setSameSite(SameSite.STRICT);
    cookie.setSecure("https".equals(ctx.scheme()));
    ctx.cookie(cookie);
  }
}
