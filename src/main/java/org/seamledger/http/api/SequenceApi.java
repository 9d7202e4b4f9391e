package org.seamledger.http.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.seamledger.export.crew.CrewRequest;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.http.answer.CachedBodies;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.Names;
import org.seamledger.http.answer.PageFiles;
import org.seamledger.http.job.DrawingBoard;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.run.Result;
import org.seamledger.run.SequenceForm;
import org.seamledger.weather.WeatherFormatException;
import org.seamledger.weather.WeatherSeries;
import org.seamledger.weather.WeatherWords;

/** The order of work of an analysis: without weather, in a weather by hand (query), or in that of a file (body of a POST). */
public final class SequenceApi {

  /** Bytes of a weather file: a year of hours has 1.9 MB. */
  private static final int LONGEST = 8 << 20;

  private final Store store;
  private final DrawingBoard board;

  public SequenceApi(Store store, DrawingBoard board) {
    this.store = store;
    this.board = board;
  }

  public void install(RoutesConfig routes) {
    routes.get("/api/analyses/{id}/sequence", ctx -> answer(ctx, byHand(ctx)));
    routes.post("/api/analyses/{id}/sequence", ctx -> {
      if (byHand(ctx).isPresent()) {
        throw HttpProblem.badRequest("query/weather", "The body is a file of weather, and the query states weather by hand: give one"
            + " of them.");
      }
      answer(ctx, Optional.of(file(ctx)));
    });
  }

  private void answer(Context ctx, Optional<WeatherSeries> weather) {
    StoredAnalysis analysis = store.analyses().get(ctx.pathParam("id"));
    SequenceForm form = form(ctx);
    SheetSetup sheets = SheetRequest.setup(ctx);
    try {
      CrewRequest request =
          new CrewRequest(number(ctx, "crew", 0), weather, word(ctx, "from"), number(ctx, "days", CrewRequest.DEFAULT.days()));
      Result result = board.of(analysis, store.analyses().ledgerHash(analysis.id()));
      byte[] bytes = (form == SequenceForm.PDF ? board.inTurn(() -> result.sequence(form, request, sheets))
          : result.sequence(form, request, sheets)).orElseThrow(() -> HttpProblem.notFound("Of this analysis no order of work is known."));
      ctx.header("Cache-Control", "no-cache");
      if (form == SequenceForm.SVG) {
        ctx.header("Content-Security-Policy", DrawingsApi.POLICY);
      }
      CachedBodies.send(ctx, bytes, CachedBodies.takesGzip(ctx) ? PageFiles.gzip(bytes) : bytes, PageFiles.etag(bytes), form.type());
    } catch (IllegalArgumentException e) {
      throw HttpProblem.badRequest("query/value", e.getMessage() + ".");
    }
  }

  private static SequenceForm form(Context ctx) {
    String word = word(ctx, "format").isEmpty() ? "json" : word(ctx, "format");
    return Arrays.stream(SequenceForm.values()).filter(f -> f.name().toLowerCase(Locale.ROOT).equals(word)).findFirst()
        .orElseThrow(() -> HttpProblem.badRequest("query/format", "format is json, text, svg or pdf."));
  }

  private static String word(Context ctx, String name) {
    String text = ctx.queryParam(name);
    return text == null ? "" : text.strip();
  }

  private static int number(Context ctx, String name, int otherwise) {
    String text = word(ctx, name);
    if (!text.isEmpty() && !text.matches("[1-9]\\d{0,5}")) {
      throw HttpProblem.badRequest("query/" + name, name + " is a number from 1.");
    }
    return text.isEmpty() ? otherwise : Integer.parseInt(text);
  }

  private static Optional<WeatherSeries> byHand(Context ctx) {
    Map<String, String> words = new TreeMap<>();
    WeatherWords.NAMES.stream().filter(n -> !word(ctx, n).isEmpty()).forEach(n -> words.put(n, word(ctx, n)));
    try {
      return words.isEmpty() ? Optional.empty() : Optional.of(WeatherSeries.constant(WeatherWords.read(words)));
    } catch (IllegalArgumentException e) {
      throw HttpProblem.badRequest("query/weather", e.getMessage() + ".");
    }
  }

  private static WeatherSeries file(Context ctx) throws IOException {
    byte[] bytes = ctx.bodyInputStream().readNBytes(LONGEST + 1);
    if (bytes.length > LONGEST) {
      throw new HttpProblem(413, "body/too-large", "The weather file has more than " + LONGEST + " bytes.");
    }
    String name = Names.clean(word(ctx, "name").isEmpty() ? "weather" : word(ctx, "name"));
    try {
      return WeatherSeries.parse(bytes, name);
    } catch (WeatherFormatException e) {
      throw new HttpProblem(422, "weather/invalid", e.getMessage());
    }
  }
}
