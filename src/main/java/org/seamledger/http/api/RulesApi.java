package org.seamledger.http.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.export.ChangesJson;
import org.seamledger.finding.Sha256;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.http.job.DrawingBoard;
import org.seamledger.http.job.Recent;
import org.seamledger.ledger.ComparedResult;
import org.seamledger.ledger.Comparison;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.progress.Progress;
import org.seamledger.run.Analyzer;
import org.seamledger.run.Result;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.RuleBook;
import org.seamledger.takeoff.UnusableFileException;

/**
 * The rules in view: to read, to try with other limits or other files on a roof and on the samples, and to save as a folder. Nothing that
 * is tried is kept, and no rule of the server changes.
 */
public final class RulesApi {

  /** Texts of all files together; those of the program have a quarter of it. */
  private static final int MOST_BYTES = 1 << 20;
  private static final int MOST_FILES = 1000;
  private static final int MOST_LIMITS = 500;

  private final Store store;
  private final DrawingBoard board;
  private final Analyzer<Result> analyzer;
  private final Samples samples;
  private final Path scratch;
  private final Recent<Map<String, Object>> views = new Recent<>();
  private final Recent<ComparedResult> asTheyAre = new Recent<>();

  /** @param scratch folder for rules while they are tried */
  public RulesApi(Store store, DrawingBoard board, Analyzer<Result> analyzer, Samples samples, Path scratch) {
    this.store = store;
    this.board = board;
    this.analyzer = analyzer;
    this.samples = samples;
    this.scratch = scratch;
  }

  public void install(RoutesConfig routes) {
    routes.get("/api/rules", ctx -> JsonBodies.answer(ctx, 200, view(current())));
    routes.post("/api/rules", ctx -> JsonBodies.answer(ctx, 200, view(wanted(ctx))));
    routes.post("/api/rules/folder", this::folder);
    routes.post("/api/rules/archive", this::unpacked);
    routes.post("/api/analyses/{id}/rules", this::onRoof);
    routes.post("/api/samples/{name}/rules", this::onSample);
  }

  private RuleBook current() {
    return usable(() -> analyzer.ruleBook().orElseThrow(() -> HttpProblem.notFound("This server has no rules to show.")));
  }

  private interface Reading<T> {
    T read() throws UnusableFileException;
  }

  private static <T> T usable(Reading<T> reading) {
    try {
      return reading.read();
    } catch (UnusableFileException e) {
      throw new HttpProblem(422, "rules/broken", e.getMessage());
    }
  }

  /** The rules with what the request changes. */
  private RuleBook wanted(Context ctx) throws IOException {
    JsonNode body = JsonBodies.body(ctx, 2 * MOST_BYTES);
    Map<String, String> files = texts(body.path("files"), "files", MOST_FILES);
    Map<String, String> limits = texts(body.path("limits"), "limits", MOST_LIMITS);
    if (files.values().stream().mapToLong(String::length).sum() > MOST_BYTES) {
      throw new HttpProblem(413, "body/too-large", "The files of the rules have more than " + MOST_BYTES + " bytes together.");
    }
    return usable(() -> current().with(files, limits));
  }

  private static Map<String, String> texts(JsonNode node, String name, int most) {
    Map<String, String> texts = new TreeMap<>();
    if (node.isMissingNode() || node.isNull()) {
      return texts;
    }
    if (!node.isObject() || node.size() > most) {
      throw HttpProblem.badRequest("body/value", name + " must be an object of at most " + most + " texts.");
    }
    node.fieldNames().forEachRemaining(field -> texts.put(field, JsonBodies.text(node, field)));
    return texts;
  }

