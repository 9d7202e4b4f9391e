package org.seamledger.detail;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * How a junction is made and sealed.
 *
 * @param id such as {@code ridge-unvented}
 * @param title for people
 * @param metal from the first that is fitted to the last
 * @param seals likewise
 * @param waterPath what stops the water where no sealant is left
 * @param metalFirst whether the metal alone, lapped or turned up, still leads the water off
 * @param source where the detail comes from: a publication, or {@code common practice}
 * @param profiles how parts are folded
 * @param withFaces what else belongs to it, counted with the faces
 */
public record Detail(String id, String title, List<MetalPart> metal, List<Seal> seals, List<Fastening> fastenings,
    List<HoldPoint> holdPoints, String waterPath, boolean metalFirst, String source, List<FoldingProfile> profiles,
    List<FacePart> withFaces) {

  /** Where the rules choose no detail. */
  public static final Detail NONE = new Detail("none", "No detail chosen", List.of(), List.of(), List.of(), List.of(), "", false, "");

  /** A detail whose parts' profiles nobody states. */
  public Detail(String id, String title, List<MetalPart> metal, List<Seal> seals, List<Fastening> fastenings, List<HoldPoint> holdPoints,
      String waterPath, boolean metalFirst, String source) {
    this(id, title, metal, seals, fastenings, holdPoints, waterPath, metalFirst, source, List.of(), List.of());
  }

  public Detail {
    metal = List.copyOf(metal);
    seals = List.copyOf(seals);
    fastenings = List.copyOf(fastenings);
    holdPoints = List.copyOf(holdPoints);
    profiles = List.copyOf(profiles);
    withFaces = List.copyOf(withFaces);
  }

  /** With the parts alone that these facts of the system and the line ask for, and those that it always has. */
  public Detail askedBy(Map<String, ?> facts) {
    return only(m -> m.where().isEmpty() || Boolean.TRUE.equals(facts.get(m.where())), s -> true, f -> true);
  }

  /** With these of its parts, seals and lines of fasteners alone. */
  public Detail only(Predicate<MetalPart> parts, Predicate<Seal> ofSeals, Predicate<Fastening> lines) {
    return new Detail(id, title, metal.stream().filter(parts).toList(), seals.stream().filter(ofSeals).toList(),
        fastenings.stream().filter(lines).toList(), holdPoints, waterPath, metalFirst, source, profiles, withFaces);
  }

  /** How a part is folded in a section drawing; empty where nothing says so, as of what is made to measure. */
  public Optional<FoldingProfile> profile(String part, String section) {
    return profiles.stream().filter(p -> p.part().equals(part) && (p.section().isEmpty() || p.section().equals(section))
        && (p.beside().isEmpty() || metal.stream().anyMatch(m -> m.id().equals(p.beside()))))
        .max(Comparator.comparingInt(p -> (p.section().isEmpty() ? 0 : 2) + (p.beside().isEmpty() ? 0 : 1)));
  }
}
