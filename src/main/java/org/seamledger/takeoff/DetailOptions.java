package org.seamledger.takeoff;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Details;
import org.seamledger.detail.KindedJunction;
import org.seamledger.quantity.DetailFacts;
import org.seamledger.shacl.BrokenRulesException;
import org.seamledger.shacl.RuleFiles;
import org.seamledger.shacl.Rules;

/** Which details there are for a line, how well each fits it, and what the line would be with another one. */
public final class DetailOptions {

  /**
   * A detail for a line.
   *
   * @param fits whether the line gives all that the detail's shape requires
   * @param ofKind whether the detail is one for the line's kind
   * @param misses what the shape requires and the line doesn't give, in words; empty where it fits
   */
  public record Option(String id, String title, boolean fits, boolean ofKind, List<String> misses) {
    public Option {
      misses = List.copyOf(misses);
    }
  }

  private final Takeoff takeoff;
  private final Details details;

  private DetailOptions(Takeoff takeoff, Details details) {
    this.takeoff = takeoff;
    this.details = details;
  }

  /**
   * @param shapes folder of the shapes that the takeoff followed; the program's own where empty
   * @throws UnusableFileException where they can't be used, or have changed since
   */
  public static DetailOptions of(Takeoff takeoff, Optional<Path> shapes) {
    try {
      RuleFiles files = shapes.map(RuleFiles::in).orElseGet(RuleFiles::packaged);
      if (!files.hash().equals(takeoff.shapes())) {
        throw new BrokenRulesException("rules", 0, 0, "they have changed since this analysis; analyse the models again");
      }
      return new DetailOptions(takeoff, new Details(Rules.of(files)));
    } catch (BrokenRulesException e) {
      throw new UnusableFileException(e);
    }
  }

  /**
   * All details for a line: those that fit, those of its kind by how little they miss, the others; each by title.
   *
   * @param kind that the line is taken for; empty for its own
   * @return empty where there is no such line or kind
   */
  public Optional<List<Option>> at(String junction, String kind) {
    return line(junction).flatMap(j -> as(j.junction(), kind)).map(line -> {
      Map<String, Object> facts = facts(line);
      List<Option> all = new ArrayList<>();
      for (Detail d : details.book().values()) {
        List<String> misses = details.misses(d.id(), line, facts);
        all.add(new Option(d.id(), d.title(), misses.isEmpty(), !details.isForAnotherKind(d.id(), line, facts), misses));
      }
      all.sort(Comparator.comparing((Option o) -> !o.fits()).thenComparing(o -> !o.ofKind())
          .thenComparing(o -> o.ofKind() ? o.misses().size() : 0).thenComparing(Option::title).thenComparing(Option::id));
      return List.copyOf(all);
    });
  }

  /** The takeoff with a line made by another detail, to draw it; empty where there is no such line or detail. */
  public Optional<Takeoff> with(String junction, String detail) {
    Detail chosen = details.book().get(detail);
    return chosen == null ? Optional.empty() : line(junction)
        .map(j -> takeoff.withLine(new DetailedJunction(j.junction(), chosen.askedBy(facts(j.junction())))));
  }

  private Optional<DetailedJunction> line(String junction) {
    return takeoff.detailed().stream().filter(j -> j.junction().junction().id().equals(junction)).findFirst();
  }

  private Optional<KindedJunction> as(KindedJunction line, String kind) {
    return kind.isEmpty() ? Optional.of(line) : takeoff.kinds().stream().filter(k -> k.id().equals(kind)).findFirst()
        .map(k -> new KindedJunction(line.junction(), k, line.explanation()));
  }

  private Map<String, Object> facts(KindedJunction line) {
    return DetailFacts.of(line, takeoff.quantities().layout(), takeoff.system(), takeoff.surroundings().along());
  }
}
