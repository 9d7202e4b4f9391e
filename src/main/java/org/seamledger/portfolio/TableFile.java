package org.seamledger.portfolio;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;

/** A table over all models, in every form that is asked for, being written beside its place until it is whole. */
final class TableFile implements AutoCloseable {

  private final Path folder;
  private final String name;
  private final List<TableFormat> formats;
  private final List<TableFormat.Sheet> sheets = new ArrayList<>();
  private boolean hasHeader;

  /** @param name of the table, without an ending */
  TableFile(Path folder, String name, List<TableFormat> formats) throws IOException {
    this.folder = folder;
    this.name = name;
    this.formats = formats;
    for (TableFormat format : formats) {
      sheets.add(format.begin(half(format), name));
    }
  }

  private Path half(TableFormat format) {
    return folder.resolve("." + name + "." + format.suffix() + ".part");
  }

  void row(List<String> cells) throws IOException {
    for (TableFormat.Sheet sheet : sheets) {
      sheet.row(cells);
    }
  }

  /** The rows of one model's table behind the model's name; of its header the first model's counts. */
  void rows(String model, List<List<String>> table) throws IOException {
    for (int i = hasHeader ? 1 : 0; i < table.size(); i++) {
      List<String> cells = new ArrayList<>(List.of(i == 0 ? "path" : model));
      cells.addAll(table.get(i));
      row(cells);
    }
    hasHeader |= !table.isEmpty();
  }

  /** Moves it into its place, and takes away what an earlier run left of it in another form. */
  void finish() throws IOException {
    closeSheets();
    Files.deleteIfExists(folder.resolve(name + "." + TableFormat.ONLY_ON_CLUSTERS));
    for (TableFormat format : formats) {
      Files.move(half(format), folder.resolve(name + "." + format.suffix()), StandardCopyOption.ATOMIC_MOVE,
          StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private void closeSheets() throws IOException {
    while (!sheets.isEmpty()) {
      sheets.remove(sheets.size() - 1).close();
    }
  }

  @Override
  public void close() throws IOException {
    closeSheets();
    for (TableFormat format : formats) {
      Files.deleteIfExists(half(format));
    }
  }
}
