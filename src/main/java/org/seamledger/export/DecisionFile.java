package org.seamledger.export;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.seamledger.detail.Decision;
import org.seamledger.export.json.JsonOutput;
import org.seamledger.finding.AcceptedFinding;

/** Decisions and accepted findings as the file that {@link org.seamledger.detail.DecisionReader} reads. */
public final class DecisionFile {

  private DecisionFile() {
  }

  /** Writes the file and flushes; leaves {@code out} open. */
  public static void write(List<Decision> decisions, List<AcceptedFinding> accepted, OutputStream out) throws IOException {
    try (JsonOutput json = new JsonOutput(out)) {
      json.document(() -> {
        json.objects("decisions", decisions, d -> decision(d, json));
        if (!accepted.isEmpty()) {
          json.objects("accepted", accepted, a -> acceptance(a, json));
        }
      });
    }
  }

  private static void decision(Decision d, JsonOutput json) throws IOException {
    json.word("junction", d.junction());
    if (!d.kind().isEmpty()) {
      json.word("kind", d.kind());
    }
    if (!d.detail().isEmpty()) {
      json.word("detail", d.detail());
    }
    json.word("reason", d.reason());
  }

  private static void acceptance(AcceptedFinding a, JsonOutput json) throws IOException {
    json.object("finding", () -> {
      json.word("code", a.code());
      json.wordOrNull("junction", a.junction());
      json.words("elements", a.elements());
      if (a.occurrence() > 1) {
        json.count("occurrence", a.occurrence());
      }
    });
    json.word("by", a.acceptance().by());
    json.wordOrNull("when", a.acceptance().when());
    json.word("reason", a.acceptance().reason());
  }

  public static byte[] bytes(List<Decision> decisions, List<AcceptedFinding> accepted) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      write(decisions, accepted, out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }
}