  private Map<String, Object> view(RuleBook book) {
    // Examples decide nothing on a roof, and so are no part of what identifies the rules.
    String key = book.hash() + ' ' + HexFormat.of().formatHex(Sha256.of(String.valueOf(book.own())));
    Map<String, Object> known = views.get(key);
    if (known != null) {
      return known;
    }
    Map<String, Object> view = board.inTurn(() -> usable(() -> JsonBodies.object("hash", book.hash(), "files", book.texts().keySet(),
        "own", book.own().keySet(), "entries", book.entries(), "limits", book.limits(), "examples", book.examples(),
        "samples", samples.list().stream().map(s -> s.get("name")).toList())));
    views.put(key, view);
    return view;
  }

  /** The texts of an archive, to be tried like files that were handed one by one. */
  private void unpacked(Context ctx) throws IOException {
    byte[] archive = ctx.bodyInputStream().readNBytes(MOST_BYTES + 1);
    if (archive.length > MOST_BYTES) {
      throw new HttpProblem(413, "body/too-large", "The archive has more than " + MOST_BYTES + " bytes.");
    }
    JsonBodies.answer(ctx, 200, JsonBodies.object("files", RulesArchive.read(archive, MOST_BYTES)));
  }

  /** An archive of the files that differ from the program's own, an office's examples too. */
  private void folder(Context ctx) throws IOException {
    RuleBook book = wanted(ctx);
    ctx.header("Cache-Control", "no-cache").header("Content-Disposition", "attachment; filename=\"shapes.zip\"")
        .contentType("application/zip").result(RulesArchive.written(book.own().isEmpty() ? book.texts() : book.own()));
  }

  private void onRoof(Context ctx) throws IOException {
    StoredAnalysis analysis = store.analyses().get(ctx.pathParam("id"));
    String hash = store.analyses().ledgerHash(analysis.id());
    RuleBook book = wanted(ctx);
    ComparedResult before = compared(board.of(analysis, hash), analysis.title());
    compare(ctx, before, compared(tried(book, rules -> board.underRules(analysis, rules)), analysis.title()));
  }

  private void onSample(Context ctx) throws IOException {
    String name = ctx.pathParam("name");
    Inputs inputs = Inputs.ofFiles(List.of(Path.of(samples.file(name).path())));
    RuleBook book = wanted(ctx);
    String key = name + ' ' + analyzer.rules();
    ComparedResult before = asTheyAre.get(key);
    if (before == null) {
      before = compared(board.inTurn(() -> analyzer.run(inputs, Progress.NONE).orThrow()), name);
      asTheyAre.put(key, before);
    }
    compare(ctx, before, compared(
        tried(book, rules -> board.inTurn(() -> analyzer.under(rules).run(inputs, Progress.NONE).orThrow())), name));
  }

  private interface Trial {
    Result under(Path rules) throws IOException;
  }

  /** Runs something by rules that lie in a folder for just as long. */
  private Result tried(RuleBook book, Trial trial) throws IOException {
    Files.createDirectories(scratch);
    Path folder = Files.createTempDirectory(scratch, "rules-");
    try {
      book.write(folder);
      return usable(() -> {
        try {
          return trial.under(folder);
        } catch (IOException e) {
          throw new java.io.UncheckedIOException(e);
        }
      });
    } finally {
      for (String name : book.texts().keySet()) {
        Files.deleteIfExists(folder.resolve(name));
      }
      Files.deleteIfExists(folder);
    }
  }

  private static ComparedResult compared(Result result, String name) throws IOException {
    ByteArrayOutputStream json = new ByteArrayOutputStream();
    result.writeLedger(json);
    return ComparedResult.read(new ByteArrayInputStream(json.toByteArray()), name);
  }

  private static void compare(Context ctx, ComparedResult before, ComparedResult after) throws IOException {
    ByteArrayOutputStream json = new ByteArrayOutputStream();
    ChangesJson.write(new ChangesJson.Compared("current", "the rules as they are"), new ChangesJson.Compared("tried", "the rules tried"),
        Comparison.of(before, after), List.of(), json);
    ctx.header("Cache-Control", "no-cache").contentType("application/json").result(json.toByteArray());
  }
}
