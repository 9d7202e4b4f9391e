package org.seamledger.http.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Semaphore;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.submittal.SubmittalSetup;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.job.DrawingBoard;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;
import org.seamledger.run.FindingReviews;
import org.seamledger.run.HandoverForm;
import org.seamledger.run.Result;
import org.seamledger.source.ModelFile;

/** A result in the forms that other programs read, with what people said about its findings. */
public final class HandoverApi {

  private static final String WORKBOOK = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
  private static final int COPIES_AT_ONCE = 2;

  private final Store store;
  private final DrawingBoard board;
  private final Path scratch;
  private final Semaphore copying = new Semaphore(COPIES_AT_ONCE);

  /** @param scratch folder for what is being written */
  public HandoverApi(Store store, DrawingBoard board, Path scratch) {
    this.store = store;
    this.board = board;
    this.scratch = scratch;
  }

  public void install(RoutesConfig routes) {
    for (HandoverForm form : HandoverForm.values()) {
      routes.get("/api/analyses/{id}/" + form.file(), ctx -> {
        StoredAnalysis analysis = store.analyses().get(ctx.pathParam("id"));
        byte[] bytes = result(analysis).handedOn(form, reviews(analysis.id())).orElseThrow(HandoverApi::none);
        attach(ctx, form.file(), form.type()).result(bytes);
      });
    }
    routes.get("/api/analyses/{id}/submittal.pdf", this::submittal);
    routes.get("/api/analyses/{id}/workbook.xlsx", this::workbook);
    routes.get("/api/analyses/{id}/copies/{model}", this::copy);
  }

  private Result result(StoredAnalysis analysis) {
    return board.of(analysis, store.analyses().ledgerHash(analysis.id()));
  }

  private static HttpProblem none() {
    return HttpProblem.notFound("This analysis has no such form.");
  }

  private FindingReviews reviews(String analysis) {
    return FindingReviews.of(store.reviews(), analysis);
  }

  private static Context attach(Context ctx, String file, String type) {
    String plain = file.replaceAll("[^\\x20-\\x7E]|[\"\\\\%]", "_");
    String exact = URLEncoder.encode(file, StandardCharsets.UTF_8).replace("+", "%20");
    return ctx.header("Cache-Control", "no-cache").contentType(type).header("Content-Disposition",
        "attachment; filename=\"" + plain + "\"" + (plain.equals(file) ? "" : "; filename*=UTF-8''" + exact));
  }

  private void submittal(Context ctx) {
    StoredAnalysis analysis = store.analyses().get(ctx.pathParam("id"));
    SubmittalSetup setup = SheetRequest.submittal(ctx, PricesApi.of(store, analysis.project()));
    Result result = result(analysis);
    byte[] bytes = board.inTurn(() -> result.submittal(setup, reviews(analysis.id()))).orElseThrow(HandoverApi::none);
    attach(ctx, "submittal.pdf", "application/pdf").result(bytes);
  }

  /** With the prices of the analysis's project, in the units that {@code ?units=} names. */
  private void workbook(Context ctx) {
    StoredAnalysis analysis = store.analyses().get(ctx.pathParam("id"));
    String word = ctx.queryParam("units") == null ? DrawingUnits.BOTH.word() : ctx.queryParam("units");
    DrawingUnits units = DrawingUnits.of(word)
        .orElseThrow(() -> HttpProblem.badRequest("query/units", "units is one of " + DrawingUnits.choices() + "."));
    byte[] bytes = result(analysis).workbook(PricesApi.of(store, analysis.project()), units, reviews(analysis.id()))
        .orElseThrow(HandoverApi::none);
    attach(ctx, "workbook.xlsx", WORKBOOK).result(bytes);
  }

  /** The copy of one of its models, counted from 1, with the answers in it. */
  private void copy(Context ctx) throws IOException {
    StoredAnalysis analysis = store.analyses().get(ctx.pathParam("id"));
    List<StoredFile> models = new ArrayList<>(analysis.files().stream().filter(StoredFile::isModel).toList());
    String number = ctx.pathParam("model");
    if (!number.matches("[1-9][0-9]{0,3}") || Integer.parseInt(number) > models.size()) {
      throw HttpProblem.notFound("This analysis has " + models.size() + " models, counted from 1; there is no model " + number + ".");
    }
    Result result = result(analysis);
    if (!copying.tryAcquire()) {
      throw new HttpProblem(503, "busy", "The server is writing other copies of models; try again in a minute.");
    }
    try {
      int place = Integer.parseInt(number) - 1;
      Path made = made(result, place, models.get(place), reviews(analysis.id()));
      attach(ctx, models.get(place).name(), "application/octet-stream")
          .result(Files.newInputStream(made, StandardOpenOption.DELETE_ON_CLOSE));
    } finally {
      copying.release();
    }
  }

  private Path made(Result result, int place, StoredFile model, FindingReviews reviews) throws IOException {
    store.has(model);
    Files.createDirectories(scratch);
    Path file = Files.createTempFile(scratch, "copy", ".ifc");
    boolean kept = false;
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
      kept = result.copy(place, new ModelFile(Path.of(model.path()), model.name()), reviews, out);
    } catch (UnreadableModelException e) {
      throw new HttpProblem(409, "copy/impossible", e.getMessage());
    } finally {
      if (!kept) {
        Files.deleteIfExists(file);
      }
    }
    if (!kept) {
      throw none();
    }
    return file;
  }
}
