package org.seamledger.detail;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.seamledger.shacl.Described;
import org.seamledger.shacl.Rules;

/** Reads from the rules how parts are folded. */
final class ProfileBook {

  private static final Set<String> PROFILE = Set.of("profile", "ofPart", "inSection", "beside", "legs");
  private static final Set<String> LEG = Set.of("leg", "mm", "size", "share", "bend", "back", "bendTo");
  private static final List<String> SIZES = List.of("closure.height", "closure.fasteningFlange", "panel.seamHeight", "ridge.opening",
      "walls.upstand");

  private ProfileBook() {
  }

  /** @throws org.seamledger.shacl.BrokenRulesException where a profile's shares don't add up to one, or a leg has no length */
  static List<FoldingProfile> read(Rules rules) {
    List<FoldingProfile> profiles = new ArrayList<>();
    rules.described("profile").forEach((name, d) -> profiles.add(profile(name, d.only(PROFILE))));
    return profiles;
  }

  private static FoldingProfile profile(String name, Described d) {
    List<FoldingProfile.Leg> legs = d.list("legs").stream().map(ProfileBook::leg).toList();
    double shares = legs.stream().mapToDouble(FoldingProfile.Leg::share).sum();
    if (Math.abs(shares - 1) > 1e-9) {
      throw d.problem("needs legs whose sl:share add up to 1, so that they add up to the girth; they add up to " + shares);
    }
    return new FoldingProfile(name, d.word("ofPart"), d.word("inSection", ""), d.word("beside", ""), legs);
  }

  private static FoldingProfile.Leg leg(Described d) {
    d.only(LEG);
    if (Stream.of("mm", "size", "share").filter(d::has).count() != 1) {
      throw d.problem("a leg needs one of sl:mm, sl:size and sl:share");
    }
    String size = d.has("size") ? d.oneOf("size", SIZES.stream(), s -> s) : "";
    FoldingProfile.Bend bend = d.has("bendTo")
        ? d.oneOf("bendTo", Stream.of(FoldingProfile.Bend.values()), FoldingProfile.Bend::word)
        : FoldingProfile.Bend.FIXED;
    return new FoldingProfile.Leg(d.word("leg"), d.number("mm", 0) / 1000, size, d.number("share", 0), bend,
        d.number("bend", 0) - d.number("back", 0));
  }
}
