package org.seamledger.ledger;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.InputStream;
import org.seamledger.finding.UnreadableModelException;

/** One of two results to compare, read from what {@code --format json} writes. */
public final class ComparedResult {

  private static final String EXPECTED = "a result as analyze --format json writes it";

  private final ResultOutline outline;

  private ComparedResult(ResultOutline outline) {
    this.outline = outline;
  }

  /**
   * Reads a result.
   *
   * @param name what people call it, for messages
   * @throws UnreadableModelException where it is none
   */
  public static ComparedResult read(InputStream json, String name) throws IOException {
    try {
      ResultOutline outline = ResultOutline.read(json);
      if (outline.contract() < 1) {
        throw new UnreadableModelException(name, 0, 0, EXPECTED, "other JSON, without the field contract");
      }
      return new ComparedResult(outline);
    } catch (JsonProcessingException e) {
      JsonLocation at = e.getLocation();
      throw new UnreadableModelException(name, at == null ? 0 : at.getLineNr(), at == null ? 0 : at.getColumnNr(), EXPECTED,
          "something else");
    }
  }

  ResultOutline outline() {
    return outline;
  }
}
