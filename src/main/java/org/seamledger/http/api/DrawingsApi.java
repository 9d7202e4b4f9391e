package org.seamledger.http.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.http.answer.CachedBodies;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.http.answer.PageFiles;
import org.seamledger.http.job.DrawingBoard;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.order.PriceList;
import org.seamledger.order.Subtotals;
import org.seamledger.run.Result;
import org.seamledger.takeoff.UnusableFileException;

/** A result on paper: its drawings to scale, the roof plan and the section through any junction's detail; the cut list; the report. */
public final class DrawingsApi {

  private static final String SVG = "image/svg+xml; charset=utf-8";
  private static final String HTML = "text/html; charset=utf-8";
  private static final String CSV = "text/csv; charset=utf-8";
  private static final String TEXT = "text/plain; charset=utf-8";
  /** A drawing that is opened by itself may use its own style sheet, and nothing else: no script, no other address. */
  static final String POLICY =
      "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

  private final Store store;
  private final DrawingBoard board;
  private final String program;

  public DrawingsApi(Store store, DrawingBoard board, String program) {
    this.store = store;
    this.board = board;
    this.program = program;
  }

  public void install(RoutesConfig routes) {
    routes.get("/api/analyses/{id}/plan.svg", ctx -> {
      SheetSetup setup = SheetRequest.setup(ctx);
      int sheet = SheetRequest.sheet(ctx);
      answer(ctx, "plan " + setup + sheet, SVG,
          d -> d.plan(setup, sheet).orElseThrow(() -> HttpProblem.notFound("This plan has no sheet " + sheet + ".")));
    });
    routes.get("/api/analyses/{id}/profiles.svg", ctx -> {
      SheetSetup setup = SheetRequest.setup(ctx);
      int sheet = SheetRequest.sheet(ctx);
      answer(ctx, "profiles " + setup + sheet, SVG,
          d -> d.profiles(setup, sheet).orElseThrow(() -> HttpProblem.notFound("There is no sheet " + sheet + " of trims.")));
    });
    routes.get("/api/analyses/{id}/plan.html", ctx -> {
      SheetSetup setup = SheetRequest.setup(ctx);
      answer(ctx, "plan document " + setup, HTML, d -> d.planDocument(setup));
    });
    routes.get("/api/analyses/{id}/cuts.csv", ctx -> answer(ctx, "cuts", CSV, Result::cutList));
    routes.get("/api/analyses/{id}/junctions.csv", ctx -> answer(ctx, "junctions", CSV, Result::junctions));
    routes.get("/api/analyses/{id}/order.csv", ctx -> priced(ctx, "order", Result::order));
    routes.get("/api/analyses/{id}/subtotals.csv", ctx -> {
      Subtotals.By by = by(ctx.queryParam("by"));
      priced(ctx, "subtotals " + by, (result, prices) -> result.subtotals(by, prices));
    });
    routes.get("/api/analyses/{id}/report.txt", ctx -> answer(ctx, "report", TEXT,
        d -> d.report().orElseThrow(() -> HttpProblem.notFound("This analysis has no report."))));
    routes.get("/api/analyses/{id}/surroundings", ctx -> answer(ctx, "surroundings", "application/json",
        d -> d.surroundings().orElseThrow(() -> HttpProblem.notFound("Of what stands near this roof nothing is known."))));
    routes.get("/api/analyses/{id}/sections/{junction}.svg", ctx -> {
      String junction = ctx.pathParam("junction");
      SheetSetup setup = SheetRequest.setup(ctx);
      String detail = ctx.queryParam("detail");
      BiFunction<StoredAnalysis, String, Optional<String>> stored =
          (analysis, hash) -> detail == null ? board.section(analysis, hash, junction, setup) : Optional.empty();
      answer(ctx, junction + ' ' + setup + ' ' + detail, SVG, stored,
          d -> (detail == null ? d.section(junction, setup) : d.section(junction, detail, setup))
              .orElseThrow(() -> HttpProblem.notFound("This analysis has no junction of that id, or its rules no such detail.")));
    });
    routes.get("/api/analyses/{id}/junctions/{junction}/details", this::details);
  }

  /** Details for a junction, those that fit it first. */
  private void details(Context ctx) {
    String junction = ctx.pathParam("junction");
    String kind = Objects.requireNonNullElse(ctx.queryParam("kind"), "");
    answer(ctx, "details " + junction + ' ' + kind, "application/json", d -> JsonBodies.text(Map.of("details", d.details(junction, kind)
        .orElseThrow(() -> HttpProblem.notFound("This analysis has no junction of that id, or its rules no such kind.")))));
  }

  /** With the prices of the analysis's project. */
  private void priced(Context ctx, String what, BiFunction<Result, Optional<PriceList>, String> write) {
    String project = store.analyses().get(ctx.pathParam("id")).project();
    Optional<PriceList> prices = PricesApi.of(store, project);
    String stated = store.prices().of(project).map(p -> p.updated() + ' ' + p.name() + ' ' + p.text()).orElse("");
    answer(ctx, what + ' ' + stated, CSV, result -> write.apply(result, prices));
  }

  private static Subtotals.By by(String word) {
    return Arrays.stream(Subtotals.By.values()).filter(b -> b.word().equals(word)).findFirst()
        .orElseThrow(() -> HttpProblem.badRequest("query/by", "by must be one of "
            + Arrays.stream(Subtotals.By.values()).map(Subtotals.By::word).collect(Collectors.joining(", ")) + ", such as ?by=kind."));
  }

  private void answer(Context ctx, String what, String type, Function<Result, String> write) {
    answer(ctx, what, type, (analysis, hash) -> Optional.empty(), write);
  }

  /** @param stored the text by an analysis and the hash of its result, where it can be had without the result itself */
  private void answer(Context ctx, String what, String type, BiFunction<StoredAnalysis, String, Optional<String>> stored,
      Function<Result, String> write) {
    StoredAnalysis analysis = store.analyses().get(ctx.pathParam("id"));
    String hash = store.analyses().ledgerHash(analysis.id());
    String etag = PageFiles.etag((program + ' ' + hash + ' ' + what).getBytes(StandardCharsets.UTF_8));
    ctx.header("Cache-Control", "no-cache").header("Content-Security-Policy", POLICY);
    if (CachedBodies.has(ctx.header("If-None-Match"), etag)) {
      ctx.header("ETag", etag).header("Vary", "Accept-Encoding").status(304);
      return;
    }
    byte[] text = stored.apply(analysis, hash).orElseGet(() -> written(write, board.of(analysis, hash)))
        .getBytes(StandardCharsets.UTF_8);
    CachedBodies.send(ctx, text, CachedBodies.takesGzip(ctx) ? PageFiles.gzip(text) : text, etag, type);
  }

  /** What needs the rules once more finds them changed, or gone. */
  private static String written(Function<Result, String> write, Result result) {
    try {
      return write.apply(result);
    } catch (UnusableFileException e) {
      throw new HttpProblem(409, "rules/changed", e.getMessage());
    }
  }
}
