package org.seamledger.http.api;

import io.javalin.http.Context;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.journal.EventKind;
import org.seamledger.journal.LinkScope;
import org.seamledger.ledger.SiteLinks;

/** What a request may do: all of it where the operator sends it, what its link says where it shows one. */
public final class LinkGrant {

  private static final String NAME = "seamledger.link";
  /** In the place of a link's id in events that come from the operator's own side. */
  private static final String OPERATOR = "operator";

  private LinkGrant() {
  }

  /** Notes the link that a request shows. */
  public static void set(Context ctx, SiteLinks.Link link) {
    ctx.attribute(NAME, link);
  }

  static SiteLinks.Link of(Context ctx) {
    return ctx.attribute(NAME);
  }

  static LinkScope scope(Context ctx) {
    SiteLinks.Link link = of(ctx);
    return link == null ? LinkScope.SIGN : link.scope();
  }

  /** What stands for it in the record. */
  static String id(Context ctx) {
    SiteLinks.Link link = of(ctx);
    return link == null ? OPERATOR : link.id();
  }

  static void require(Context ctx, EventKind kind) {
    if (!scope(ctx).allows(kind)) {
      throw new HttpProblem(403, "link/scope", "This link lets its holder " + (scope(ctx) == LinkScope.VIEW ? "look" : "tick")
          + ", and no more; whoever made it can make another.");
    }
  }
}
