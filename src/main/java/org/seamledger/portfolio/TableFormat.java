package org.seamledger.portfolio;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import org.seamledger.export.RowSink;

/** A form of file that tables are written in. */
public interface TableFormat {

  /** Suffix of a form that one machine alone doesn't write: a run there takes away what a cluster left, for it would be out of date. */
  String ONLY_ON_CLUSTERS = "parquet";

  /** Ends the names of its files, such as {@code csv}. */
  String suffix();

  /**
   * Begins a file, beside its place until it is whole.
   *
   * @param table name of the table, such as {@code junctions}
   */
  Sheet begin(Path file, String table) throws IOException;

  /** A table being written; its first row has the names of the columns. */
  interface Sheet extends RowSink, Closeable {
  }
}
