package org.seamledger.http.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.seamledger.export.AlternatesCsv;
import org.seamledger.export.AlternatesJson;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.http.job.DrawingBoard;
import org.seamledger.http.setting.Limits;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.order.Alternate;
import org.seamledger.order.AlternateComparison;
import org.seamledger.order.PriceList;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.SystemChange;
import org.seamledger.quantity.SystemField;
import org.seamledger.quantity.SystemForm;
import org.seamledger.quantity.SystemFormatException;
import org.seamledger.run.Result;

/**
 * One roof under several systems side by side, and what the values of a system are. The first alternate is the analysis itself. All
 * systems are read before anything is computed, and nothing of them is kept.
 */
public final class AlternatesApi {

  private static final int MOST = 5;
  private static final int LONGEST_NAME = 100;

  private final Store store;
  private final DrawingBoard board;
  private final Limits limits;
  private final Path scratch;

  /** @param name of the alternate, and its system as JSON */
  private record Named(String name, String system) {
  }

  /** @param scratch folder for systems while they are used */
  public AlternatesApi(Store store, DrawingBoard board, Limits limits, Path scratch) {
    this.store = store;
    this.board = board;
    this.limits = limits;
    this.scratch = scratch;
  }

  public void install(RoutesConfig routes) {
    routes.post("/api/analyses/{id}/alternates", this::compare);
    routes.get("/api/system", ctx -> JsonBodies.answer(ctx, 200,
        JsonBodies.object("fields", SystemForm.fields().stream().map(AlternatesApi::field).toList())));
  }

  private static Map<String, Object> field(SystemField f) {
    return JsonBodies.object("path", f.path(), "type", f.type().word(), "usual", f.usual(), "what", f.what(), "min", f.min(), "max",
        f.max(),
        "choices", f.choices(), "meaning", f.meaning(), "source", f.source());
  }

  private void compare(Context ctx) throws IOException {
    StoredAnalysis analysis = store.analyses().get(ctx.pathParam("id"));
    JsonNode body = JsonBodies.body(ctx, limits.bodyBytes()).path("alternates");
    boolean asTable = "csv".equals(ctx.queryParam("format"));
    List<JsonNode> wanted = wanted(body);
    Result first = board.of(analysis, store.analyses().ledgerHash(analysis.id()));
    RoofSystem base = first.system().orElseThrow(() -> HttpProblem.notFound("This analysis has no order."));
    List<Named> systems = systems(wanted, base);
    Optional<PriceList> prices = PricesApi.of(store, analysis.project());
    List<Alternate> alternates = new ArrayList<>(List.of(first.alternate(base.name(), prices).orElseThrow()));
    for (Named system : systems) {
      alternates.add(under(analysis, system, prices));
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    AlternateComparison comparison = AlternateComparison.of(alternates);
    if (asTable) {
      AlternatesCsv.write(comparison, out);
    } else {
      AlternatesJson.write(comparison, out);
    }
    ctx.header("Cache-Control", "no-cache").result(out.toByteArray())
        .contentType(asTable ? "text/csv; charset=utf-8" : "application/json");
  }

  private static List<JsonNode> wanted(JsonNode list) {
    if (!list.isArray() || list.isEmpty() || list.size() > MOST) {
      throw HttpProblem.badRequest("body/value", "alternates must be a list of 1 to " + MOST + " systems to compare with this one.");
    }
    List<JsonNode> wanted = new ArrayList<>();
    for (JsonNode one : list) {
      String name = JsonBodies.text(one, "name");
      if (name.isBlank() || name.length() > LONGEST_NAME) {
        throw HttpProblem.badRequest("body/value", "Each alternate needs a name of at most " + LONGEST_NAME + " characters.");
      }
      if (!one.has("system") && !one.has("changes")) {
        throw HttpProblem.badRequest("body/value",
            name + " needs system, a whole one, or changes such as {\"panel.coverage\": \"18 in\"}.");
      }
      wanted.add(one);
    }
    return wanted;
  }

  /** Every system, right or refused. */
  private static List<Named> systems(List<JsonNode> wanted, RoofSystem base) {
    List<Named> systems = new ArrayList<>();
    Set<String> names = new HashSet<>(Set.of(base.name()));
    List<String> wrong = new ArrayList<>();
    for (JsonNode one : wanted) {
      String name = JsonBodies.text(one, "name").strip();
      if (!names.add(name)) {
        wrong.add("Two alternates are called \"" + name + "\".");
      }
      try {
        String json = system(one, name, base);
        RoofSystem.parse(json, name);
        systems.add(new Named(name, json));
      } catch (SystemFormatException e) {
        wrong.add(e.getMessage());
      }
    }
    if (!wrong.isEmpty()) {
      throw new HttpProblem(422, "system/invalid", String.join("\n", wrong));
    }
    return systems;
  }

  private static String system(JsonNode one, String name, RoofSystem base) {
    RoofSystem from = one.has("system") ? RoofSystem.parse(JsonBodies.text(one.path("system")), name) : base;
    Map<String, String> changes = new LinkedHashMap<>();
    JsonNode stated = one.path("changes");
    if (!stated.isMissingNode() && !stated.isObject()) {
      throw HttpProblem.badRequest("body/value", "changes must be an object such as {\"panel.coverage\": \"18 in\"}.");
    }
    stated.fieldNames().forEachRemaining(field -> changes.put(field, stated.path(field).asText()));
    return SystemChange.apply(from, name, changes, name);
  }

  private Alternate under(StoredAnalysis analysis, Named system, Optional<PriceList> prices) throws IOException {
    Files.createDirectories(scratch);
    Path file = Files.createTempFile(scratch, "alternate-", ".json");
    try {
      Files.writeString(file, system.system());
      return board.under(analysis, file).alternate(system.name(), prices).orElseThrow();
    } finally {
      Files.deleteIfExists(file);
    }
  }
}
