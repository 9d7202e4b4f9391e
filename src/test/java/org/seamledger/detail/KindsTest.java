package org.seamledger.detail;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Facts;
import org.seamledger.junction.Junction;
import org.seamledger.progress.Progress;
import org.seamledger.shacl.Rules;

/**
 * The kinds against the geometric rule of the trade, worked out here a second time with plane gradients instead of angles: for a face
 * of gradient g and a line with a unit plan normal p into the face, a = g·p tells whether the face rises or falls away from the line,
 * and s = g·d along the line tells whether it is level.
 */
class KindsTest {

  private static final Kinds KINDS = new Kinds(Rules.packaged());

  @Test
  void everyPossibleLineIsOfExactlyOneKindAndOfTheRightOne() {
    long seed = System.nanoTime();
    Random random = new Random(seed);
    for (int i = 0; i < 4000; i++) {
      Line line = random.nextInt(3) == 0 ? Line.betweenFaces(random) : Line.ofOneFace(random);
      if (line.nearALimit()) {
        continue;
      }
      String kind = KINDS.kind(line.junction()).kind();
      assertThat(kind).as("seed %d, line %d: %s", seed, i, line.facts).isEqualTo(line.expected());
    }
  }

  @Test
  void limitsThemselvesHaveOneKindToo() {
    // Every combination of values at and just beside the limits.
    double[] slopes = {0, 0.499, 0.5, 0.501, 20};
    double[] turned = {0, 14.999, 15, 15.001, 44.999, 45, 74.999, 75, 84.999, 85, 90};
    for (String against : List.of("nothing", "wall", "penetration", "opening")) {
      for (double slope : slopes) {
        for (double obliquity : turned) {
          for (int side : new int[] {-1, 1}) {
            double rise = side * Math.toDegrees(Math.atan(Math.tan(Math.toRadians(slope)) * Math.sin(Math.toRadians(obliquity))));
            Facts facts = Facts.builder().word("against", against).count("faceCount", 1).number("minSlopeDegrees", slope)
                .number("slopeDegrees", slope).number("obliquityDegrees", slope == 0 ? 90 : obliquity).number("lowRiseDegrees", rise)
                .number("highRiseDegrees", rise).number("inclinationDegrees", 0).build();
            assertThat(KINDS.kind(junction(facts)).kind()).as("%s", facts).isIn(Kinds.ALL);
          }
        }
      }
    }
  }

  @Test
  void aLineNobodyCanExplainIsReportedWithTheNearestKind() {
    Facts facts = Facts.builder().word("against", "nothing").count("faceCount", 1).number("minSlopeDegrees", 20)
        .number("obliquityDegrees", 90).number("highRiseDegrees", 20).build();
    Kinds.Result result = Kinds.classify(List.of(junction(facts)), Rules.packaged(), Progress.NONE);
    assertThat(result.junctions()).extracting(KindedJunction::kind).containsExactly("unclassified");
    assertThat(result.findings()).hasSize(1);
    Finding finding = result.findings().get(0);
    assertThat(finding.code()).isEqualTo("kind/unclassified");
    assertThat(finding.junction()).isEqualTo("j");
    assertThat(finding.message()).contains("lowRiseDegrees is not measured");
  }

  @Test
  void aLevelFaceIsReported() {
    Facts facts = Facts.builder().word("against", "wall").count("faceCount", 1).number("minSlopeDegrees", 0.2).build();
    Kinds.Result result = Kinds.classify(List.of(junction(facts)), Rules.packaged(), Progress.NONE);
    assertThat(result.junctions()).extracting(KindedJunction::kind).containsExactly("flat-edge");
    assertThat(result.findings()).extracting(Finding::code).containsExactly("kind/flat-edge");
  }

