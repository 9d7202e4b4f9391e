package org.seamledger.export.json;

import java.io.IOException;
import org.seamledger.quantity.PanelCut;
import org.seamledger.quantity.ProjectQuantities;
import org.seamledger.takeoff.Takeoff;

/** The project's quantities and its cut list of panels in the JSON ledger. */
public final class JsonQuantities {

  private final Takeoff takeoff;
  private final ProjectQuantities project;
  private final JsonOutput json;

  public JsonQuantities(Takeoff takeoff, JsonOutput json) {
    this.takeoff = takeoff;
    this.project = takeoff.quantities().project();
    this.json = json;
  }

  public void quantities() throws IOException {
    json.object("quantities", this::fields);
  }

  private void fields() throws IOException {
    json.object("tape", () -> tape(project.tape()));
    json.object("bead", () -> bead(project.bead()));
    json.object("inSeam", () -> inSeam(project.inSeam()));
    json.object("lapSealant", () -> lapSealant(project.lapSealant()));
    json.object("fasteners", () -> fasteners(project.fasteners()));
    json.object("closures", () -> closures(project.closures()));
    json.object("caps", () -> caps(project.caps()));
    json.object("plugs", () -> plugs(project.plugs()));
    json.objects("parts", project.parts(), this::part);
    json.objects("boots", project.boots(), this::boot);
    json.objects("curbs", project.curbs(), this::curb);
    json.object("metalFirst", this::metalFirst);
    json.objects("panels", takeoff.quantities().panels(), this::panel);
  }

  private void tape(ProjectQuantities.Tape tape) throws IOException {
    json.number("netM", tape.netM());
    json.number("lapsM", tape.lapsM());
    json.number("orderM", tape.orderM());
    json.count("rolls", tape.rolls());
  }

  private void bead(ProjectQuantities.Bead bead) throws IOException {
    json.number("netM", bead.netM());
    json.number("netMl", bead.netMl());
    json.number("orderMl", bead.orderMl());
    json.count("cartridges", bead.cartridges());
    json.object("concealed", () -> beadPart(bead.concealed()));
    json.object("exposed", () -> beadPart(bead.exposed()));
  }

  private void beadPart(ProjectQuantities.Bead.Part part) throws IOException {
    json.number("netM", part.netM());
    json.number("netMl", part.netMl());
    json.number("orderMl", part.orderMl());
    json.count("cartridges", part.cartridges());
  }

  private void inSeam(ProjectQuantities.InSeam inSeam) throws IOException {
    json.number("netM", inSeam.netM());
    json.number("orderM", inSeam.orderM());
    json.words("faces", inSeam.faces());
  }

  private void lapSealant(ProjectQuantities.GunSealant sealant) throws IOException {
    json.number("netM", sealant.netM());
    json.number("lapsM", sealant.lapsM());
    json.number("seamEndsM", sealant.seamEndsM());
    json.number("netMl", sealant.netMl());
    json.number("orderMl", sealant.orderMl());
    json.count("cartridges", sealant.cartridges());
  }

  private void fasteners(ProjectQuantities.Fasteners fasteners) throws IOException {
    json.count("net", fasteners.net());
    json.count("order", fasteners.order());
    json.tree("byPlace", fasteners.byPlace());
  }

  private void closures(ProjectQuantities.Closures closures) throws IOException {
    json.count("pieces", closures.pieces());
    json.number("lengthM", closures.lengthM());
    json.count("order", closures.order());
    json.count("shorterThanMinimum", closures.shorterThanMinimum());
  }

  private void caps(ProjectQuantities.Caps caps) throws IOException {
    json.count("pieces", caps.pieces());
    json.number("lengthM", caps.lengthM());
    json.count("laps", caps.laps());
  }

  private void plugs(ProjectQuantities.Plugs plugs) throws IOException {
    json.count("pieces", plugs.pieces());
    json.count("seamEnds", plugs.seamEnds());
    json.count("corners", plugs.corners());
  }

  private void part(ProjectQuantities.Part part) throws IOException {
    json.word("part", part.part());
    json.count("pieces", part.pieces());
    json.number("lengthM", part.lengthM());
    json.count("laps", part.laps());
    json.number("girthM", part.girthM());
    json.count("order", part.order());
  }

  private void boot(ProjectQuantities.Boot boot) throws IOException {
    json.number("diameterM", boot.diameterM());
    json.count("count", boot.count());
  }

  private void curb(ProjectQuantities.Curb curb) throws IOException {
    json.number("widthM", curb.widthM());
    json.number("depthM", curb.depthM());
    json.count("count", curb.count());
  }

  private void metalFirst() throws IOException {
    json.number("lengthM", project.metalFirstM());
    json.number("ofM", project.detailedM());
    json.number("share", project.metalFirstShare());
  }

  private void panel(PanelCut cut) throws IOException {
    json.word("face", cut.face());
    json.count("count", cut.count());
    json.count("firstPan", cut.panel().pan());
    json.number("widthM", cut.panel().widthM());
    json.number("lengthM", cut.panel().lengthM());
    json.number("lowBevelDegrees", cut.panel().lowBevelDegrees());
    json.number("highBevelDegrees", cut.panel().highBevelDegrees());
    json.number("areaM2", cut.panel().areaM2());
    json.flag("shaped", cut.panel().shaped());
    json.flag("sliver", cut.panel().sliver());
    json.term("fixed", cut.fixed().word());
  }
}
