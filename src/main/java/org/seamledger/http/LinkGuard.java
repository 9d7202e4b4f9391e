package org.seamledger.http;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.api.LinkGrant;
import org.seamledger.ledger.SiteLinks;
import org.seamledger.ledger.Store;

/**
 * Lets those in who show a link to one roof, and to nothing else: what is not named here is refused, so that an address which is added to
 * the service is closed to links until somebody opens it. What an event may say is looked at where it is taken.
 */
final class LinkGuard {

  private static final String SCHEME = "Bearer ";
  private static final String OF_ANALYSIS = "/api/analyses/([^/]+)";
  /** What a link's holder may ask for, by method; the first group is the analysis, which has to be one of the link's roof. */
  private static final Map<String, List<Pattern>> OPEN = Map.of(
      "GET", List.of(Pattern.compile(OF_ANALYSIS + "/(?:roof|sequence|record|record\\.json|record\\.pdf|record/photos/[^/]+)"),
          Pattern.compile(OF_ANALYSIS + "/sections/[^/]+\\.svg"), Pattern.compile("/api/(link)")),
      "PUT", List.of(Pattern.compile(OF_ANALYSIS + "/record/(?:events|photos)/[^/]+")));

  private final Store store;
  private final AccessGuard guard;
  private final Clock clock;

  LinkGuard(Store store, AccessGuard guard, Clock clock) {
    this.store = store;
    this.guard = guard;
    this.clock = clock;
  }

  /**
   * Whether a request shows a link, which then was looked at.
   *
   * @throws HttpProblem where the link is wrong or has ended, or does not lead there
   */
  boolean admits(Context ctx) {
    String header = ctx.header("Authorization");
    if (header == null || !header.startsWith(SCHEME + SiteLinks.PREFIX) || !ctx.path().startsWith("/api/")) {
      return false;
    }
    SiteLinks.Link link = guard.guessed(ctx, () -> store.links().find(header.substring(SCHEME.length()).strip()))
        .orElseThrow(() -> new HttpProblem(401, "link/unknown", "There is no such link."));
    if (!link.isValid(clock.instant())) {
      throw new HttpProblem(401, "link/ended", link.revoked().isEmpty() ? "This link ended on " + link.expires() + "; ask for another."
          : "This link was revoked; ask who made it.");
    }
    if (!leads(ctx, link)) {
      throw new HttpProblem(403, "link/elsewhere", "This link leads to one roof and its record, and nowhere else.");
    }
    LinkGrant.set(ctx, link);
    return true;
  }

  private boolean leads(Context ctx, SiteLinks.Link link) {
    String method = ctx.req().getMethod().equals("HEAD") ? "GET" : ctx.req().getMethod();
    Optional<Matcher> match =
        OPEN.getOrDefault(method, List.of()).stream().map(p -> p.matcher(ctx.path())).filter(Matcher::matches).findFirst();
    return match.isPresent() && (match.get().group(1).equals("link") || store.analyses().isOf(match.get().group(1), link.project()));
  }
}
