package org.seamledger.finding;

/** The one catalogue of findings that the program itself makes; findings of the design come from {@code shapes/findings.ttl}. */
public enum Code {
  // Reading
  UNSUPPORTED_GEOMETRY("model/unsupported-geometry", Severity.WARNING,
      "Export the element with another kind of geometry, or check it by hand: it is not in the result."),
  BROKEN_GEOMETRY("model/broken-geometry", Severity.WARNING,
      "Repair the element in the authoring tool and export again: what could be read of it is in the result."),
  OUT_OF_BOUNDS("model/out-of-bounds", Severity.WARNING,
      "Correct the element's coordinates, placement or unit in the authoring tool and export again: it is not in the result."),
  BROKEN_REFERENCE("model/broken-reference", Severity.WARNING,
      "The file refers to something that it does not hold; export it again."),
  REPEATED_ID("model/repeated-instance-id", Severity.WARNING,
      "The first instance of each such id counts and the others are left out, so that parts of the model may be missing: export it again."),
  BAD_GLOBAL_ID("model/bad-global-id", Severity.INFO,
      "Identifiers that are not valid GlobalIds are kept as they stand; links to other tools may fail."),
  NO_UNIT("model/no-length-unit", Severity.WARNING,
      "The file states no length unit and metres are assumed; compare one known length."),
  // Several models
  MODEL_MISPLACED("models/misplaced", Severity.WARNING,
      "Export the models with one origin and one orientation, or place the model, on the page or by --place, once the movement is"
          + " confirmed."),
  MODELS_APART("models/apart", Severity.WARNING,
      "Check that the models belong to one building and are exported with one origin; what lies elsewhere meets no roof."),
  MODEL_PLACED("models/placed", Severity.INFO,
      "Check one element that is in both models, or one known distance between them."),
  MAP_NOT_SHARED("models/map-not-shared", Severity.INFO,
      "Have every model state the same map conversion, or agree on one origin for all."),
  MAPS_DIFFER("models/different-maps", Severity.WARNING,
      "Agree on one coordinate reference system for all models."),
  MAP_SCALE("models/map-scale", Severity.INFO,
      "Correct the scale of the map conversion: it is the map's length unit for one of the project's, as a factor."),
  MAP_UNUSABLE("models/map-unusable", Severity.WARNING,
      "Correct the map conversion, or leave it out."),
  DUPLICATES("models/duplicates", Severity.INFO,
      "Elements that several models hold are counted once. Name the model that should count first."),
  DUPLICATES_DIFFER("models/duplicates-differ", Severity.WARNING,
      "The models disagree about these elements: bring them to one state and export again."),
  // Quantities
  CLOSURES_MISMATCH("quantity/closures-mismatch", Severity.WARNING,
      "Pieces between seams don't add up to the line they close; check that line against the model."),
  NO_FIXED_LINE("movement/no-fixed-line", Severity.VIOLATION,
      "Fix each panel along exactly one line: at an end that can carry it, or by fixed clips; else it creeps down the slope."),
  TWO_FIXED_LINES("movement/two-fixed-lines", Severity.VIOLATION,
      "Let the panel slide at all lines but one: else it buckles, tears its fasteners or opens its seals."),
  TOO_MANY_SEAMS("quantity/too-many-seams", Severity.WARNING,
      "Correct the face's size in the model, or the panel's coverage: it has no seams and no panels in the result."),
  SLIVER("quantity/sliver", Severity.INFO,
      "Move the start of the seams on that face, or agree on a wider end panel."),
  // Order of work
  WORK_CYCLE("sequence/cycle", Severity.VIOLATION,
      "Choose another detail at one of these places, or correct the precedence in sequence.ttl: no order of work does them all."),
  // Roof
  NO_ROOF("roof/none", Severity.VIOLATION,
      "No roof was found. Type roofs as IfcRoof or as roof slabs, or let their names say roof."),
  ROOF_BY_NAME("roof/by-name", Severity.WARNING,
      "No element is typed as a roof; elements whose names say roof were taken. Check the list, and type them in the model."),
  ROOF_WITHOUT_SHAPE("roof/without-shape", Severity.WARNING,
      "A roof element has no shape of its own or of its parts; nothing of it is in the result."),
  ROOF_IN_PARTS("roof/in-parts", Severity.WARNING,
      "A roof element's parts have a shape, but are no slabs, plates or coverings: type those that carry the surface so."),
  CLOSED_BY_FLOOR("roof/closed-by-floor", Severity.WARNING,
      "Slabs that are typed as floors lie on walls with nothing above them: type those that are roofs so; they are not in the result."),
  NO_FACE("roof/no-face", Severity.VIOLATION,
      "Nothing of a roof element is in the result: look at it in the model, and count it by hand."),
  LOST_AREA("roof/lost-area", Severity.WARNING,
      "A part of a roof element is in no face: compare the plan with the model, and count that part by hand."),
  NEIGHBOUR_WITHOUT_SHAPE("roof/neighbour-without-shape", Severity.INFO,
      "An element that may pierce the roof has no shape; add it to the model, or add its flashing by hand."),
  // Junctions
  PERIMETER_MISMATCH("junction/perimeter-mismatch", Severity.WARNING,
      "Junction lengths around a face do not add up to its perimeter; check that face against the model."),
  FLASHING_ALONE("junction/flashing-near-none", Severity.INFO,
      "A flashing or gutter in the model accompanies no junction of the roof: move it, or take it for what it is."),
  // Drainage
  WATER_UNBALANCED("drainage/unbalanced", Severity.WARNING,
      "Compare the drainage with the plan: what leaves the roof is not what falls on it, so flows at some lines are wrong."),
  // Kinds
  UNCLASSIFIED("kind/unclassified", Severity.WARNING,
      "No shape, or more than one, claims this line: decide its kind by hand, or complete the shapes."),
  NEAR_LIMIT("kind/near-limit", Severity.INFO,
      "The kind hangs on less than models are exact: look which of the two it is meant to be, and decide it by hand where it is"
          + " the other."),
  FLAT_EDGE("kind/flat-edge", Severity.WARNING,
      "Standing seam does not belong on a level face; use a membrane or give the face a slope."),
  // Details
  NO_DETAIL("detail/none", Severity.WARNING,
      "No detail, or more than one, is chosen for this line: decide it by hand, or complete the shapes."),
  // Decisions of people
  CHOSEN_BY_HAND("review/chosen-by-hand", Severity.INFO,
      "A person chose this in place of the rules, and quantities follow the choice: read the reason before ordering."),
  DECISION_WITHOUT_JUNCTION("review/unknown-junction", Severity.WARNING,
      "The decision has no effect: compare the junction's id with the ledger, or take the decision out."),
  ACCEPTED_WITHOUT_FINDING("review/unknown-finding", Severity.INFO,
      "The acceptance has no effect: take it out where the finding was put right, or compare code, junction and elements."),
  TOPIC_WITHOUT_FINDING("review/unknown-topic", Severity.INFO,
      "The topic that came back has no effect: it is another building's, or what it was about has been put right."),
  UNKNOWN_DETAIL("review/unknown-detail", Severity.WARNING,
      "The choice of this detail has no effect: choose one of the rules' details, or add it to the shapes."),
  UNFIT_DETAIL("review/unfit-detail", Severity.WARNING,
      "The detail is counted as far as it can be: check each number by hand, or choose the kind that it belongs to, too.");

  private final String id;
  private final Severity severity;
  private final String advice;

  Code(String id, Severity severity, String advice) {
    this.id = id;
    this.severity = severity;
    this.advice = advice;
  }

  /** The code as results show it. */
  public String id() {
    return id;
  }

  public Severity severity() {
    return severity;
  }

  /** Whether it is said once, with all its places. */
  public static boolean isOnce(String code) {
    return code.equals(FLAT_EDGE.id) || code.equals(SLIVER.id);
  }

  /** Who does it: the one who draws the model, or the roofer. */
  public String who() {
    return id.startsWith("model") || id.startsWith("roof/") ? "architect" : "roofer";
  }

  /** What to do about it, for people. */
  public String advice() {
    return advice;
  }
}
