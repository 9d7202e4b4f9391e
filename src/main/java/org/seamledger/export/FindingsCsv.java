package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.wording.ElementNames;
import org.seamledger.export.wording.FindingAdvice;
import org.seamledger.export.wording.FindingRisk;
import org.seamledger.export.wording.OneLine;
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.Finding;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/**
 * The findings as comma-separated values: one header row, one row a finding, the worst first. GlobalIds stand in their order, one blank
 * apart; class, name, storey and file of these elements stand each once, a semicolon and a blank apart.
 */
public final class FindingsCsv {

  private static final List<String> HEADER =
      List.of("code", "severity", "message", "reason", "action", "junction", "face", "kind",
          "elementGlobalIds", "class", "name", "storey", "file", "accepted", "acceptedBy", "acceptedWhen", "acceptedReason", "who", "risk",
          "junctions");

  private final Takeoff takeoff;
  private final FindingRisk risk;
  private final Map<String, DetailedJunction> junctions = new HashMap<>();

  private FindingsCsv(Takeoff takeoff) {
    this.takeoff = takeoff;
    this.risk = new FindingRisk(takeoff);
    takeoff.lines().forEach(j -> junctions.put(j.junction().junction().id(), j));
  }

  /** Writes all rows and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, OutputStream out) throws IOException {
    Rows rows = new Rows(out);
    rows(takeoff, rows);
    rows.flush();
  }

  /** All rows, the header first. */
  public static void rows(Takeoff takeoff, RowSink rows) throws IOException {
    FindingsCsv csv = new FindingsCsv(takeoff);
    rows.row(HEADER);
    for (Finding finding : csv.risk.ordered()) {
      rows.row(csv.cells(finding));
    }
  }

  private List<String> cells(Finding f) {
    Optional<DetailedJunction> junction = Optional.ofNullable(junctions.get(f.junction()));
    List<ElementNames.Detail> elements = ElementNames.details(takeoff, f.elements());
    Optional<Acceptance> accepted = f.acceptance();
    return List.of(f.code(), f.severity().word(), OneLine.of(f.message()), OneLine.of(FindingAdvice.reason(takeoff, f.code())),
        OneLine.of(FindingAdvice.action(takeoff, f.code())), f.junction(),
        String.join(" ", faces(f, junction)),
        junction.map(j -> j.junction().kind()).orElse(""), String.join(" ", f.elements()), each(elements, e -> e.label().ifcClass()),
        each(elements, e -> e.label().name()), each(elements, e -> e.label().storey()), each(elements, ElementNames.Detail::file),
        accepted.isPresent() ? "yes" : "no", accepted.map(a -> OneLine.of(a.by())).orElse(""), accepted.map(Acceptance::when).orElse(""),
        accepted.map(a -> OneLine.of(a.reason())).orElse(""), FindingAdvice.who(takeoff, f.code()), MeasureFormat.plain(risk.of(f), 0),
        String.join(" ", f.junctions()));
  }

  /** Those that the junction lies on; without a junction, those on one of the elements. */
  private Collection<String> faces(Finding f, Optional<DetailedJunction> junction) {
    return junction.map(j -> j.junction().junction().faces()).orElseGet(() -> f.elements().isEmpty() ? List.of()
        : takeoff.faces().stream().filter(face -> face.elements().stream().anyMatch(f.elements()::contains)).map(RoofFace::id).toList());
  }

  private static String each(List<ElementNames.Detail> elements, Function<ElementNames.Detail, String> word) {
    return elements.stream().map(word).map(OneLine::of).filter(w -> !w.isEmpty()).distinct().collect(Collectors.joining("; "));
  }
}
