package org.seamledger.http.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.seamledger.bcf.BcfFormatException;
import org.seamledger.bcf.BcfReader;
import org.seamledger.finding.TopicAnswer;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.http.job.DrawingBoard;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.TopicOutcome;

/** Takes back the topics that findings were handed on as: what people closed, reopened and said in a coordination tool. */
public final class TopicsApi {

  private static final long MOST_BYTES = 256L << 20;
  private static final int BUFFER = 1 << 16;

  private final Store store;
  private final DrawingBoard board;
  private final Path scratch;

  /** @param scratch folder for what is being received */
  public TopicsApi(Store store, DrawingBoard board, Path scratch) {
    this.store = store;
    this.board = board;
    this.scratch = scratch;
  }

  public void install(RoutesConfig routes) {
    routes.post("/api/analyses/{id}/topics", this::take);
  }

  /** The body is a BCF file. */
  private void take(Context ctx) throws IOException {
    StoredAnalysis analysis = store.analyses().get(ctx.pathParam("id"));
    String hash = store.analyses().ledgerHash(analysis.id());
    List<TopicAnswer> topics = received(ctx);
    Map<String, Integer> places = new HashMap<>();
    for (UUID id : board.of(analysis, hash).topicIds()) {
      places.put(id.toString(), places.size());
    }
    Map<Integer, TopicAnswer> answers = new HashMap<>();
    List<Object> unmatched = new ArrayList<>();
    for (TopicAnswer t : topics) {
      if (places.containsKey(t.guid())) {
        answers.put(places.get(t.guid()), t);
      } else {
        unmatched.add(JsonBodies.object("guid", t.guid(), "title", t.title(), "status", t.status(), "comments", t.remarks().size()));
      }
    }
    TopicOutcome outcome = store.reviews().take(analysis.id(), answers);
    JsonBodies.answer(ctx, 200, JsonBodies.object("matched", answers.size(), "accepted", outcome.accepted(), "reopened", outcome.reopened(),
        "comments", outcome.comments(), "unmatched", unmatched));
  }

  private List<TopicAnswer> received(Context ctx) throws IOException {
    Files.createDirectories(scratch);
    Path file = Files.createTempFile(scratch, "topics", ".bcf");
    try {
      write(ctx, file);
      return BcfReader.read(file, "topics").topics();
    } catch (BcfFormatException e) {
      throw new HttpProblem(422, "topics/invalid", e.getMessage());
    } finally {
      Files.deleteIfExists(file);
    }
  }

  private static void write(Context ctx, Path file) throws IOException {
    byte[] buffer = new byte[BUFFER];
    long taken = 0;
    try (InputStream in = ctx.req().getInputStream(); OutputStream out = Files.newOutputStream(file)) {
      for (int n = read(in, buffer); n >= 0; n = read(in, buffer)) {
        taken += n;
        if (taken > MOST_BYTES) {
          throw new HttpProblem(413, "body/too-large", "The file has more than " + MOST_BYTES + " bytes.");
        }
        out.write(buffer, 0, n);
      }
    }
  }

  /** A client that goes away or is too slow is no fault of the program. */
  private static int read(InputStream in, byte[] buffer) {
    try {
      return in.read(buffer);
    } catch (IOException | RuntimeException e) {
      throw HttpProblem.badRequest("body/cut", "The body did not arrive whole.");
    }
  }
}
