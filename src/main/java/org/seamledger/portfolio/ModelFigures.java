package org.seamledger.portfolio;

import org.seamledger.element.ModelInfo;
import org.seamledger.finding.Severity;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/**
 * The row of a model that has a result.
 *
 * @param sha256 of the model after unpacking
 * @param bytes after unpacking
 * @param areaM2 of all faces
 * @param junctionsM length of all junctions
 */
public record ModelFigures(String sha256, String schema, String lengthUnit, String application, String written, long bytes, int faces,
    double areaM2, double planAreaM2, int junctions, double junctionsM, int nodes, long violations, long warnings, long notes) {

  static ModelFigures of(Takeoff t) {
    ModelInfo model = t.models().get(0);
    return new ModelFigures(model.sha256(), model.schema(), model.lengthUnit(), model.application(), model.written(), model.bytes(),
        t.faces().size(), t.faces().stream().mapToDouble(RoofFace::areaM2).sum(),
        t.faces().stream().mapToDouble(RoofFace::planAreaM2).sum(), t.junctions().size(),
        t.junctions().stream().mapToDouble(j -> j.junction().lengthM()).sum(), t.nodes().size(), count(t, Severity.VIOLATION),
        count(t, Severity.WARNING), count(t, Severity.INFO));
  }

  private static long count(Takeoff takeoff, Severity severity) {
    return takeoff.findings().stream().filter(f -> f.severity() == severity).count();
  }

  long findings(Severity severity) {
    return severity == Severity.VIOLATION ? violations : severity == Severity.WARNING ? warnings : notes;
  }
}
