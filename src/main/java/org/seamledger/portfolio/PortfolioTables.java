package org.seamledger.portfolio;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.seamledger.export.OrderCsv;
import org.seamledger.export.Rows;
import org.seamledger.export.wording.OneLine;
import org.seamledger.finding.Severity;
import org.seamledger.order.OrderList;
import org.seamledger.order.PriceList;

/** Writes what a portfolio comes to: tables, one order, pictures and the page. One entry is in memory at a time. */
public final class PortfolioTables {

  private static final List<String> MODEL =
      List.of("path", "state", "code", "reason", "sha256", "schema", "lengthUnit", "application", "written",
          "bytes", "faces", "areaM2", "planAreaM2", "junctions", "junctionsM", "nodes", "violations", "warnings", "notes", "picture");

  private final EntryStore store;
  private final Path folder;
  private final Optional<PriceList> prices;
  private final List<TableFormat> formats;
  private final PortfolioSummary summary = new PortfolioSummary();
  private final Set<String> pictures = new HashSet<>();

  private PortfolioTables(EntryStore store, Path folder, Optional<PriceList> prices, List<TableFormat> more) {
    this.store = store;
    this.formats = Stream.concat(Stream.of(new CsvFormat()), more.stream()).toList();
    this.folder = folder;
    this.prices = prices;
  }

  /**
   * What there is to say of a portfolio that was written.
   *
   * @param without models without a result, of all
   * @param worst severity of the worst finding; empty where there is none
   */
  public record Written(int models, int without, Optional<Severity> worst) {
  }

  /**
   * Writes everything anew.
   *
   * @param models that the store has entries of, in their order
   * @param more forms of tables besides comma-separated values
   * @param source what stands with every line of the order: roof system, program
   */
  public static Written write(EntryStore store, List<PortfolioModel> models, Path folder, Optional<PriceList> prices,
      List<TableFormat> more, List<String> source) throws IOException {
    return new PortfolioTables(store, folder, prices, more).write(models, source);
  }

  private Written write(List<PortfolioModel> models, List<String> source) throws IOException {
    Files.createDirectories(folder.resolve("pictures"));
    try (TableFile table = table("models"); TableFile junctions = table("junctions"); TableFile nodes = table("nodes");
        TableFile findings = table("findings"); TableFile order = table("order-by-model")) {
      table.row(MODEL);
      for (PortfolioModel model : models) {
        ModelEntry entry = store.get(model.name()).orElseThrow(() -> new IOException("the entry of " + model.name() + " is gone"));
        summary.add(entry);
        table.row(row(entry));
        junctions.rows(entry.name(), entry.junctions());
        nodes.rows(entry.name(), entry.nodes());
        findings.rows(entry.name(), entry.findings());
        order.rows(entry.name(), entry.order());
        picture(entry);
      }
      for (TableFile each : List.of(table, junctions, nodes, findings, order)) {
        each.finish();
      }
    }
    forgetOtherPictures();
    OrderList all = summary.order.list();
    kinds();
    order(all, source);
    text("index.html", PortfolioPage.html(summary, all, source));
    return new Written(models.size(), models.size() - summary.count(ModelState.DONE), Stream.of(Severity.VIOLATION, Severity.WARNING,
        Severity.INFO).filter(summary::has).findFirst());
  }

  private TableFile table(String name) throws IOException {
    return new TableFile(folder, name, formats);
  }

  private List<String> row(ModelEntry e) {
    List<String> cells = new ArrayList<>(List.of(e.name(), e.state().word(), e.code(), OneLine.of(e.reason())));
    ModelFigures f = e.figures();
    if (f == null) {
      cells.addAll(java.util.Collections.nCopies(MODEL.size() - cells.size(), ""));
      return cells;
    }
    cells.addAll(
        List.of(f.sha256(), f.schema(), f.lengthUnit(), OneLine.of(f.application()), OneLine.of(f.written()), Long.toString(f.bytes()),
            Integer.toString(f.faces()), Rows.number(f.areaM2()), Rows.number(f.planAreaM2()), Integer.toString(f.junctions()),
            Rows.number(f.junctionsM()), Integer.toString(f.nodes()), Long.toString(f.violations()), Long.toString(f.warnings()),
            Long.toString(f.notes()), picturePath(e.name())));
    return cells;
  }

  static String picturePath(String model) {
    return "pictures/" + EntryStore.key(model) + ".svg";
  }

  private void picture(ModelEntry entry) throws IOException {
    if (!entry.picture().isEmpty()) {
      String path = picturePath(entry.name());
      pictures.add(path);
      text(path, entry.picture());
    }
  }

  /** Of models that are no longer part of the portfolio, or have no result any more. */
  private void forgetOtherPictures() throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("pictures"))) {
      for (Path file : files.filter(f -> !pictures.contains("pictures/" + f.getFileName())).toList()) {
        Files.delete(file);
      }
    }
  }

  private void kinds() throws IOException {
    try (TableFile table = table("kinds")) {
      table.row(List.of("kind", "models", "lines", "lengthM"));
      for (KindLength k : summary.kinds()) {
        table.row(List.of(k.kind(), Long.toString(k.models()), Long.toString(k.lines()), Rows.number(k.lengthM())));
      }
      table.finish();
    }
  }

  private void order(OrderList order, List<String> source) throws IOException {
    try (TableFile table = table("order")) {
      List<String> last = new ArrayList<>(List.of(summary.count(ModelState.DONE) + " models", "", ""));
      last.addAll(source);
      OrderCsv.rows(order, prices, last, table::row);
      table.finish();
    }
  }

  private void text(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Path half = file.resolveSibling("." + file.getFileName() + ".part");
    try (OutputStream out = Files.newOutputStream(half)) {
      out.write(text.getBytes(StandardCharsets.UTF_8));
    }
    Files.move(half, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }
}
