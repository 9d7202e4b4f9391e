package org.seamledger.junction;

import static org.seamledger.junction.Fact.FactType.COUNT;
import static org.seamledger.junction.Fact.FactType.FLAG;
import static org.seamledger.junction.Fact.FactType.NUMBER;
import static org.seamledger.junction.Fact.FactType.WORD;
import static org.seamledger.junction.Fact.FactUnit.CELSIUS;
import static org.seamledger.junction.Fact.FactUnit.DEGREES;
import static org.seamledger.junction.Fact.FactUnit.KELVINS;
import static org.seamledger.junction.Fact.FactUnit.MEGAPASCALS;
import static org.seamledger.junction.Fact.FactUnit.METRES;
import static org.seamledger.junction.Fact.FactUnit.NONE;
import static org.seamledger.junction.Fact.FactUnit.PASCALS;
import static org.seamledger.junction.Fact.FactUnit.LITRES_PER_SECOND;
import static org.seamledger.junction.Fact.FactUnit.SHARE;
import static org.seamledger.junction.Fact.FactUnit.SQUARE_METRES;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.seamledger.junction.Fact.FactType;
import org.seamledger.junction.Fact.FactUnit;

/**
 * Every fact there is: what the rules' vocabulary, the texts of findings and the heads of {@code shapes/*.ttl} are made from or held
 * against. "Rise" is the angle at which a face rises when you walk from the line into the face at a right angle to the line in plan; it is
 * negative where the face falls away. A fact that can't be had is left out.
 */
public final class FactList {

  /** Measured along a line by this package: all that decides kinds. */
  public static final List<Fact> LINE = List.of(
      fact("faceCount", COUNT, "1 or 2: roof faces that end at the line", "counted"),
      fact("against", WORD, "\"face\", \"nothing\" (free edge), \"wall\", \"penetration\" (a side of a polygonal one), \"round\" (the "
          + "closed line of a round one), \"opening\" (a side of a hole that nothing fills), \"panel\" (nothing ends: panels are divided)",
          "what was found at the edge, above the roof or in its hole"),
      fact("inclinationDegrees", NUMBER, DEGREES, "angle of the line to the horizontal, 0 to 90",
          "between its ends; 0 for a round line"),
      fact("lowRiseDegrees", NUMBER, DEGREES, "the smaller rise of the faces (equal to the larger for one face)",
          "atan(g·p): g the face's plan gradient, p the plan normal of the line into the face"),
      fact("highRiseDegrees", NUMBER, DEGREES, "the larger rise", "likewise"),
      fact("foldDegrees", NUMBER, DEGREES, "two faces: angle between their normals, positive where convex, negative where concave",
          "between the planes; convex where the rises add up to less than 0"),
      fact("obliquityDegrees", NUMBER, DEGREES, "plan angle between the line and the slope of the first face: 0 parallel to the "
          + "slope, 90 perpendicular to it", "acos(|g·d| / |g|), d the line's plan direction; 90 for a level face"),
      fact("otherObliquityDegrees", NUMBER, DEGREES, "the same for the second face", "likewise"),
      fact("slopeDegrees", NUMBER, DEGREES, "slope of the first face (of a face: its own)", "of its plane"),
      fact("otherSlopeDegrees", NUMBER, DEGREES, "slope of the second face", "of its plane"),
      fact("minSlopeDegrees", NUMBER, DEGREES, "the smaller slope", "of both"),
      fact("upstandM", NUMBER, METRES, "walls and penetrations: greatest height above the roof along the line",
          "as far up as it was looked for"),
      fact("widthAcrossFallM", NUMBER, METRES, "penetrations: extent of the whole thing perpendicular to the slope",
          "of its outline in the face"),
      fact("depthAlongFallM", NUMBER, METRES, "and its plan extent parallel to the slope", "of its outline, projected to plan"),
      fact("diameterM", NUMBER, METRES, "round penetrations: diameter", "the narrow width of the line's ellipse"),
      fact("neighbourClass", WORD, "IFC class of what the face ends at", "of the element, or of what fills the hole"),
      fact("roofHole", WORD, "penetrations: \"none\", \"partly\" or \"whole\": whether the roof is modelled with a hole for it",
          "the hole held against the outline of what stands in it"),
      fact("service", FLAG, "penetrations: true for pipes, ducts, cable trays and other parts of the services", "by IFC class"),
      fact("oblique", FLAG, "true for a free edge neither parallel to the slope nor level", "obliquity between 5 and 85 degrees"),
      fact("curved", FLAG, "true where a face at the line is curved", "the face is a run of facets"),
      fact("gapM", NUMBER, METRES, "two faces: the gap between their edges as modelled", "where it is more than coincidence"),
      fact("runM", NUMBER, METRES, "where panels are divided: the longest that there would be without it", "panel layout"),
      fact("runMovementM", NUMBER, METRES, "and that panel's movement at its free end, between the lowest and the highest temperature of "
          + "the metal", "coefficient of expansion; half the length where it is fixed in the middle"),
      fact("runGapM", NUMBER, METRES, "and the room that the system leaves for it", "roof system"),
      fact("longestPieceM", NUMBER, METRES, "and the longest panel that is made in one", "roof system"));

