package org.seamledger.site;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/**
 * Reports where models that should be one building don't fit.
 *
 * <p>Each model is compared with the one that holds the roof. It fits where the two overlap and no shift or turn would bring clearly more
 * of their elements together. Where it doesn't, hypotheses are tried in turn: elements with the same GlobalId, elements of one class and
 * size, pipes and holes in the roof, then the models' own statements (maps, sites, buildings, grids, true north, storeys), each also with
 * quarter turns and with one unit taken for another.
 */
public final class ModelAlignment {

  /** Elements this far (metres) outside the other model's box still belong to its building. */
  private static final double MARGIN = 3;
  /** A model of which a smaller share than this lies at the other does not overlap it. */
  private static final double OVERLAPS = 0.02;
  /** A movement is worth naming where at least this share of the model then lies at the other. */
  private static final double MEETS = 0.7;
  /** Metres to which elements of two files tell a movement at best: writers round their numbers. */
  private static final double FOUND = 2e-7;
  /** One model so many times larger than another is hardly in the same unit. */
  private static final double ODD = 50;

  private final Footprint a;
  private final Footprint b;
  private final Vec3 offset;
  private final CandidateSearch hypotheses;
  private final Box3 there;

  private ModelAlignment(Footprint a, Footprint b, Vec3 offset) {
    this.a = a;
    this.b = b;
    this.offset = offset;
    this.hypotheses = new CandidateSearch(a, b);
    this.there = a.bulk().grown(MARGIN);
  }

  /**
   * Findings about models that don't fit; none where all do.
   *
   * @param models in the order in which they were given
   * @param offset world coordinates of the shared origin: world = shared + offset
   */
  public static List<Finding> findings(List<Footprint> models, Vec3 offset) {
    List<Finding> findings = new ArrayList<>();
    Footprint reference = models.stream().filter(s -> !s.roofs().isEmpty()).findFirst().orElse(models.get(0));
    for (int i = 0; i < models.size(); i++) {
      Footprint s = models.get(i);
      if (s != reference && !s.marks().isEmpty() && !reference.marks().isEmpty()) {
        new ModelAlignment(reference, s, offset).finding(i).ifPresent(findings::add);
      }
    }
    return findings;
  }

  private Optional<Finding> finding(int model) {
    boolean apart = share(Transform.IDENTITY) < OVERLAPS;
    double size = b.bulk().diagonal() / a.bulk().diagonal();
    boolean odd = size > ODD || size < 1 / ODD;
    int now = agreeing(Transform.IDENTITY);
    Candidate best = bestGuess(apart || odd, now);
    if (best != null) {
      RigidTransform own = own(best);
      String what = apart ? apartWords() : odd ? String.format(Locale.ROOT, "%s is %.0f times as %s as %s.", b.name(),
          Math.max(size, 1 / size), size > 1 ? "large" : "small", a.name())
          : "Elements of " + b.name() + " and " + a.name() + " lie apart that belong together.";
      return Optional.of(Finding.of(Code.MODEL_MISPLACED, what + " " + guessWords(best, own))
          .with(new Finding.Remedy(model, own.argument())));
    }
    if (apart) {
      Vec3 d = a.bulk().centre().minus(b.bulk().centre());
      return Optional.of(Finding.of(Code.MODELS_APART, apartWords() + " Nothing in them says how they belong together: they may be"
          + " different buildings. The middles of the two would meet with " + b.name() + " "
          + new RigidTransform(1, 0, d).words() + "."));
    }
    if (now == 0 && RoofClash.isBetween(a, b)) {
      return Optional.of(Finding.of(Code.MODELS_APART, "The roofs of " + b.name() + " and " + a.name() + " run through each other, and no"
          + " element in one has its like in the other: they may be different buildings, or one lies in the wrong place."));
    }
    return Optional.empty();
  }

  // ---- words

  private String apartWords() {
    Box3 p = a.bulk();
    Box3 q = b.bulk();
    double gap = Math.hypot(Math.hypot(gap(p.minX(), p.maxX(), q.minX(), q.maxX()), gap(p.minY(), p.maxY(), q.minY(), q.maxY())),
        gap(p.minZ(), p.maxZ(), q.minZ(), q.maxZ()));
    return String.format(Locale.ROOT, "%s does not overlap %s: %.1f m lie between them.", b.name(), a.name(), gap);
  }

  private static double gap(double a0, double a1, double b0, double b1) {
    return Math.max(0, Math.max(a0 - b1, b0 - a1));
  }

  /** From the model's own world to the world of the result, which is how people and their tools count. */
  private RigidTransform own(Candidate g) {
    Transform own = Transform.translation(offset).after(g.movement()).after(b.placed());
    return RigidTransform.of(own).tidied(Matches.turned(b.bulk(), b.placed().inverse()), g.within());
  }

