package org.seamledger.node;

import java.util.Locale;
import org.seamledger.detail.Kind;
import org.seamledger.detail.KindedJunction;
import org.seamledger.junction.LineEnd;

/** What a line is to a node, by what the shapes say of its kind: family, look and water. Kinds that an office adds have one, too. */
public enum LineSort {
  RIDGE("ridgeEnds"), HIP("hipHeads", "hipFeet"), VALLEY("valleyHeads", "valleyFeet"), LEVEL_VALLEY("levelValleyEnds"),
  TRANSITION("transitionEnds"), EAVE("eaveEnds"), HIGH_EAVE("highEaveEnds"), RAKE("rakeHeads", "rakeFeet"), HEADWALL("headwallEnds"),
  LOW_WALL("lowWallEnds"), WALL("wallHeads", "wallFeet"), CURB_UPSLOPE("curbUpslopeEnds"), CURB_SIDE("curbSideEnds"),
  CURB_DOWNSLOPE("curbDownslopeEnds"), LEVEL("levelEdgeEnds"), OTHER("");

  private final String high;
  private final String low;

  LineSort(String fact) {
    this(fact, fact);
  }

  LineSort(String high, String low) {
    this.high = high;
    this.low = low;
  }

  /** The fact that counts ends such as this; empty where none does. */
  String fact(LineEnd.Height height) {
    return height == LineEnd.Height.LOW ? low : high;
  }

  public boolean isWall() {
    return this == HEADWALL || this == LOW_WALL || this == WALL;
  }

  public boolean isCurb() {
    return this == CURB_UPSLOPE || this == CURB_SIDE || this == CURB_DOWNSLOPE;
  }

  /** Whether one face ends at it. */
  public boolean isEdge() {
    return isWall() || isCurb() || this == EAVE || this == HIGH_EAVE || this == RAKE;
  }

  /** As the fact of lines that pass says it. */
  public String word() {
    return isWall() ? "wall" : isCurb() ? "curb" : own();
  }

  /** Whether a word names it: its own, or that of all walls or penetrations. */
  boolean matches(String word) {
    return word.equals(word()) || word.equals(own());
  }

  private String own() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static LineSort of(KindedJunction line) {
    boolean level = LineEnd.isLevel(line.junction().facts().number("inclinationDegrees"));
    return switch (line.type().family()) {
      case FACES -> betweenFaces(line.type(), level);
      case EDGE -> line.type().line() == Kind.Line.EAVE || line.type().water() == Kind.Water.OVER ? EAVE
          : line.type().section() == Kind.Section.HIGH_EDGE ? HIGH_EAVE : RAKE;
      case WALL -> switch (line.type().water()) {
        case BESIDE, ALONG -> WALL;
        case AGAINST, INTO -> LOW_WALL;
        default -> HEADWALL;
      };
      case PENETRATION, ROUND -> switch (line.type().water()) {
        case BESIDE, ALONG -> CURB_SIDE;
        case AGAINST, INTO -> CURB_UPSLOPE;
        default -> CURB_DOWNSLOPE;
      };
      case LEVEL -> LEVEL;
      case FIELD -> OTHER;
      case NONE -> OTHER;
    };
  }

  private static LineSort betweenFaces(Kind kind, boolean level) {
    return switch (kind.line()) {
      case VALLEY -> level ? LEVEL_VALLEY : VALLEY;
      case RIDGE -> level ? RIDGE : HIP;
      default -> TRANSITION;
    };
  }
}
