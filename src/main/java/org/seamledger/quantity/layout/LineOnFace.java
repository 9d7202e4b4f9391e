package org.seamledger.quantity.layout;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Vec3;
import org.seamledger.quantity.formula.Pieces;

/**
 * A line along a face's edge, cut by the face's seams: pieces between seams with their true lengths.
 *
 * <p>Positions along the eave come from the face's plane, lengths from the line itself: the pieces add up to the line's true length
 * whatever small gap the model leaves between line and face. Stretches along the seams (a rake) cross none and come as one piece of no
 * width.
 */
public final class LineOnFace {

  /** A direction within this sine of the seams runs along them. */
  private static final double ALONG = 1e-3;

  private LineOnFace() {
  }

  /** A stretch of the path in which the position along the eave only grows, only falls, or stays; length is that from its start. */
  private static final class Stretch {
    private final int sense;
    private final List<Vec3> points;
    private final double[] positions;
    private final double[] lengths;

    Stretch(int sense, List<Vec3> points, Plane plane) {
      this.sense = sense;
      this.points = points;
      positions = new double[points.size()];
      lengths = new double[points.size()];
      for (int i = 0; i < positions.length; i++) {
        positions[i] = plane.u(points.get(i));
        lengths[i] = i == 0 ? 0 : lengths[i - 1] + points.get(i - 1).distance(points.get(i));
      }
    }

    double start() {
      return positions[0];
    }

    double end() {
      return positions[positions.length - 1];
    }

    double length() {
      return lengths[lengths.length - 1];
    }

    /** Where the line is, so far from its start. */
    Vec3 at(double length) {
      for (int i = 1; i < lengths.length; i++) {
        double a = lengths[i - 1];
        double b = lengths[i];
        if (length <= b && b > a) {
          return points.get(i - 1).towards(points.get(i), Math.max(0, (length - a) / (b - a)));
        }
      }
      return points.get(points.size() - 1);
    }

    /** Length along the line from its start to where it reaches a position. */
    double lengthAt(double position) {
      for (int i = 1; i < positions.length; i++) {
        double a = positions[i - 1];
        double b = positions[i];
        if (sense * (b - position) >= 0 && a != b) {
          double t = Math.max(0, (position - a) / (b - a));
          return lengths[i - 1] + t * (lengths[i] - lengths[i - 1]);
        }
      }
      return length();
    }
  }

  /** Pieces from the start of the path to its end. */
  public static List<LinePiece> pieces(List<Vec3> path, FaceLayout layout) {
    List<LinePiece> pieces = new ArrayList<>();
    for (int i = 0; i + 1 < path.size();) {
      FaceLayout.Grid grid = layout.gridAt(path.get(i).towards(path.get(i + 1), 0.5));
      Plane plane = grid.facet().plane();
      int sense = sense(path.get(i), path.get(i + 1), plane);
      int from = i;
      do {
        i++;
      } while (i + 1 < path.size() && sense(path.get(i), path.get(i + 1), plane) == sense
          && layout.gridAt(path.get(i).towards(path.get(i + 1), 0.5)).origin() == grid.origin());
      cut(new Stretch(sense, path.subList(from, i + 1), plane), grid.origin(), layout.coverageM(), pieces);
    }
    return pieces;
  }

  private static int sense(Vec3 from, Vec3 to, Plane plane) {
    double du = plane.u(to) - plane.u(from);
    return Math.abs(du) <= ALONG * from.distance(to) ? 0 : du > 0 ? 1 : -1;
  }

  private static void cut(Stretch s, double origin, double coverage, List<LinePiece> pieces) {
    List<Pieces.Piece> gaps = s.sense == 0 ? List.of()
        : Pieces.between(s.start(), s.end(), origin, coverage, FaceLayout.TOLERANCE);
    if (gaps.isEmpty()) {
      if (s.length() > 0) {
        pieces.add(new LinePiece(0, s.length(), 0, s.at(s.length() / 2)));
      }
      return;
    }
    int n = gaps.size();
    for (int k = 0; k < n; k++) {
      Pieces.Piece gap = gaps.get(s.sense > 0 ? k : n - 1 - k);
      double a = s.lengthAt(s.sense > 0 ? gap.from() : gap.to());
      double b = k == n - 1 ? s.length() : s.lengthAt(s.sense > 0 ? gap.to() : gap.from());
      double psi = Math.toDegrees(Math.asin(Math.min(1, gap.width() / (b - a))));
      pieces.add(new LinePiece(gap.width(), b - a, psi, s.at((a + b) / 2)));
    }
  }
}