  private String guessWords(Candidate g, RigidTransform m) {
    List<String> why = new ArrayList<>(List.of(g.why()));
    double north = hypotheses.northTurn();
    RigidTransform shared = RigidTransform.of(g.movement());
    if (Math.abs(north) > 0.01 && Math.abs(shared.degrees() - north) < 0.01) {
      why.add("the turn is the one between their true norths");
    }
    hypotheses.movements().forEach((words, t) -> {
      Vec3 at = b.bulk().centre();
      if (!g.why().startsWith(words) && t.apply(at).distance(g.movement().apply(at)) < 0.1) {
        why.add(words);
      }
    });
    String slip = CandidateSearch.slipWords(m.factor());
    if (!slip.isEmpty()) {
      why.add(slip);
    }
    Vec3 from = b.bulk().centre();
    Vec3 move = g.movement().apply(from).minus(from);
    if (m.factor() == 1 && Math.abs(shared.degrees()) < 1e-6 && move.planLength() < 0.05 && Math.abs(move.z()) > 0.05) {
      why.add("its heights count from another level");
    }
    return g.sure().word() + " it belongs " + m.words() + ": " + String.join("; ", why) + ". Nothing was moved; --place "
        + quoted(b.name() + "=" + m.argument()) + " does it.";
  }

  /** As a shell takes it. */
  private static String quoted(String word) {
    return word.matches("[\\p{L}\\p{N}_./:@+,=-]*") ? word : '"' + word.replaceAll("[\\\\\"$`]", "\\\\$0") + '"';
  }

  // ---- what speaks for a movement

  /** Share of the model's elements that lie at the other model after a movement. */
  private double share(Transform t) {
    long in = b.marks().stream().filter(m -> there.overlaps(Matches.turned(m.box(), t))).count();
    return in / (double) b.marks().size();
  }

  /** Elements that lie where their like is, and pipes in holes, after a movement. */
  private int agreeing(Transform t) {
    Vec3 shift = t.apply(Vec3.ZERO);
    Transform turn = Transform.translation(shift.negated()).after(t);
    return Matches.ofElements(a.marks(), b.marks(), turn).at(shift).count() + Matches.ofHoles(a.marks(), b.marks(), turn).at(shift).count();
  }

  private Candidate bestGuess(boolean odd, int now) {
    Candidate best = null;
    for (double factor : hypotheses.factors()) {
      for (double turn : hypotheses.turns()) {
        Transform t = new RigidTransform(factor, turn, Vec3.ZERO).transform();
        for (Candidate g : List.of(byElements(t, factor), byHoles(t, factor))) {
          best = isWorthNaming(g, odd, now) && g.isBetterThan(best) ? g : best;
        }
      }
    }
    best = best == null ? null : refined(best);
    if (best == null || best.sure() == Candidate.Sure.POSSIBLE) {
      for (Candidate g : byStatements()) {
        // A movement that the models themselves state is no search: two elements that then agree are hardly chance.
        boolean stated = g.count() >= 2 && g.count() > 2 * now;
        best = (odd || stated) && g.isBetterThan(best) ? g : best;
      }
    }
    return best;
  }

  /** As exact as the elements that agree say it: they were found by turns and shifts that were nearly right. */
  private Candidate refined(Candidate g) {
    RigidTransform found = RigidTransform.of(g.movement());
    Transform turn = new RigidTransform(found.factor(), found.degrees(), Vec3.ZERO).transform();
    List<TransformFit.Pair> pairs = Matches.ofElements(a.marks(), b.marks(), turn).pairs(found.shift());
    double rise = Double.NaN;
    if (TransformFit.of(pairs).isEmpty()) {
      pairs = Matches.ofHoles(a.marks(), b.marks(), turn).pairs(found.shift());
      rise = found.shift().z();
    }
    List<TransformFit.Pair> scaled = pairs.stream().map(p -> new TransformFit.Pair(p.from().times(found.factor()), p.to())).toList();
    TransformFit fit = TransformFit.of(scaled).orElse(null);
    double plainly = TransformFit.spread(new RigidTransform(1, found.degrees(), new Vec3(found.shift().x(), found.shift().y(),
        Double.isNaN(rise) ? found.shift().z() : 0)), scaled);
    if (fit == null || plainly <= 2 * fit.spread() + FOUND) {
      return new Candidate(g.movement(), g.sure(), g.count(), g.why(), Math.max(FOUND, plainly));
    }
    Vec3 shift = Double.isNaN(rise) ? fit.shift() : new Vec3(fit.shift().x(), fit.shift().y(), rise);
    Transform exact = new RigidTransform(found.factor(), fit.degrees(), shift).transform();
    return agreeing(exact) < agreeing(g.movement()) ? g : new Candidate(exact, g.sure(), g.count(), g.why(), Math.max(FOUND, fit.spread()));
  }

