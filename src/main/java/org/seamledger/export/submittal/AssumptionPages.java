package org.seamledger.export.submittal;

import java.util.List;
import java.util.Map;
import org.seamledger.detail.Decided;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.element.ModelInfo;
import org.seamledger.export.wording.OverrideText;
import org.seamledger.export.wording.ScopeText;
import org.seamledger.geometry.Tolerance;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.Estimate;
import org.seamledger.quantity.Estimates;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Takeoff;

/** What the numbers rest on: models, rules, the roof system's values, how exact the model was taken to be, manual overrides, estimates. */
final class AssumptionPages implements SubmittalPages {

  private static final String PLACE = SubmittalContent.place(PageSet.ASSUMPTIONS);

  private final SubmittalContent content;
  private final Takeoff takeoff;
  private FoWriter fo;

  AssumptionPages(SubmittalContent content) {
    this.content = content;
    this.takeoff = content.takeoff();
  }

  @Override
  public OutlineEntry outline() {
    return new OutlineEntry(PageSet.ASSUMPTIONS.title(), PLACE);
  }

  @Override
  public void write(FoWriter to) {
    fo = to;
    content.frame().text(PageSet.ASSUMPTIONS.title(), content.frame().columns(), this::pages, fo);
  }

  private void pages() {
    FoHeadings.title(fo, PLACE, PageSet.ASSUMPTIONS.title());
    FoHeadings.paragraph(fo, ScopeText.SCOPE.text());
    models();
    overrides();
    FoHeadings.head(fo, PLACE + "-system", "Roof system: " + takeoff.system().name());
    system("", takeoff.system().toMap());
    tolerance();
    sources();
    estimates();
  }

  private void models() {
    FoHeadings.head(fo, PLACE + "-models", "Models and rules");
    for (ModelInfo model : takeoff.models()) {
      FoHeadings.labelled(fo, model.file(), model.schema() + ", lengths in " + model.lengthUnit() + ", SHA-256 " + broken(model.sha256()));
      model.placement().ifPresent(p -> FoHeadings.labelled(fo, "Placed by hand", p));
    }
    FoHeadings.labelled(fo, "Rules", broken(takeoff.shapes()));
    FoHeadings.labelled(fo, "Program", Program.NAME + " " + takeoff.version());
  }

  /** A hash in groups, so that a narrow column can break it. */
  private static String broken(String hash) {
    return hash.replaceAll("(.{8})(?=.)", "$1 ");
  }

  private void overrides() {
    List<DetailedJunction> decided = takeoff.decided();
    if (!decided.isEmpty()) {
      FoHeadings.head(fo, PLACE + "-overrides", "Manual overrides");
      decided.forEach(j -> {
        Decided d = j.decided().orElseThrow();
        FoHeadings.labelled(fo, SubmittalContent.id(j), OverrideText.of(d, j) + ". Reason: " + d.reason());
      });
    }
  }

  private void system(String above, Map<String, Object> values) {
    values.forEach((name, value) -> {
      String words = above.isEmpty() ? spaced(name) : above + ", " + spaced(name);
      if (value instanceof Map<?, ?> inner) {
        Map<String, Object> below = new java.util.LinkedHashMap<>();
        inner.forEach((k, v) -> below.put(String.valueOf(k), v));
        system(words, below);
      } else if (!name.equals("name")) {
        value(words, String.valueOf(value));
      }
    });
  }

  /** {@code seamHeight} as {@code seam height}. */
  private static String spaced(String name) {
    return name.replaceAll("(?<=[a-z0-9])(?=[A-Z])", " ").toLowerCase(java.util.Locale.ROOT);
  }

  private void value(String name, String value) {
    fo.open("block", "text-align-last", "justify").text(name).text(" ").empty("leader", "leader-pattern", "dots").text(" ").text(value)
        .close("block");
  }

  private void tolerance() {
    Tolerance t = takeoff.tolerance();
    FoHeadings.head(fo, PLACE + "-tolerance", "How exact the model is taken to be");
    value("surfaces coincide within", MeasureFormat.formatMillimetres(t.coincidenceM()));
    value("edges meet across gaps of", MeasureFormat.formatMillimetres(t.gapM()));
    value("walls count from a height of", MeasureFormat.formatMillimetres(t.upstandM()));
    value("facets of a curve turn by less than", MeasureFormat.plain(t.facetTurnDegrees(), 2) + "°");
    value("flashings belong to a line within", MeasureFormat.formatMillimetres(t.flashingM()));
  }

  private void sources() {
    if (!content.details().isEmpty()) {
      FoHeadings.head(fo, PLACE + "-sources", "Sources of the details");
      content.details().forEach((id, served) -> FoHeadings.labelled(fo, id, served.get(0).detail().source()));
    }
  }

  private void estimates() {
    List<Estimate> all = takeoff.faces().isEmpty() ? List.of() : Estimates.of(takeoff.faces(), takeoff.quantities());
    if (!all.isEmpty()) {
      FoHeadings.head(fo, PLACE + "-estimates", "Water, movement and weather, as estimates");
      for (Estimate e : all) {
        FoHeadings.labelled(fo, e.name(), e.value());
        fo.block("by " + e.basis(), "color", "#44525f", "start-indent", "3mm", "space-after", "1mm");
      }
    }
  }
}
