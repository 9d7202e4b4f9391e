package org.seamledger.portfolio;

import java.util.List;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.wording.CountText;
import org.seamledger.finding.Severity;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.order.OrderLine;
import org.seamledger.order.OrderList;

/** The portfolio on one page of HTML that needs nothing but the pictures beside it. Every text from a model is escaped. */
final class PortfolioPage {

  /** More would make a page that no browser likes; the tables hold all. */
  private static final int MOST_MODELS = 1000;
  private static final String STYLE = """
      body { font: 15px/1.45 system-ui, "DejaVu Sans", sans-serif; color: #1b2530; margin: 2rem auto; max-width: 75rem; padding: 0 1rem }
      h1 { font-size: 1.5rem } h2 { font-size: 1.15rem; margin-top: 2.2rem }
      table { border-collapse: collapse; width: 100% } th, td { text-align: left; padding: .25rem .6rem; vertical-align: top }
      th { border-bottom: 2px solid #8a949d } td { border-bottom: 1px solid #d8dde1; overflow-wrap: break-word }
      .n { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap }
      .violation { color: #a3101b; font-weight: 600 } .warning { color: #7a5200; font-weight: 600 }
      .models { display: grid; grid-template-columns: repeat(auto-fill, minmax(15rem, 1fr)); gap: 1rem; padding: 0; list-style: none }
      .models li { border: 1px solid #d8dde1; padding: .6rem } .models img { width: 100%; height: 11rem; object-fit: contain }
      .models b { overflow-wrap: break-word; font-weight: 600 } .quiet { color: #44525f }
      """;

  private final StringBuilder html = new StringBuilder();

  private PortfolioPage() {
  }

  static String html(PortfolioSummary summary, OrderList order, List<String> source) {
    PortfolioPage page = new PortfolioPage();
    page.head(summary, source);
    page.withoutResult(summary);
    page.findings(summary);
    page.kinds(summary);
    page.order(order);
    page.models(summary);
    return page.html.append("</body></html>\n").toString();
  }

  private void head(PortfolioSummary summary, List<String> source) {
    html.append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">"
        + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"><title>Portfolio of roofs</title>\n<style>\n")
        .append(STYLE)
        .append("</style></head><body>\n<h1>Portfolio of roofs</h1>\n<p>")
        .append(CountText.of(summary.lines().size(), "model")).append(", ").append(summary.count(ModelState.DONE))
        .append(" with a result. ");
    double area = summary.lines().stream().filter(l -> l.figures() != null).mapToDouble(l -> l.figures().areaM2()).sum();
    html.append(MeasureFormat.formatArea(area)).append(" of roof surface.</p>\n<p class=\"quiet\">")
        .append(escaped(String.join("; ", source)))
        .append(". Tables: ");
    for (String table : List.of("models", "junctions", "nodes", "findings", "kinds", "order", "order-by-model")) {
      html.append("<a href=\"").append(table).append(".csv\">").append(table).append(".csv</a> ");
    }
    html.append("</p>\n");
  }

  private void withoutResult(PortfolioSummary summary) {
    List<PortfolioSummary.Line> lines = summary.lines().stream().filter(l -> l.state() != ModelState.DONE).toList();
    if (lines.isEmpty()) {
      return;
    }
    table("Models without a result", "model", "state", "reason");
    lines.stream().limit(MOST_MODELS).forEach(l -> row(l.name(), l.state().word(), l.reason()));
    end(lines.size());
  }

  private void findings(PortfolioSummary summary) {
    table("Findings, the worst first", "severity", "finding", "#models", "#findings", "such as");
    for (PortfolioSummary.FindingSum f : summary.findings()) {
      html.append("<tr><td class=\"").append(f.severity()).append("\">").append(f.severity()).append("</td><td>").append(escaped(f.code()))
          .append("</td><td class=\"n\">").append(f.models()).append("</td><td class=\"n\">").append(f.findings()).append("</td><td>")
          .append(escaped(f.model() + ": " + f.message())).append("</td></tr>\n");
    }
    end(0);
  }

  private void kinds(PortfolioSummary summary) {
    table("Lengths by kind", "kind", "#models", "#lines", "#m", "#ft and in");
    summary.kinds().forEach(k -> row(k.kind(), "#" + k.models(), "#" + k.lines(), "#" + MeasureFormat.fixed(k.lengthM(), 3),
        "#" + MeasureFormat.formatFeetInches(k.lengthM())));
    end(0);
  }

  private void order(OrderList order) {
    table("One order for all", "group", "item", "size", "#net", "unit", "#order", "unit", "arithmetic");
    for (OrderLine l : order.lines()) {
      row(l.group().word(), l.item(), l.size(), "#" + MeasureFormat.plain(l.net(), 3), l.unit(), "#" + l.order(), l.orderUnit(),
          String.join("; ", l.steps()));
    }
    end(0);
  }

  private void models(PortfolioSummary summary) {
    List<PortfolioSummary.Line> lines = summary.worst();
    html.append("<h2>Models, the worst first</h2>\n<ul class=\"models\">\n");
    for (PortfolioSummary.Line l : lines.subList(0, Math.min(MOST_MODELS, lines.size()))) {
      html.append("<li><img loading=\"lazy\" alt=\"plan of ").append(escaped(l.name())).append("\" src=\"")
          .append(PortfolioTables.picturePath(l.name())).append("\"><b>").append(escaped(l.name())).append("</b><br>")
          .append(MeasureFormat.formatArea(l.figures().areaM2())).append(", ").append(CountText.of(l.figures().faces(), "face"))
          .append(", ")
          .append(CountText.of(l.figures().junctions(), "line")).append("<br>");
      count(l, Severity.VIOLATION);
      count(l, Severity.WARNING);
      html.append(CountText.of(l.findings(Severity.INFO), "note")).append("</li>\n");
    }
    html.append("</ul>\n");
    more(lines.size());
  }

  private void count(PortfolioSummary.Line line, Severity severity) {
    long n = line.findings(severity);
    if (n > 0) {
      html.append("<span class=\"").append(severity.word()).append("\">").append(CountText.of(n, severity.word())).append("</span>, ");
    }
  }

  /** A column whose head begins with # holds numbers. */
  private void table(String title, String... head) {
    html.append("<h2>").append(title).append("</h2>\n<table>\n<tr>");
    for (String cell : head) {
      html.append(cell.startsWith("#") ? "<th class=\"n\">" + cell.substring(1) : "<th>" + cell).append("</th>");
    }
    html.append("</tr>\n");
  }

  private void row(String... cells) {
    html.append("<tr>");
    for (String cell : cells) {
      html.append(cell.startsWith("#") ? "<td class=\"n\">" + escaped(cell.substring(1)) : "<td>" + escaped(cell)).append("</td>");
    }
    html.append("</tr>\n");
  }

  private void end(int rows) {
    html.append("</table>\n");
    more(rows);
  }

  private void more(int rows) {
    if (rows > MOST_MODELS) {
      html.append("<p>and ").append(rows - MOST_MODELS).append(" more in <a href=\"models.csv\">models.csv</a></p>\n");
    }
  }

  private static String escaped(String text) {
    return Sheet.escaped(text);
  }
}
