package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.seamledger.export.report.TextPage;
import org.seamledger.export.wording.CountText;
import org.seamledger.export.wording.OneLine;
import org.seamledger.ids.Specification;
import org.seamledger.ids.check.DocumentResult;
import org.seamledger.ids.check.FailedElement;
import org.seamledger.ids.check.SpecificationResult;

/** What models say to IDS files, as text. Of each specification the first elements are shown; JSON has them all. */
public final class IdsReport {

  private static final int MOST_ELEMENTS = 10;

  private final TextPage page = new TextPage();

  private IdsReport() {
  }

  public static void write(List<DocumentResult> results, OutputStream out) throws IOException {
    IdsReport report = new IdsReport();
    results.forEach(report::document);
    out.write(report.page.text().getBytes(StandardCharsets.UTF_8));
  }

  private void document(DocumentResult result) {
    String title = OneLine.of(result.document().title());
    page.line(OneLine.of(result.document().file()) + (title.isEmpty() ? "" : ": " + title));
    if (!result.document().valid()) {
      page.line("  is not a valid IDS file, so that nothing was checked:");
      result.document().problems().forEach(p -> page.paragraph("  - ", "    ", OneLine.of(p.text())));
      return;
    }
    result.specifications().forEach(this::specification);
    long passed = result.specifications().stream().filter(SpecificationResult::passes).count();
    page.line("  " + passed + " of " + CountText.of(result.specifications().size(), "specification") + (result.specifications().size() == 1
        ? " passes" : " pass"));
  }

  private void specification(SpecificationResult result) {
    Specification specification = result.specification();
    page.paragraph(result.passes() ? "  pass  " : "  FAIL  ", "        ", OneLine.of(specification.name()) + ": " + counts(result));
    if (!result.passes() && !specification.description().isBlank()) {
      page.paragraph("        ", "        ", OneLine.of(specification.description()));
    }
    result.elements().stream().limit(MOST_ELEMENTS).forEach(this::element);
    if (result.elements().size() > MOST_ELEMENTS) {
      page.line("        … and " + (result.elements().size() - MOST_ELEMENTS) + " more; --format json has them all");
    }
    if (!result.passes() && !specification.instructions().isBlank()) {
      page.paragraph("        To do: ", "        ", OneLine.of(specification.instructions()));
    }
  }

  private static String counts(SpecificationResult result) {
    String applies =
        result.applicable() == 0 ? "applies to nothing in the model" : "applies to " + CountText.of(result.applicable(), "element");
    return applies + (result.elements().isEmpty() ? "" : ", " + result.elements().size() + " fail")
        + (result.reason().isEmpty() ? "" : "; " + result.reason());
  }

  private void element(FailedElement element) {
    String name = OneLine.of(element.name());
    page.paragraph("        - ", "          ", element.ifcClass() + " " + (element.globalId().isEmpty() ? "#" + element.instance()
        : OneLine.of(element.globalId())) + (name.isEmpty() ? "" : " '" + name + "'") + " " + OneLine.of(element.reason()));
  }
}
