package org.seamledger.http.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.http.answer.Names;
import org.seamledger.http.setting.Limits;
import org.seamledger.ledger.ProjectPrices;
import org.seamledger.ledger.Store;
import org.seamledger.order.PriceFormatException;
import org.seamledger.order.PriceList;

/** The price list that a project keeps: comma-separated values, checked before anything is stored. */
public final class PricesApi {

  private final Store store;
  private final Limits limits;

  public PricesApi(Store store, Limits limits) {
    this.store = store;
    this.limits = limits;
  }

  public void install(RoutesConfig routes) {
    routes.get("/api/projects/{id}/prices", this::get);
    routes.put("/api/projects/{id}/prices", this::put);
    routes.delete("/api/projects/{id}/prices", ctx -> {
      store.prices().remove(store.analyses().project(ctx.pathParam("id")).id());
      ctx.status(204);
    });
  }

  /** The prices of a project, as they apply to an order; empty where it has none. */
  static Optional<PriceList> of(Store store, String project) {
    return store.prices().of(project).map(p -> PriceList.parse(p.text(), p.name()));
  }

  private void get(Context ctx) {
    ProjectPrices.Stored prices = store.prices().of(store.analyses().project(ctx.pathParam("id")).id())
        .orElseThrow(() -> HttpProblem.notFound("This project has no prices."));
    ctx.header("Cache-Control", "no-cache").result(prices.text()).contentType("text/csv; charset=utf-8");
  }

  private void put(Context ctx) throws IOException {
    String project = store.analyses().project(ctx.pathParam("id")).id();
    byte[] bytes = ctx.bodyInputStream().readNBytes(limits.bodyBytes() + 1);
    if (bytes.length > limits.bodyBytes()) {
      throw new HttpProblem(413, "body/too-large", "The price list has more than " + limits.bodyBytes() + " bytes.");
    }
    String query = ctx.queryParam("name");
    String name = Names.clean(query == null || query.isBlank() ? "prices.csv" : query);
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      PriceList prices = PriceList.parse(text, name);
      store.prices().put(project, name, text);
      JsonBodies.answer(ctx, 200, JsonBodies.object("name", name, "currency", prices.currency(), "prices", prices.rows().size()));
    } catch (PriceFormatException e) {
      throw new HttpProblem(422, "prices/invalid", e.getMessage());
    } catch (CharacterCodingException e) {
      throw new HttpProblem(422, "prices/invalid", name + ": expected text in UTF-8, found other bytes");
    }
  }
}