  /** What the rules that choose details see besides. */
  public static final List<Fact> CHOICE = List.of(
      fact("kind", WORD, "the kind that kinds.ttl gave it", "by the shapes, or by manual override"),
      fact("ridgeVented", FLAG, "true where the system's ridges are vented", "roof system"),
      fact("counterflashing", WORD, "\"reglet\" or \"surface-mounted\"", "roof system: how flashings end at walls"),
      fact("fixedAt", WORD, "where panels can't move: \"eave\", \"ridge\", \"middle\", \"both-ends\"", "roof system"),
      fact("sealSeamsBelowDegrees", NUMBER, DEGREES, "faces flatter than this count as low slope: their seams are sealed",
          "roof system, its limit as an angle"),
      fact("cricketAboveM", NUMBER, METRES, "penetrations wider than this perpendicular to the slope get a cricket", "roof system"),
      fact("backUpPlates", FLAG, "true where the system asks for a back-up plate under what is fastened to the pan alone", "roof system"),
      fact("onSeam", FLAG, "pipes: true where a seam runs through the pipe or its boot", "panel layout"),
      fact("gutter", FLAG, "eaves: true where a gutter hangs along it", "the model's gutters along the line, or roof system"),
      fact("parapet", FLAG, "walls: true where the wall is a parapet, which ends under a coping",
          "the model's names, or the roof system's height of parapets"));

  /** What the rules that make findings see of a junction besides these. */
  public static final List<Fact> JUNCTION = List.of(
      fact("lengthM", NUMBER, METRES, "its length", "along its path"),
      fact("detail", WORD, "the detail that details.ttl chose", "by the shapes, or by manual override"),
      fact("metalFirst", FLAG, "true where the detail's metal alone still leads the water off", "the detail says so"),
      fact("beadOnly", FLAG, "true where nothing but a bead keeps the water out", "the detail's seals and metal"),
      fact("sealantExposed", FLAG, "true where some of its sealant is exposed", "the detail's seals"),
      fact("tapeSpacingM", NUMBER, METRES, "greatest distance between the fasteners of a line through tape", "fastener lines"),
      fact("tapeCoverageShare", NUMBER, SHARE, "least share, 0 to 1, of such a line that lies within the fasteners' reach",
          "fastener lines"),
      fact("flowWidthM", NUMBER, METRES, "valleys: width of the design rain's flow at the low end, perpendicular to the line",
          "the area that drains into it, five-minute rain, Manning's formula"),
      fact("cleatLineM", NUMBER, METRES, "valleys: width free between the cleats there", "roof system"),
      fact("eaveAtLowEnd", FLAG, "walls: true where an eave ends at the line's low end", "ends of lines that meet"),
      fact("leadingSide", FLAG, "penetrations: true at the one side where findings about the whole thing are said",
          "the side with the first id"),
      fact("toValleyM", NUMBER, METRES, "penetrations: distance from their edge to the nearest valley of the same face",
          "between the lines"),
      fact("toPenetrationM", NUMBER, METRES, "penetrations: distance between their edge and the nearest other such edge on the "
          + "same face", "between the lines"),
      fact("dropSlopeDegrees", NUMBER, DEGREES, "eaves and valleys: slope of the lower face that their water drops on",
          "the highest face below; none, no fact"),
      fact("dropM2", NUMBER, SQUARE_METRES, "and the plan area of the water that drops, square metres", "trace of the water"),
      fact("flowLps", NUMBER, LITRES_PER_SECOND, "flow of the five-minute rain that comes to it, litres a second",
          "plan area that drains to it, from every roof above, times intensity and runoff"),
      fact("largerFlowShare", NUMBER, SHARE, "valleys: share of its water, 0.5 to 1, that comes from the one side",
          "trace of the water"),
      fact("endsAtWall", FLAG, "valleys: true where its water runs on against a wall", "trace of the water"),
      fact("channelDepthM", NUMBER, METRES,
          "level valleys, downslope walls, upslope sides of penetrations (half the flow): depth in a channel 100 mm wide at 1:200",
          "Manning's equation for a rectangle"),
      fact("outletM", NUMBER, METRES, "level valleys, downslope walls, eaves: diameter of each leader that carries the flow",
          "National Standard Plumbing Code 2006, table 13.6.1"),
      fact("overflowM", NUMBER, METRES, "level valleys, downslope walls: width of an overflow that takes the flow 2 in deep",
          "weir formula of Francis"),
      fact("heldM2", NUMBER, SQUARE_METRES, "level valleys, downslope walls: plan area whose water finds no way out, square metres",
          "trace of the water"),
      fact("outletHeadM", NUMBER, METRES, "level valleys, downslope walls: depth of water over that leader's mouth",
          "weir along its edge, or orifice"),
      fact("gutterOutlets", COUNT, "eaves: outlets of a gutter along it", "roof system: spacing of outlets"),
      fact("gutterM", NUMBER, METRES, "eaves: diameter of the half-round gutter that carries the flow between them; none beyond 10 in",
          "published table at 1/16 in a foot"),
      fact("entryCount", COUNT, "eaves: doors of walls on which comes down what slides off it", "the model's doors in the wall behind it"),
      fact("roomCount", COUNT, "level valleys, downslope walls, eaves with a gutter: rooms under it",
          "the model's spaces that are not external"),
      fact("counterflashed", FLAG, "sides of penetrations: true where the detail's metal covers the upturned flashing from above",
          "parts of the detail"),
      fact("toRidgeM", NUMBER, METRES, "penetrations: distance from their edge to the nearest ridge or hip of the same face",
          "between the lines"),
      fact("toWallM", NUMBER, METRES, "penetrations: distance from their edge to the nearest wall of the same face",
          "between the lines"),
      fact("lineMovementM", NUMBER, METRES, "its flashing's change of length between the lowest and the highest temperature of the "
          + "metal", "coefficient of expansion"));

