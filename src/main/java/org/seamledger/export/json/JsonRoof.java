package org.seamledger.export.json;

import java.io.IOException;
import java.util.List;
import org.seamledger.geometry.Vec3;
import org.seamledger.quantity.layout.Seam;
import org.seamledger.roof.ElementCoverage;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/** The roof's faces in the JSON ledger. */
public final class JsonRoof {

  private final Takeoff takeoff;
  private final JsonOutput json;

  public JsonRoof(Takeoff takeoff, JsonOutput json) {
    this.takeoff = takeoff;
    this.json = json;
  }

  public void faces() throws IOException {
    json.objects("roofFaces", takeoff.faces(), this::face);
  }

  /** Where the upward area of each roof element went. */
  public void coverage() throws IOException {
    json.objects("coverage", takeoff.coverage(), this::covered);
  }

  private void covered(ElementCoverage c) throws IOException {
    json.word("element", c.globalId());
    json.number("upwardM2", c.upwardM2());
    json.number("inFacesM2", c.inFacesM2());
    json.number("coveredM2", c.coveredM2());
    json.words("coveredBy", c.coveredBy());
    json.number("innerLayerM2", c.innerLayerM2());
    json.number("enclosedM2", c.enclosedM2());
    json.number("voidM2", c.voidM2());
    json.number("cutEdgeM2", c.cutEdgeM2());
    json.number("tooSmallM2", c.tooSmallM2());
    json.number("lostM2", c.lostM2());
    json.flag("readable", c.readable());
  }

  private void face(RoofFace face) throws IOException {
    json.word("id", face.id());
    json.words("elements", face.elements());
    json.number("slopeDegrees", face.slopeDegrees());
    json.number("risePer12", face.risePer12());
    json.number("fallAzimuthDegrees", azimuth(face.fallAzimuthDegrees()));
    json.number("areaM2", face.areaM2());
    json.number("planAreaM2", face.planAreaM2());
    json.number("perimeterM", face.perimeterM());
    json.flag("curved", face.isCurved());
    json.object("seams", () -> seams(face));
    json.list("facets", face.facets(), this::facet);
  }

  /** Not 360 where rounding gets there: that is 0. */
  private static double azimuth(double degrees) {
    return degrees > 360 - JsonOutput.HALF_A_STEP ? 0 : degrees;
  }

  private void seams(RoofFace face) throws IOException {
    List<Seam> seams = takeoff.quantities().layout().face(face.id()).seams();
    json.count("count", seams.size());
    json.number("lengthM", seams.stream().mapToDouble(Seam::lengthM).sum());
    json.flag("sealed", takeoff.quantities().layout().seamsSealed(face.id()));
    json.list("lines", seams.stream().flatMap(seam -> seam.stretches().stream()).toList(), this::stretch);
  }

  private void stretch(Seam.Stretch stretch) throws IOException {
    json.list(List.of(stretch.low(), stretch.high()), this::point);
  }

  /** One flat piece: its rings, outsides counter-clockwise seen from above, holes clockwise. */
  private void facet(Facet facet) throws IOException {
    json.list(facet.area().rings(), ring -> json.list(ring.points(), p -> point(facet.plane().at(p.u(), p.v()))));
  }

  private void point(Vec3 local) throws IOException {
    json.point(local, takeoff.offset());
  }
}
