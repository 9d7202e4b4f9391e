package org.seamledger.export.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Vec3;

/**
 * Looks for a place outside and above from which a sight is seen: of directions all round, those come first that look onto the faces
 * concerned and across the line, and the first is taken from which nothing hides more than a little of it.
 */
final class CameraFinder {

  private static final double[] TURNS = {-35, 35, -65, 65, -10, 10, -95, 95, -130, 130, -165, 165};
  private static final double[] HEIGHTS = {32, 48, 66};
  /** A line of no length is shown with so much round it, metres. */
  private static final double NEAREST = 7;
  private static final double ENOUGH = 0.9;
  /** What is so near to a line, in metres, doesn't hide it: the roof itself. */
  private static final double OFF_THE_SURFACE = 0.03;

  private final RoofScene scene;

  CameraFinder(RoofScene scene) {
    this.scene = scene;
  }

  private record Candidate(Vec3 direction, double worth) {
  }

  Camera find(Sight sight) {
    Vec3 outward = outward(sight);
    List<Candidate> candidates = new ArrayList<>();
    for (double height : HEIGHTS) {
      for (double turn : TURNS) {
        Vec3 direction = direction(outward, turn, height);
        candidates.add(new Candidate(direction, worth(sight, direction, turn, height)));
      }
    }
    candidates.sort(Comparator.comparingDouble(c -> -c.worth()));
    List<Flat> near = near(sight);
    Camera best = null;
    double most = Double.NEGATIVE_INFINITY;
    for (Candidate c : candidates) {
      Camera camera = Camera.at(sight.points(), sight.centre(), c.direction(), NEAREST);
      double seen = seen(sight, camera, near);
      if (seen >= ENOUGH) {
        return camera;
      }
      if (2 * seen + c.worth() > most) {
        most = 2 * seen + c.worth();
        best = camera;
      }
    }
    return best;
  }

  /** Horizontal: where the faces look, and away from the middle of the whole. */
  private Vec3 outward(Sight sight) {
    Vec3 sum = sight.side().times(3);
    for (Vec3 n : sight.normals()) {
      double plan = n.planLength();
      sum = sum.plus(plan < 1e-3 ? Vec3.ZERO : new Vec3(n.x() / plan, n.y() / plan, 0));
    }
    Box3 whole = scene.whole();
    if (!whole.isEmpty()) {
      Vec3 away = sight.centre().minus(whole.centre());
      sum = sum.plus(new Vec3(away.x(), away.y(), 0).times(0.6 / Math.max(1, whole.diagonal())));
    }
    return sum.planLength() < 1e-6 ? new Vec3(0, -1, 0) : new Vec3(sum.x(), sum.y(), 0).unit();
  }

  private static Vec3 direction(Vec3 outward, double turn, double height) {
    double t = Math.toRadians(turn);
    double h = Math.toRadians(height);
    Vec3 flat = new Vec3(outward.x() * Math.cos(t) - outward.y() * Math.sin(t), outward.x() * Math.sin(t) + outward.y() * Math.cos(t), 0);
    return flat.times(Math.cos(h)).plus(Vec3.Z.times(Math.sin(h))).unit();
  }

  private static double worth(Sight sight, Vec3 direction, double turn, double height) {
    double facing = sight.normals().stream().mapToDouble(n -> Math.max(-0.5, Math.min(0.5, n.dot(direction)))).sum()
        / Math.max(1, sight.normals().size());
    double across = 1;
    if (sight.line().size() > 1) {
      Vec3 along = sight.line().get(sight.line().size() - 1).minus(sight.line().get(0));
      across = along.length() < 1e-6 ? 1 : along.unit().cross(direction).length();
    }
    return 1.6 * facing + 0.8 * Math.min(across, 0.85) + 1.2 * Math.min(0.4, sight.side().dot(direction)) - 0.2 * Math.abs(turn) / 90
        - 0.3 * height / 90;
  }

  private List<Flat> near(Sight sight) {
    Camera far = Camera.at(sight.points(), sight.centre(), Vec3.Z, NEAREST);
    double reach = 1.5 * far.eye().distance(sight.centre());
    return scene.flats().stream().filter(f -> f.centre().distance(sight.centre()) < reach + f.radius()).toList();
  }

  /** Share of the sight's samples between which and the eye there is nothing. */
  private static double seen(Sight sight, Camera camera, List<Flat> near) {
    List<Vec3> samples = sight.samples();
    int free = 0;
    for (Vec3 p : samples) {
      Vec3 to = camera.eye().minus(p).unit();
      Vec3 from = p.plus(to.times(OFF_THE_SURFACE)).plus(Vec3.Z.times(OFF_THE_SURFACE));
      double length = camera.eye().distance(from);
      boolean isOwn = sight.line().isEmpty();
      if (near.stream().noneMatch(f -> !(isOwn && sight.lit().contains(f.owner())) && f.isHit(from, to, length))) {
        free++;
      }
    }
    return (double) free / samples.size();
  }
}