  /** What the rules that give nodes their kinds see of a node: how many lines of each sort end there. */
  public static final List<Fact> NODE = List.of(
      fact("endCount", COUNT, "lines that end at the node, those left out that are no longer than the gap", "counted"),
      fact("through", WORD, "the line that is met here and goes on: \"ridge\", \"hip\", \"valley\", \"level-valley\", \"transition\", "
          + "\"eave\", \"high-eave\", \"rake\", \"wall\", \"curb\", \"level\", \"other\" or \"none\"", "lines that pass within the gap"),
      fact("ridgeEnds", COUNT, "level convex lines between faces that end here", "by the lines' kinds"),
      fact("hipHeads", COUNT, "high ends of sloping convex lines", "likewise, and by height"),
      fact("hipFeet", COUNT, "and low ends", "likewise"),
      fact("valleyHeads", COUNT, "high ends of sloping concave lines", "likewise"),
      fact("valleyFeet", COUNT, "and low ends", "likewise"),
      fact("levelValleyEnds", COUNT, "ends of level concave lines that both faces drain into", "likewise"),
      fact("transitionEnds", COUNT, "ends of breaks between a steeper and a flatter face", "likewise"),
      fact("eaveEnds", COUNT, "ends of eaves", "likewise"),
      fact("highEaveEnds", COUNT, "ends of high eaves", "likewise"),
      fact("rakeHeads", COUNT, "high ends of rakes", "likewise"),
      fact("rakeFeet", COUNT, "and low ends", "likewise"),
      fact("headwallEnds", COUNT, "ends of walls that the face falls away from", "likewise"),
      fact("lowWallEnds", COUNT, "ends of walls that the face drains into", "likewise"),
      fact("wallHeads", COUNT, "high ends of walls beside the water: sidewalls and skew walls", "likewise"),
      fact("wallFeet", COUNT, "and low ends", "likewise"),
      fact("wallEnds", COUNT, "ends of walls of every kind", "added up"),
      fact("curbUpslopeEnds", COUNT, "ends of the upslope sides of penetrations", "by the lines' kinds"),
      fact("curbSideEnds", COUNT, "ends of their other sides", "likewise"),
      fact("curbDownslopeEnds", COUNT, "ends of their downslope sides", "likewise"),
      fact("curbEnds", COUNT, "ends of sides of penetrations of every kind", "added up"),
      fact("levelEdgeEnds", COUNT, "ends of edges of level faces", "by the lines' kinds"),
      fact("cricket", FLAG, "true where a line ends whose detail has a cricket", "the detail has a part with the id cricket"),
      fact("cornerDegrees", NUMBER, DEGREES, "just two free edges, walls or sides of penetrations end here: plan angle between them on the "
          + "roof's side; less than 180 at an outside corner of the roof, more at an inside one", "between the lines' plan directions"),
      fact("straight", FLAG, "true where just two lines end here and each goes on in the other's direction",
          "angle in space under 5 degrees"));

