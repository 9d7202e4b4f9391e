package org.seamledger.detail;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Facts;
import org.seamledger.junction.Junction;
import org.seamledger.shacl.Rules;

class DetailsTest {

  private static final KindBook KINDS = KindBook.read(Rules.packaged());
  private static final Details DETAILS = new Details(Rules.packaged());

  @Test
  void everyCombinationHasExactlyOneDetailAndEveryDetailComesUp() {
    Set<String> used = new TreeSet<>();
    for (String kind : java.util.stream.Stream.concat(Kinds.ALL.stream(), Kinds.JOINTS.stream()).toList()) {
      for (boolean vented : new boolean[] {false, true}) {
        for (String counterflashing : List.of("reglet", "surface-mounted")) {
          for (String fixedAt : List.of("eave", "middle", "both-ends")) {
            for (double slope : new double[] {14.03, 14.036}) {
              for (double rise : new double[] {-5, 5}) {
                for (double width : new double[] {0.762, 0.763}) {
                  for (boolean flag : new boolean[] {false, true}) {
                    Map<String, Object> system = system();
                    system.putAll(Map.of("ridgeVented", vented, "counterflashing", counterflashing, "fixedAt", fixedAt, "onSeam", flag));
                    system.putAll(Map.of("gutter", flag, "parapet", vented && !flag));
                    Facts facts = Facts.builder().number("minSlopeDegrees", slope).number("lowRiseDegrees", rise)
                        .number("widthAcrossFallM", width).flag("oblique", flag).flag("service", vented).build();
                    Details.Result r = DETAILS.choose(List.of(kinded(kind, facts)), j -> system);
                    assertThat(r.findings()).isEmpty();
                    used.add(r.junctions().get(0).detail().id());
                  }
                }
              }
            }
          }
        }
      }
    }
    assertThat(used).isEqualTo(DETAILS.book().keySet());
  }

  /** Two lines of tape, fasteners piece by piece and two beads with both upstands: worked examples of ridge, hip and headwall. */
  @Test
  void closuresAreSealedAsTheWorkedExamplesCount() {
    for (String id : List.of("ridge-unvented", "hip", "headwall-reglet")) {
      Detail d = DETAILS.book().get(id);
      assertThat(d.seals()).filteredOn(s -> s.form() == Seal.Form.TAPE).hasSize(2)
          .allMatch(s -> s.on() == On.EACH_FACE && s.run() == Run.CONTINUOUS && s.lines() == 1);
      assertThat(d.fastenings()).filteredOn(f -> f.place().equals("closure foot"))
          .singleElement().matches(f -> f.lines() == 1 && f.on() == On.EACH_FACE && f.run() == Run.PER_PIECE && f.throughTape()
              && f.spacing().equals("fasteners.spacing") && f.fixes() && f.joins() == Joins.PANEL_METAL);
      assertThat(d.seals()).filteredOn(s -> s.form() == Seal.Form.BEAD && s.exposure() == Seal.Exposure.CONCEALED)
          .singleElement().matches(s -> s.lines() == 2 && s.upstands() == 2 && s.run() == Run.PER_PIECE);
    }
  }

  @Test
  void valleysHaveAContinuousCleatOnEachSide() {
    Detail d = DETAILS.book().get("valley");
    assertThat(d.fastenings()).filteredOn(Fastening::throughTape)
        .containsExactly(new Fastening("cleat", 1, On.EACH_FACE, Run.CONTINUOUS, "fasteners.spacing", true));
    assertThat(d.seals()).filteredOn(s -> s.form() == Seal.Form.TAPE).singleElement().matches(s -> s.lines() == 1);
    assertThat(DETAILS.book().get("valley-low-slope").seals()).filteredOn(s -> s.form() == Seal.Form.TAPE).singleElement()
        .matches(s -> s.lines() == 2);
  }

  /**
   * Sealant in view only where a flashing ends at a wall or curb, at a pipe's clamp (UFC 3-110-03, 2006, chapter 4), and in the seam
   * terminations of free edges, which face the weather (common practice).
   */
  @Test
  void sealantShowsOnlyWhereItMust() {
    DETAILS.book().forEach((id, d) -> {
      boolean mayShow = id.contains("wall") && !id.endsWith("parapet") || id.startsWith("pipe") || id.startsWith("eave")
          || id.startsWith("curb") && !id.matches("curb-[a-z]+(-cricket)?") || id.equals("rake-oblique-low");
      assertThat(d.seals().stream().anyMatch(s -> s.exposure() == Seal.Exposure.EXPOSED)).as(id).isEqualTo(mayShow);
      assertThat(d.seals()).as(id).noneMatch(s -> s.form() == Seal.Form.BEAD && s.role() == Seal.Role.PRIMARY);
      assertThat(d.waterPath()).as(id).isNotBlank();
      assertThat(d.holdPoints()).as(id).allMatch(h -> !h.before().isBlank() && !h.check().isBlank());
      if (!id.equals("none-level-face")) {
        assertThat(d.metal()).as(id).isNotEmpty();
        assertThat(d.holdPoints()).as(id).isNotEmpty();
      }
    });
  }

  @Test
  void withoutAnAnswerThereIsAFinding() {
    Map<String, Object> system = system();
    system.put("counterflashing", "glued");
    Details.Result r = DETAILS.choose(List.of(kinded("headwall", Facts.builder().number("minSlopeDegrees", 20).build())), j -> system);
    assertThat(r.junctions()).extracting(j -> j.detail().id()).containsExactly("none");
    assertThat(r.findings()).singleElement()
        .matches(f -> f.code().equals("detail/none") && f.message().contains("no detail fits a headwall")
            && f.message().contains("parapet is false"));
  }

  private static Map<String, Object> system() {
    Map<String, Object> m = new TreeMap<>();
    m.put("ridgeVented", false);
    m.put("counterflashing", "reglet");
    m.put("fixedAt", "eave");
    m.put("sealSeamsBelowDegrees", Math.toDegrees(Math.atan(0.25)));
    m.put("cricketAboveM", 0.762);
    m.put("onSeam", false);
    m.put("gutter", false);
    m.put("parapet", false);
    return m;
  }

  private static KindedJunction kinded(String kind, Facts facts) {
    Junction j = new Junction("j", List.of(new Vec3(0, 0, 0), new Vec3(3, 0, 0)), List.of("F1"), List.of("0abc"), facts);
    return new KindedJunction(j, KINDS.kind(kind), new Explanation(List.of(kind), "", List.of()));
  }
}