  /** Where models overlap as they are, only much better agreement says that they should not stay so. */
  private boolean isWorthNaming(Candidate g, boolean odd, int now) {
    if (g.count() == 0 || share(g.movement()) < MEETS) {
      return false;
    }
    boolean still = g.movement().apply(b.bulk().centre()).distance(b.bulk().centre()) < 0.1
        && g.movement().applyDirection(Vec3.X).distance(Vec3.X) < 1e-3;
    return !still && (odd || g.sure() != Candidate.Sure.POSSIBLE && g.count() > 2 * now + 1);
  }

  private Candidate byElements(Transform turn, double factor) {
    Matches.Peak peak = Matches.ofElements(a.marks(), b.marks(), turn).best();
    double share = peak.count() / (double) Math.max(1, peak.possible());
    Candidate.Sure sure = peak.sameId() >= 3 && share > 0.5 || peak.count() >= 8 && share > 0.5 ? Candidate.Sure.VERY_LIKELY
        : peak.count() >= 4 && share > 0.25 ? Candidate.Sure.LIKELY : Candidate.Sure.POSSIBLE;
    boolean chance = peak.sameId() == 0 && (peak.count() < 3 || share < 0.2);
    String why = elements(peak.count()) + (peak.sameId() > 0 ? " with the same GlobalId" + (peak.sameId() < peak.count()
        ? " or of one class and size" : "") : " of one class and size") + " then lie" + (peak.count() == 1 ? "s" : "")
        + " where " + a.name() + " has them";
    return new Candidate(Transform.translation(peak.shift()).after(turn), sure, chance ? 0 : peak.count(), why);
  }

  private static String elements(int n) {
    return n + (n == 1 ? " element" : " elements");
  }

  /** Holes say where in plan; the height comes from storeys of the same names, or stays where the pipes reach the holes as they are. */
  private Candidate byHoles(Transform turn, double factor) {
    Matches.Peak peak = Matches.ofHoles(a.marks(), b.marks(), turn).best();
    double storeys = hypotheses.storeyShift(factor);
    double rise = Double.isFinite(storeys) ? storeys : reachesHoles(factor) ? 0 : a.bulk().minZ() - factor * b.bulk().minZ();
    Candidate.Sure sure = peak.count() >= 3 && 2 * peak.count() > peak.possible() ? Candidate.Sure.LIKELY : Candidate.Sure.POSSIBLE;
    return new Candidate(Transform.translation(new Vec3(peak.shift().x(), peak.shift().y(), Math.abs(rise) < 0.001 ? 0 : rise)).after(turn),
        sure, peak.count() >= 2 ? peak.count() : 0, peak.count() + " pipes or ducts then stand in holes of the roof"
            + (Double.isFinite(storeys) ? ", and storeys of the same names lie level" : ""));
  }

  private boolean reachesHoles(double factor) {
    Box3 q = b.bulk();
    return a.marks().stream().filter(m -> m.kind().equals(Mark.HOLE))
        .anyMatch(m -> m.box().maxZ() > factor * q.minZ() && m.box().minZ() < factor * q.maxZ());
  }

  private List<Candidate> byStatements() {
    List<Candidate> guesses = new ArrayList<>();
    hypotheses.movements().forEach((why, t) -> {
      if (share(t) >= MEETS) {
        int storeys = hypotheses.storeysAt(RigidTransform.of(t).factor(), t.tz());
        int count = agreeing(t);
        guesses.add(new Candidate(t, count >= 2 || storeys >= 2 ? Candidate.Sure.LIKELY : Candidate.Sure.POSSIBLE, count,
            why + (count > 0 ? ", and " + elements(count) + (count == 1 ? " finds" : " find") + " a partner" : "")));
      }
    });
    for (double factor : hypotheses.factors()) {
      double rise = hypotheses.storeyShift(factor);
      for (Transform t : List.of(new RigidTransform(factor, 0, new Vec3(0, 0, Double.isFinite(rise) ? rise : 0)).transform(),
          new RigidTransform(factor, hypotheses.northTurn(), new Vec3(0, 0, Double.isFinite(rise) ? rise : 0)).transform())) {
        if (share(t) >= MEETS) {
          guesses.add(new Candidate(t, Candidate.Sure.POSSIBLE, agreeing(t), "the two then overlap"
              + (Double.isFinite(rise) ? ", and storeys of the same names lie level" : "")));
        }
      }
    }
    return guesses;
  }
}