  /** What the rules that make findings see of a node besides these. */
  public static final List<Fact> NODE_REVIEW = List.of(fact("nodeKind", WORD, "the kind that nodes.ttl gave it", "by the shapes"));

  /** And of a face. */
  public static final List<Fact> FACE = List.of(
      fact("panelLengthM", NUMBER, METRES, "length of the longest piece of panel that is made for it", "panel layout"),
      fact("panelRunM", NUMBER, METRES, "length of its longest panel if none were divided", "panel layout"),
      fact("panelRunMovementM", NUMBER, METRES, "that panel's movement at its free end", "as movementM"),
      fact("stepJoints", COUNT, "lines at which its panels are divided to move apart", "panel layout, by the kinds of those lines"),
      fact("endLaps", COUNT, "lines at which its panels are lapped of pieces", "likewise"),
      fact("movementM", NUMBER, METRES, "change of length of the longest panel that moves as one, between the lowest and the highest "
          + "temperature of the metal", "coefficient of expansion; half the length where it is fixed in the middle"),
      fact("faceMetal", WORD, "its metal, by the words of panelMetal", "names of the model's materials, or else roof system"),
      fact("copperAbove", FLAG, "true where water that ran over copper comes to a face of zinc, aluminium or what is coated with them",
          "trace of the water"));

  /** What the rules that fix panels see of one, besides where the system fixes panels. */
  public static final List<Fact> PANEL = List.of(
      fact("lowEnd", WORD, "kinds of the junctions at its low end, one value each", "its cut edges held against the lines of its face"),
      fact("highEnd", WORD, "kinds of the junctions at its high end, one value each", "likewise"),
      fact("fixedClips", FLAG, "true where the system has clips that hold a panel fast", "roof system"));

  /** What the rules that give work its order see of a part at its place, or of a place. */
  public static final List<Fact> WORK = List.of(
      fact("place", WORD, "\"face\", \"line\" or \"node\": where the work is done", "by the place"),
      fact("part", WORD, "id of the metal part, seal or line of fasteners, by details-content.ttl; none for the place itself",
          "the detail says so"),
      fact("lineFamily", WORD, "what the line's face ends at, by kinds.ttl: \"faces\", \"edge\", \"wall\", \"penetration\", \"round\", "
          + "\"level\", \"field\", \"none\"", "by the line's kind"),
      fact("lineWater", WORD, "where the face's water goes at the line, by kinds.ttl: \"away\", \"over\", \"along\", \"into\", \"beside\", "
          + "\"against\"", "by the line's kind"),
      fact("facesAbove", COUNT, "faces that drain to the line", "rise of each face away from the line"),
      fact("facesBelow", COUNT, "faces that fall away from the line", "likewise"),
      fact("panelled", FLAG, "true for a face that has panels", "panel layout"));

  /** What the rules that put two steps in order see of them besides. */
  public static final List<Fact> PRECEDENCE = List.of(
      fact("work", WORD, "work of the later step", "by the shapes"),
      fact("earlier", WORD, "work of the step that must come before it", "likewise"),
      fact("meets", WORD, "\"same\" (both at one place), \"face-above\", \"face-below\", \"face-beside\" (one at a face, the other at a "
          + "line to which the face drains, from which it falls away, or beside which it falls; a step of a joint within the face may "
          + "stand for one of the face), \"face-within\" (a face and a joint within it), \"joint-below\" (two joints of a face, that of "
          + "the earlier step the lower one), \"line-end\" (a line and a node where it ends), \"node-face\" (a node and a face there), "
          + "\"lines\" (two lines that end at one node)", "places that touch"),
      fact("end", WORD, "which end of the line is at the node: \"high\", \"low\" or \"level\"", "by height"),
      fact("earlierKind", WORD, "two lines: kind of that of the earlier step", "by the shapes"),
      fact("earlierFamily", WORD, "two lines: its family", "by its kind"),
      fact("earlierWater", WORD, "two lines: where the water goes at it", "by its kind"));

