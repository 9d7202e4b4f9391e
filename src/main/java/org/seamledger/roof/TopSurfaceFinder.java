package org.seamledger.roof;

import java.util.List;
import org.seamledger.geometry.Tolerance;
import org.seamledger.progress.Progress;

/**
 * Finds the top surface of a group of roof elements.
 *
 * <ol>
 * <li>In every plane that any of them has, the section just below less the section just above is top surface: {@link OwnSurface}.
 * <li>What is modelled in relief gets its main plane: {@link Relief}.
 * <li>An area that two planes carry which all but lie together stays with the larger: {@link CountedOnce}.
 * <li>Cut edges and reveals are none: {@link CutEdges}.
 * <li>Of parallel layers on top of each other only the outermost counts: {@link OuterLayers}.
 * <li>What other elements cover or pierce is not free: {@link Covering}.
 * </ol>
 */
final class TopSurfaceFinder {

  /** Shares of the work that are done after the steps that take long. */
  private static final double OWN = 0.3;
  private static final double EDGES = 0.4;
  private static final double LAYERS = 0.5;

  private TopSurfaceFinder() {
  }

  /**
   * @param tops the roof's top surface, by plane
   * @param all the same with cut edges and inner layers: everything that can cover what is below it
   * @param curves which of them are parts of curved surfaces
   */
  record Found(List<TopSurface> tops, List<TopSurface> all, MeshCurves curves) {
  }

  static Found find(List<Part> group, Thickness thickness, Tolerance tolerance, SurfaceLimits limits, Progress progress) {
    SurfacePlanes.Planes planes = SurfacePlanes.of(group, tolerance, limits);
    OwnSurface own = new OwnSurface(planes.curves(), tolerance, limits.tops());
    List<TopSurface> all = own.of(planes.planes(), progress.part(0, OWN));
    List<TopSurface> once = CountedOnce.of(Relief.flattened(all, planes.curves(), limits.relief()), tolerance, limits.tops());
    List<TopSurface> faces = new CutEdges(own, thickness, tolerance, limits.tops()).dropped(once, progress.part(OWN, EDGES));
    List<TopSurface> outer = new OuterLayers(own, tolerance, limits.tops()).of(faces, progress.part(EDGES, LAYERS));
    Covering covering = new Covering(group, own, thickness, tolerance, limits.tops());
    return new Found(covering.freed(outer, progress.part(LAYERS, 1)), all, planes.curves());
  }
}
