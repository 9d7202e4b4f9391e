package org.seamledger.export;

import java.io.IOException;
import java.util.List;

/** Takes the rows of a table, the header first. */
@FunctionalInterface
public interface RowSink {

  void row(List<String> cells) throws IOException;
}
