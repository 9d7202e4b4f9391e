package org.seamledger.portfolio;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.seamledger.export.CsvLedger;
import org.seamledger.export.FindingsCsv;
import org.seamledger.export.NodesCsv;
import org.seamledger.export.OrderCsv;
import org.seamledger.export.RowSink;
import org.seamledger.export.plan.PlanThumbnail;
import org.seamledger.order.OrderAmount;
import org.seamledger.takeoff.Takeoff;

/**
 * Everything that the portfolio shows of one model.
 *
 * @param name of the model
 * @param file hash of the file that was read; the empty string where it couldn't be
 * @param basis what else the result depends on: program, rules, roof system
 * @param code of the failure, or the empty string
 * @param reason why there is no result, for people; the empty string where there is one
 * @param figures null where there is no result
 * @param junctions rows of its tables, each with its header first; empty where there is no result, as all that follow
 * @param picture the plan in small, SVG
 */
public record ModelEntry(String name, String file, String basis, ModelState state, String code, String reason, ModelFigures figures,
    List<List<String>> junctions, List<List<String>> nodes, List<List<String>> findings, List<List<String>> order, List<KindLength> kinds,
    List<OrderAmount> amounts, String picture) {

  /** A table of a takeoff. */
  @FunctionalInterface
  private interface Table {
    void write(Takeoff takeoff, RowSink rows) throws IOException;
  }

  static ModelEntry of(String name, String file, String basis, Takeoff takeoff) throws IOException {
    return new ModelEntry(name, file, basis, ModelState.DONE, "", "", ModelFigures.of(takeoff), rows(takeoff, CsvLedger::rows),
        rows(takeoff, NodesCsv::rows), rows(takeoff, FindingsCsv::rows), rows(takeoff, OrderCsv::rows), KindLength.of(takeoff),
        OrderAmount.of(takeoff), PlanThumbnail.svg(takeoff));
  }

  static ModelEntry without(String name, String file, String basis, ModelState state, String code, String reason) {
    return new ModelEntry(name, file, basis, state, code, reason, null, List.of(), List.of(), List.of(), List.of(), List.of(), List.of(),
        "");
  }

  private static List<List<String>> rows(Takeoff takeoff, Table table) throws IOException {
    List<List<String>> rows = new ArrayList<>();
    table.write(takeoff, cells -> rows.add(List.copyOf(cells)));
    return rows;
  }
}