  /** And of the roof system, wherever they look. */
  public static final List<Fact> SYSTEM = List.of(
      fact("panelMetal", WORD, "metal of the panels: \"zinc\", \"galvanized-steel\", \"aluminium-zinc-steel\", \"aluminium\", \"steel\", "
          + "\"lead\", \"stainless-steel\", \"copper\"", "roof system"),
      fact("flashingMetal", WORD, "metal of the flashings, by the same words", "roof system"),
      fact("fastenerMetal", WORD, "metal of the fasteners, by the same words", "roof system"),
      fact("panelThicknessM", NUMBER, METRES, "thickness of the panel's sheet", "roof system"),
      fact("fastenerContact", WORD, "fastener in the panel's sheet: \"compatible\", \"small-noble\" or \"corrodes\"",
          "galvanic table"),
      fact("flashingContact", WORD, "flashing on the panel's sheet: \"compatible\" or \"corrodes\"", "galvanic table"),
      fact("movementGapM", NUMBER, METRES, "room at a panel's free end", "roof system"),
      fact("lockedStressMPa", NUMBER, MEGAPASCALS, "stress in a panel pinned at both ends", "E·α·ΔT of the site's metal temperatures"),
      fact("tapeWidthM", NUMBER, METRES, "the tape's width as laid", "roof system"),
      fact("tapeSpreadM", NUMBER, METRES, "and pressed as far as it is meant to be", "its volume stays"),
      fact("lipM", NUMBER, METRES, "width of the fastening flange that lies on it", "roof system"),
      fact("closureHeightM", NUMBER, METRES, "height of the closures", "roof system"),
      fact("seamHeightM", NUMBER, METRES, "height of the seams", "roof system"),
      fact("closureProudM", NUMBER, METRES, "how far a closure on pressed tape stands above the seam", "heights added up"),
      fact("lowestSlopeDegrees", NUMBER, DEGREES, "lowest slope that the panel's maker states", "roof system"),
      fact("flashingClearanceM", NUMBER, METRES, "room that the flashing of a penetration needs around it", "roof system"),
      fact("acidCuring", FLAG, "true for a sealant that gives off acetic acid", "roof system"),
      fact("installAirC", NUMBER, CELSIUS, "temperature of the air at work", "roof system"),
      fact("sealantLowestC", NUMBER, CELSIUS, "lowest temperature at which the sealant may be applied", "roof system"),
      fact("sealantHighestC", NUMBER, CELSIUS, "and the highest", "roof system"),
      fact("metalAboveDewPointK", NUMBER, KELVINS, "how much warmer than the dew point the metal is",
          "Magnus formula over air and humidity"),
      fact("dewPointMarginK", NUMBER, KELVINS, "and how much it should be", "roof system"),
      fact("slumpStressPa", NUMBER, PASCALS, "what a vertical bead's own weight requires of the sealant",
          "density and size of the bead"),
      fact("yieldStressPa", NUMBER, PASCALS, "and what the data sheet states (0: unknown)", "roof system"),
      fact("freeEdgeM", NUMBER, METRES, "length of all free edges", "sum over the roof"),
      fact("eaveM", NUMBER, METRES, "length of all eaves", "lines added up"),
      fact("marine", FLAG, "true within reach of salt spray", "roof system"),
      fact("iceBarrier", FLAG, "true where the authority asks for an ice barrier", "roof system"),
      fact("iceZoneM2", NUMBER, SQUARE_METRES, "area from the eaves to 24 in inside the walls' inside",
          "plan distance to the walls of the model; where a barrier is asked for"),
      fact("iceUnmeasuredM", NUMBER, METRES, "length of the eaves without a wall in the model, taken to stand under the edge",
          "likewise"),
      fact("lowestMetalC", NUMBER, CELSIUS, "lowest temperature of the metal", "roof system"),
      fact("jointSpacingM", NUMBER, METRES, "greatest distance between expansion joints of the flashings' metal", "UFGS 07 60 00"));

  private static final Map<String, Fact> BY_NAME = new TreeMap<>();

  static {
    Stream.of(LINE, CHOICE, JUNCTION, NODE, NODE_REVIEW, FACE, PANEL, WORK, PRECEDENCE, SYSTEM).flatMap(List::stream)
        .forEach(f -> BY_NAME.put(f.name(), f));
  }

  private FactList() {
  }

  /** All of them, by name. */
  public static List<Fact> all() {
    return List.copyOf(BY_NAME.values());
  }

  /** The fact of a name. */
  public static Optional<Fact> find(String name) {
    return Optional.ofNullable(BY_NAME.get(name));
  }

  /** Unit of a fact; {@link FactUnit#NONE} where there is none of the name. */
  public static FactUnit unit(String name) {
    return find(name).map(Fact::unit).orElse(NONE);
  }

  private static Fact fact(String name, FactType type, FactUnit unit, String meaning, String measured) {
    return new Fact(name, type, unit, meaning, measured);
  }

  private static Fact fact(String name, FactType type, String meaning, String measured) {
    return fact(name, type, NONE, meaning, measured);
  }
}
