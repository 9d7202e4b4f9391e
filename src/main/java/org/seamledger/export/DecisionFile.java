package org.seamledger.export;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.seamledger.detail.Decision;
import org.seamledger.export.json.JsonOutput;

/** Decisions as the file that {@link org.seamledger.detail.DecisionReader} reads. */
public final class DecisionFile {

  private DecisionFile() {
  }

  /** Writes the file and flushes; leaves {@code out} open. */
  public static void write(List<Decision> decisions, OutputStream out) throws IOException {
    try (JsonOutput json = new JsonOutput(out)) {
      json.document(() -> json.objects("decisions", decisions, d -> {
        json.word("junction", d.junction());
        if (!d.kind().isEmpty()) {
          json.word("kind", d.kind());
        }
        if (!d.detail().isEmpty()) {
          json.word("detail", d.detail());
        }
        json.word("reason", d.reason());
      }));
    }
  }

  public static byte[] bytes(List<Decision> decisions) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      write(decisions, out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }
}
