package org.seamledger.portfolio;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import org.seamledger.export.Rows;

/** A table over all models, as comma-separated values, being written beside its place until it is whole. */
final class TableFile implements AutoCloseable {

  private final Path file;
  private final Path half;
  private final OutputStream out;
  private final Rows rows;
  private boolean hasHeader;

  TableFile(Path folder, String name) throws IOException {
    file = folder.resolve(name);
    half = folder.resolve("." + name + ".part");
    out = new BufferedOutputStream(Files.newOutputStream(half), 1 << 16);
    rows = new Rows(out);
  }

  void row(List<String> cells) throws IOException {
    rows.row(cells);
  }

  /** The rows of one model's table behind the model's name; of its header the first model's counts. */
  void rows(String model, List<List<String>> table) throws IOException {
    for (int i = hasHeader ? 1 : 0; i < table.size(); i++) {
      List<String> cells = new ArrayList<>(List.of(i == 0 ? "path" : model));
      cells.addAll(table.get(i));
      rows.row(cells);
    }
    hasHeader |= !table.isEmpty();
  }

  /** Moves it into its place. */
  void finish() throws IOException {
    rows.flush();
    out.close();
    Files.move(half, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  @Override
  public void close() throws IOException {
    out.close();
    Files.deleteIfExists(half);
  }
}
