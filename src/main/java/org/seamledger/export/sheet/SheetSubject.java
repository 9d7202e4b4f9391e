package org.seamledger.export.sheet;

import java.util.List;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.Facet;
import org.seamledger.takeoff.Takeoff;

/**
 * What every sheet says of the result that it is drawn from.
 *
 * @param models names of the models, without folders
 * @param date on which the first model was written, or empty
 * @param version of the program that made the result
 * @param facets outlines of the roof's facets, each with those of its holes, local coordinates, metres
 */
public record SheetSubject(String models, String date, String version, List<List<List<Vec3>>> facets) {

  public SheetSubject {
    facets = List.copyOf(facets);
  }

  public static SheetSubject of(Takeoff takeoff) {
    return new SheetSubject(Sheet.models(takeoff), Sheet.date(takeoff), takeoff.version(),
        takeoff.faces().stream().flatMap(f -> f.facets().stream()).map(SheetSubject::rings).toList());
  }

  private static List<List<Vec3>> rings(Facet facet) {
    return facet.area().rings().stream().map(r -> r.points().stream().map(p -> facet.plane().at(p.u(), p.v())).toList()).toList();
  }
}