  /** Limits of kinds.ttl: a line is level below 0.5°, a free edge is an eave from 85° off the fall on. */
  @ParameterizedTest
  @CsvSource({"0.45, ridge, hip", "0.55, hip, ridge", "0.5, hip, ridge"})
  void aKindThatHangsOnLessThanModelsAreExactIsReported(double inclination, String kind, String other) {
    Kinds.Result result = Kinds.classify(List.of(junction(between(inclination))), Rules.packaged(), Progress.NONE);
    assertThat(result.junctions()).extracting(KindedJunction::kind).containsExactly(kind);
    assertThat(result.findings()).extracting(Finding::code).containsExactly("kind/near-limit");
    assertThat(result.findings().get(0).message()).contains("a " + kind).contains("it would be " + other);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.2, 0.8, 20})
  void aClearOneIsNot(double inclination) {
    assertThat(Kinds.classify(List.of(junction(between(inclination))), Rules.packaged(), Progress.NONE).findings()).isEmpty();
  }

  private static Facts between(double inclination) {
    return Facts.builder().word("against", "face").count("faceCount", 2).number("inclinationDegrees", inclination)
        .number("minSlopeDegrees", 20)
        .number("lowRiseDegrees", -20).number("highRiseDegrees", -20).number("foldDegrees", 40).build();
  }

  @Test
  void explanationNamesTheLimitThatWasMissed() {
    // A hip whose line rises by a little only: nearly a ridge.
    Facts facts = Facts.builder().word("against", "face").count("faceCount", 2).number("inclinationDegrees", 0.7)
        .number("lowRiseDegrees", -20).number("highRiseDegrees", -18).number("foldDegrees", 38).number("minSlopeDegrees", 18).build();
    Explanation e = KINDS.explain(facts);
    assertThat(e.shapes()).containsExactly("hip");
    assertThat(e.nearest()).isEqualTo("ridge");
    assertThat(e.missed()).containsExactly("needs inclinationDegrees below 0.5; inclinationDegrees is 0.7");
  }

  private static Junction junction(Facts facts) {
    return new Junction("j", List.of(new Vec3(0, 0, 0), new Vec3(3, 0, 0)), List.of("F1"), List.of("0abc"), facts);
  }

  /** A line with its faces, made from gradients. */
  private record Line(Facts facts, String against, double[] a, double s, double steepest, double flattest, double turned) {

    private static double degrees(double gradient) {
      return Math.toDegrees(Math.atan(gradient));
    }

    private static double[] gradient(Random random) {
      double slope = random.nextInt(8) == 0 ? random.nextDouble() * 0.02 : Math.tan(Math.toRadians(random.nextDouble() * 70));
      double azimuth = random.nextInt(3) == 0 ? Math.PI / 4 * random.nextInt(8) : random.nextDouble() * 2 * Math.PI;
      return new double[] {slope * Math.cos(azimuth), slope * Math.sin(azimuth)};
    }

    private static double dot(double[] u, double[] v) {
      return u[0] * v[0] + u[1] * v[1];
    }

    static Line betweenFaces(Random random) {
      double[] g1 = gradient(random);
      double[] g2 = random.nextBoolean() ? gradient(random)
          : new double[] {g1[0] * (random.nextDouble() * 4 - 2), g1[1] * 0 + g1[1] * (random.nextDouble() * 4 - 2)};
      if (random.nextInt(3) == 0) { // same or opposite fall: a level line
        double f = random.nextDouble() * 4 - 2;
        g2 = new double[] {g1[0] * f, g1[1] * f};
      }
      double dx = g1[0] - g2[0];
      double dy = g1[1] - g2[1];
      double n = Math.hypot(dx, dy);
      double[] d = {-dy / n, dx / n};
      double[] p = random.nextBoolean() ? new double[] {dx / n, dy / n} : new double[] {-dx / n, -dy / n};
      double[] q = {-p[0], -p[1]};
      double a1 = dot(g1, p);
      double a2 = dot(g2, q);
      double s = Math.abs(dot(g1, d));
      double m1 = Math.hypot(g1[0], g1[1]);
      double m2 = Math.hypot(g2[0], g2[1]);
      double cos = (1 + dot(g1, g2)) / Math.sqrt((1 + m1 * m1) * (1 + m2 * m2));
      double fold = Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, cos)))) * (a1 + a2 < 0 ? 1 : -1);
      Facts facts = Facts.builder().count("faceCount", 2).word("against", "face").number("inclinationDegrees", degrees(s))
          .number("lowRiseDegrees", degrees(Math.min(a1, a2))).number("highRiseDegrees", degrees(Math.max(a1, a2)))
          .number("foldDegrees", fold).number("slopeDegrees", degrees(m1)).number("otherSlopeDegrees", degrees(m2))
          .number("minSlopeDegrees", degrees(Math.min(m1, m2))).build();
      return new Line(facts, "face", new double[] {a1, a2}, s, Math.max(m1, m2), Math.min(m1, m2), Double.NaN);
    }

    static Line ofOneFace(Random random) {
      double[] g = gradient(random);
      double azimuth = random.nextInt(3) == 0 ? Math.PI / 4 * random.nextInt(8) : random.nextDouble() * 2 * Math.PI;
      double[] d = {Math.cos(azimuth), Math.sin(azimuth)};
      double[] p = {-d[1], d[0]};
      double a = dot(g, p);
      double s = Math.abs(dot(g, d));
      double m = Math.hypot(g[0], g[1]);
      double turned = Math.toDegrees(Math.asin(Math.min(1, Math.abs(a) / m)));
      String against = List.of("nothing", "wall", "penetration", "opening", "round").get(random.nextInt(5));
      Facts facts = Facts.builder().count("faceCount", 1).word("against", against)
          .number("inclinationDegrees", against.equals("round") ? 0 : degrees(s)).number("lowRiseDegrees", degrees(a))
          .number("highRiseDegrees", degrees(a)).number("slopeDegrees", degrees(m)).number("minSlopeDegrees", degrees(m))
          .number("obliquityDegrees", turned).build();
      return new Line(facts, against, new double[] {a}, s, m, m, turned);
    }

    Junction junction() {
      return KindsTest.junction(facts);
    }

    /** Within two thousandths of a degree of a limit either answer is right. */
    boolean nearALimit() {
      boolean level = near(degrees(s), 0.5) || near(degrees(flattest), 0.5);
      return level || near(turned, 15) || near(turned, 45) || near(turned, 75) || near(turned, 85)
          || against.equals("face") && (near(degrees(a[0]), 0) || near(degrees(a[1]), 0) || near(degrees(a[0] + a[1]), 0));
    }

    private static boolean near(double x, double limit) {
      return Math.abs(x - limit) < 0.002;
    }

    String expected() {
      if (degrees(flattest) < 0.5) {
        return "flat-edge";
      }
      boolean across = a[0] > 0;
      return switch (against) {
        case "face" -> betweenFaces();
        case "nothing" -> turned < 85 ? "rake" : across ? "eave" : "high-edge";
        case "wall" -> turned < 15 ? "sidewall" : turned < 75 ? "skew-wall" : across ? "low-wall" : "headwall";
        case "round" -> "pipe";
        default -> turned < 45 ? "curb-side" : across ? "curb-upslope" : "curb-downslope";
      };
    }

    private String betweenFaces() {
      double kappa = a[0] + a[1];
      if (degrees(s) > 0.5) {
        return kappa < 0 ? "hip" : "valley";
      }
      if (a[0] < 0 == a[1] < 0) {
        return a[0] < 0 ? "ridge" : "level-valley";
      }
      return kappa < 0 ? "transition-convex" : "transition-concave";
    }
  }
}
