package org.seamledger.roof;

import java.lang.reflect.RecordComponent;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The limits by which the roof's surface and its lines are told from slack, joints, relief and rounding. Like the tolerance always an
 * argument,
 * never global; a result shows the values applied. Where no source stands beside a value, it is common practice of models without one.
 */
public record SurfaceLimits(Planes planes, Tops tops, Profiles relief, Exposed exposed, Obstacles obstacles, Penetrating penetrations,
    Folds folds, Stretches stretches, Faces faces, Covered covered, JoinedLines lines) {

  /** The values beside each group. */
  public static final SurfaceLimits DEFAULT = new SurfaceLimits(Planes.DEFAULT, Tops.DEFAULT, Profiles.DEFAULT, Exposed.DEFAULT,
      Obstacles.DEFAULT, Penetrating.DEFAULT, Folds.DEFAULT, Stretches.DEFAULT, Faces.DEFAULT, Covered.DEFAULT, JoinedLines.DEFAULT);

  /**
   * Which planes may carry the surface.
   *
   * @param steepestDegrees steeper is no roof: mansards end at about 80 degrees
   * @param sameDegrees planes that turn by less, and lie together, are one: 3.5 mm in a metre, what a coordinate in whole millimetres
   *     turns a small face
   * @param leastAreaM2 smaller triangles (square metres, one square centimetre) don't tell a plane's direction
   */
  public record Planes(double steepestDegrees, double sameDegrees, double leastAreaM2) {
    static final Planes DEFAULT = new Planes(85, 0.2, 1e-4);
  }

  /**
   * What of a plane is top surface.
   *
   * @param speckM2 smaller pieces (square metres) are left over by rounding
   * @param speckWidthM narrower pieces are, too: twice the coincidence
   * @param thickestM a body deeper than this below its top is no slab
   * @param parallelDegrees undersides, layers and facets that turn by less lie parallel: slabs taper a little
   * @param cutEdgeDegrees a cut edge turns by more than this against its slab's face
   * @param cutEdgeSlackM and reaches no farther than this beyond the slab's faces
   * @param cutEdgeDepth and this share of the slab's depth, five hundredths for slabs that taper
   * @param buildUpM layers of one roof lie within this distance: insulation over rafters, battens, covering
   * @param innerShare a layer that is covered to this share is an inner one; sheets leave battens' edges free
   * @param sheetDepthM a surface without thickness stands for a build-up as deep as this, vertically
   */
  public record Tops(double speckM2, double speckWidthM, double thickestM, double parallelDegrees, double cutEdgeDegrees,
      double cutEdgeSlackM, double cutEdgeDepth, double buildUpM, double innerShare, double sheetDepthM) {
    static final Tops DEFAULT = new Tops(1e-3, 0.004, 1.2, 3, 30, 0.005, 1.05, 0.6, 0.6, 0.3);
  }

  /**
   * What is modelled in relief: profiled sheet, corrugations, courses of tiles.
   *
   * @param fewestPieces fewer pieces are faces of their own
   * @param deepestM the deepest profiles and tiles are lower than this
   * @param shallowestM lower relief is unevenness of the model
   * @param narrowM a piece is narrow where no wider circle fits: pans and courses are
   * @param narrowShare the share of the area that has to be narrow
   * @param jointM steep flanks and joints up to this width in plan leave no gap
   * @param crestM points this close below the main plane reach up to it
   * @param crestShare and those within this share of the relief's depth
   * @param pointsOnSide points that are looked at on each side of a piece
   * @param simplifyM corners this close to the line between their neighbours go from the outline
   */
  public record Profiles(int fewestPieces, double deepestM, double shallowestM, double narrowM, double narrowShare, double jointM,
      double crestM,
      double crestShare, int pointsOnSide, double simplifyM) {
    static final Profiles DEFAULT = new Profiles(12, 0.15, 0.003, 0.5, 0.9, 0.1, 0.005, 0.25, 8, 1e-4);
  }

  /**
   * What of a top surface is outside.
   *
   * @param coveredShare a piece that roofs cover to this share is covered
   * @param hairM gaps between cutters up to twice this are rounding of the overlays
   * @param ownEdgeM shorter stretches of an outline of its own don't show that a piece leads outside
   */
  public record Exposed(double coveredShare, double hairM, double ownEdgeM) {
    static final Exposed DEFAULT = new Exposed(0.97, 2e-5, 0.05);
  }

  /**
   * What stands in or at a surface.
   *
   * @param speckM2 smaller pieces of a section (square metres) are left over by rounding
   * @param standingM2 over a larger area of its footprint (square metres) a body has to stand at a height to reach it
   * @param aroundM neighbours are looked for so far round the surface
   * @param windowM and cut to its extent and this much more
   * @param highestM heights are measured up to here: no flashing is higher
   * @param heightStepM to this precision
   * @param leastHeightM the side of another roof counts from this height on
   * @param wallGapM a wall that runs along a free edge within this distance is what the edge ends at: flashings bridge it
   * @param rowSpacingM posts, studs and boards no farther apart are a row
   * @param rowWidthM what is wider at a right angle to the edge is no part of a row
   * @param rowPosts so many make a row
   * @param boardRatio a board is longer than this multiple of its thickness, and makes a row by itself
   */
  public record Obstacles(double speckM2, double standingM2, double aroundM, double windowM, double highestM, double heightStepM,
      double leastHeightM, double wallGapM, double rowSpacingM, double rowWidthM, int rowPosts, double boardRatio) {
    static final Obstacles DEFAULT = new Obstacles(1e-5, 1e-6, 0.2, 0.3, 3, 0.005, 0.01, 0.15, 1.3, 0.3, 3, 20);
  }

  /**
   * What goes through a roof.
   *
   * @param lowestM something that ends lower above the surface is slack of the model
   * @param inHoleShare a hole belongs to what has this share of its footprint in it
   * @param solidShare a smaller share of the footprint in the roof's material is rounding of facets
   * @param solidM2 and so is a smaller area, square metres
   * @param bundleShare pipes and their insulation share this much of the smaller one's footprint
   * @param nestedShare where all together take no more than this multiple of the outermost one's footprint, its outline is that of all
   * @param roundCorners an outline with fewer corners is no circle
   * @param roundDeviation share by which the corners of a circle or an ellipse may miss the one of equal moments: those of a
   *     regular polygon of 10 corners do by 3.3 %
   */
  public record Penetrating(double lowestM, double inHoleShare, double solidShare, double solidM2, double bundleShare, double nestedShare,
      int roundCorners, double roundDeviation) {
    static final Penetrating DEFAULT = new Penetrating(0.02, 0.5, 0.02, 1e-4, 0.5, 1.02, 10, 0.034);
  }

  /**
   * How far apart convex neighbours may lie that meet.
   *
   * @param leastDegrees planes that turn by less have no reliable line of intersection
   * @param turn sine of the angle by which an edge may turn against the line
   * @param slackM and this much more at its ends
   * @param exactM ends closer to the line lie on it
   * @param overlapM neighbours that run beside each other for less don't meet
   * @param obstacleM an edge this close to an obstacle's outline ends there, and stays
   * @param farthestM neighbours are looked for no farther
   * @param thicknesses and no farther than this multiple of the thickness: t·tan(φ/2) stays below it for folds up to 143 degrees
   * @param cornerSine lines that turn by less (sine) have no reliable corner
   * @param cornerM a corner farther than this from where it was is none
   */
  public record Folds(double leastDegrees, double turn, double slackM, double exactM, double overlapM, double obstacleM, double farthestM,
      double thicknesses, double cornerSine, double cornerM) {
    static final Folds DEFAULT = new Folds(2, 0.02, 1e-3, 2e-6, 0.01, 0.005, 1.5, 3, 0.02, 3);
  }

  /**
   * What the stretches of an outline end at.
   *
   * @param shortM shorter ones take the contact of their neighbours: twice the coincidence
   * @param cosine edges that face each other turn by no more than this (cosine; 26 degrees)
   * @param shortShare two edges that face each other along less than this share of the shorter one, and {@code shortM}, don't
   * @param tinyM shorter stretches are slack of the model at corners: they belong to the line beside them whatever their direction
   * @param tinyRatio if that is longer by this factor
   * @param collinear sine up to which stretches are one line
   * @param underRoofM a roof this close above a face may sit on a wall that stands there
   * @param beyondM how far beyond the outline that roof is looked for
   * @param besideM how far beyond it the height of another roof element's side is measured
   */
  public record Stretches(double shortM, double cosine, double shortShare, double tinyM, double tinyRatio, double collinear,
      double underRoofM,
      double beyondM, double besideM) {
    static final Stretches DEFAULT = new Stretches(0.004, 0.9, 0.9, 0.031, 5, 0.02, 0.6, 0.02, 0.01);
  }

  /**
   * What is one face.
   *
   * @param togetherM roof elements whose boxes come closer in plan are looked at together
   * @param simplifyM corners this close to the line between their neighbours go from an outline: rounding of the overlays
   * @param sameDegrees facets that turn by less are one flat face drawn in pieces
   * @param curvedDegrees facets of one face that turn by more make it a curved one
   * @param narrowM facets in which no wider circle fits may be parts of a curve
   * @param vaultSteps so many directions on one great circle, or more, are a vault: roofs of flat faces that fall to two sides have four
   * @param vaultSameDegrees facets that turn by less have one direction
   * @param vaultOff share of their spread by which the directions may miss the great circle, each, or in root mean square where all along
   *     it they miss it by less than half of this on the average
   * @param evenWidths a facet wider across the curve than this multiple of the middle one only adjoins it
   * @param domeFacets so many facets, all turning outward, or more, are a dome or a cone: pyramids over octagons have eight
   * @param oneWayShare a curve turns one way by more than this share of all that it turns; waves turn as much back
   */
  public record Faces(double togetherM, double simplifyM, double sameDegrees, double curvedDegrees, double narrowM, int vaultSteps,
      double vaultSameDegrees, double vaultOff, double evenWidths, int domeFacets, double oneWayShare) {
    static final Faces DEFAULT = new Faces(1, 2e-5, 1, 2, 0.6, 6, 0.1, 0.1, 3, 16, 0.2);
  }

  /**
   * What is one line.
   *
   * @param roundingM shorter lines are rounding of the overlays
   * @param collinearDegrees stretches that turn by less are one line
   * @param straightRadians corners that turn by less are none: 0.1 mm in a metre
   * @param facingShare share of a stretch by which what faces it may lie beyond its ends
   * @param obliqueDegrees a free edge is oblique that turns by more against the slope's direction and against its normal
   * @param sumShare share of a perimeter by which the lines round a face may miss it; {@link Stretches#tinyM} at least
   */
  public record JoinedLines(double roundingM, double collinearDegrees, double straightRadians, double facingShare,
      double obliqueDegrees, double sumShare) {
    static final JoinedLines DEFAULT = new JoinedLines(5e-4, 0.5, 1e-4, 0.01, 5, 0.001);
  }

  /**
   * When upward area counts as lost.
   *
   * @param faceM a face this close above or below has the area: edges are moved, planes joined
   * @param stripM narrower strips are left over where faces meet short of the end of a slab
   * @param edgeM ends and reveals of slabs are narrower
   * @param lostM2 less than this of an element (square metres) is noise
   * @param lostShare and less than this share of its area
   */
  public record Covered(double faceM, double stripM, double edgeM, double lostM2, double lostShare) {
    static final Covered DEFAULT = new Covered(0.01, 0.3, 0.8, 0.05, 0.005);
  }

  /** Every limit by the names of its group and its own, in the order in which they stand here. */
  public Map<String, Map<String, Double>> byName() {
    Map<String, Map<String, Double>> all = new LinkedHashMap<>();
    for (RecordComponent group : SurfaceLimits.class.getRecordComponents()) {
      Map<String, Double> limits = new LinkedHashMap<>();
      for (RecordComponent limit : group.getType().getRecordComponents()) {
        limits.put(limit.getName(), ((Number) value(limit, value(group, this))).doubleValue());
      }
      all.put(group.getName(), limits);
    }
    return all;
  }

  private static Object value(RecordComponent component, Object of) {
    try {
      return component.getAccessor().invoke(of);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(component + " can't be read", e);
    }
  }
}
