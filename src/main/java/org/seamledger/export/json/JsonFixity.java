package org.seamledger.export.json;

import java.io.IOException;
import java.util.List;
import org.seamledger.geometry.Vec3;
import org.seamledger.quantity.FixedPanel;
import org.seamledger.quantity.PanelEnd;
import org.seamledger.takeoff.Takeoff;

/** Every panel in the JSON ledger, with the line along which it is fixed and the movement of its free ends. */
public final class JsonFixity {

  private final Takeoff takeoff;
  private final JsonOutput json;

  public JsonFixity(Takeoff takeoff, JsonOutput json) {
    this.takeoff = takeoff;
    this.json = json;
  }

  public void panels() throws IOException {
    json.objects("panels", takeoff.quantities().fixity().panels(), this::panel);
  }

  private void panel(FixedPanel p) throws IOException {
    json.word("face", p.face());
    json.count("pan", p.panel().pan());
    json.number("lengthM", p.panel().lengthM());
    json.term("fixed", p.fixed().word());
    json.path("line", p.line(), takeoff.offset());
    json.object("lowEnd", () -> end(p.low(), p.middle(false)));
    json.object("highEnd", () -> end(p.high(), p.middle(true)));
  }

  private void end(PanelEnd end, Vec3 middle) throws IOException {
    json.words("junctions", end.junctions());
    json.words("kinds", end.kinds());
    json.path("at", middle == null ? List.of() : List.of(middle), takeoff.offset());
    json.number("movementM", end.movementM());
    json.number("gapM", end.growM());
    json.number("opensM", end.shrinkM());
    json.number("slotM", end.slotM());
  }
}
