package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import org.seamledger.export.json.JsonSurroundings;
import org.seamledger.takeoff.Takeoff;

/** What stands near the roof, for pictures, as JSON; {@link JsonSurroundings} says in which form. */
public final class SurroundingsJson {

  private SurroundingsJson() {
  }

  public static void write(Takeoff takeoff, OutputStream out) throws IOException {
    JsonSurroundings.write(takeoff, out);
  }
}
