package org.seamledger.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.export.PlanDrawing;

/** Sheets of a drawing into files. */
final class SheetFiles {

  private SheetFiles() {
  }

  /**
   * Writes one sheet, or all: the first to the file, the others beside it.
   *
   * @param sheet from 1; null for all
   * @param output null for standard output, which takes one
   */
  static void print(Session session, List<String> drawn, Integer sheet, Path output) {
    if (sheet != null && (sheet < 1 || sheet > drawn.size())) {
      throw new UsageException("--sheet " + sheet + ": there " + (drawn.size() == 1 ? "is 1 sheet" : "are sheets 1 to " + drawn.size()));
    }
    if (sheet != null || output == null || drawn.size() == 1) {
      int shown = sheet == null ? 1 : sheet;
      if (sheet == null && drawn.size() > 1) {
        session.complain("sheet 1 of " + drawn.size() + "; --sheet N gives another, --output FILE writes them all");
      }
      session.print(Optional.ofNullable(output), out -> PlanDrawing.write(drawn.get(shown - 1), out));
      return;
    }
    for (int i = 0; i < drawn.size(); i++) {
      String text = drawn.get(i);
      Path file = i == 0 ? output : beside(output, i + 1);
      session.requireWritable(file);
      session.print(Optional.of(file), out -> PlanDrawing.write(text, out));
    }
  }

  /** The file for another sheet: {@code plan-2.svg} beside {@code plan.svg}. */
  private static Path beside(Path first, int number) {
    String name = first.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return first.resolveSibling(dot <= 0 ? name + "-" + number : name.substring(0, dot) + "-" + number + name.substring(dot));
  }
}
