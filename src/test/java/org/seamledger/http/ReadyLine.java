package org.seamledger.http;

import java.io.BufferedReader;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The line with which a process of the tests says that it is ready. */
final class ReadyLine {

  private static final String READY = "ready ";

  private ReadyLine() {
  }

  /**
   * Waits for it.
   *
   * @return what stands behind the word: the address
   * @throws IOException with what was said before, where the process ends without it
   */
  static String await(BufferedReader out) throws IOException {
    List<String> said = new ArrayList<>();
    for (String line = out.readLine(); line != null; line = out.readLine()) {
      if (line.startsWith(READY)) {
        return line.substring(READY.length());
      }
      said.add(line);
    }
    throw new IOException(String.join("\n", said));
  }
}
