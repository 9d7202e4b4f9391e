package org.seamledger.portfolio;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.seamledger.export.Rows;

/** Comma-separated values. */
final class CsvFormat implements TableFormat {

  @Override
  public String suffix() {
    return "csv";
  }

  @Override
  public TableFormat.Sheet begin(Path file, String table) throws IOException {
    OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16);
    Rows rows = new Rows(out);
    return new TableFormat.Sheet() {
      @Override
      public void row(List<String> cells) throws IOException {
        rows.row(cells);
      }

      @Override
      public void close() throws IOException {
        rows.flush();
        out.close();
      }
    };
  }
}
