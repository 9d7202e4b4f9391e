package org.seamledger.step;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.seamledger.progress.Progress;

/** Writes and opens small exchange structures. */
final class Exchange {

  static final String HEAD = """
      ISO-10303-21;
      HEADER;
      FILE_DESCRIPTION(('ViewDefinition [CoordinationView]'),'2;1');
      FILE_NAME('shed','2026-01-01T00:00:00',('A'),('B'),'by hand','Drawing Board 7','');
      FILE_SCHEMA(('IFC4'));
      ENDSEC;
      """;
  static final String TAIL = "ENDSEC;\nEND-ISO-10303-21;\n";
  /** The line that the first instance of {@link #of} stands on. */
  static final int FIRST_LINE = 8;

  private Exchange() {
  }

  static String of(String instances) {
    return HEAD + "DATA;\n" + instances + "\n" + TAIL;
  }

  static StepFile open(String text) {
    try {
      return StepFile.open(MemoryChannel.of(text), "shed.ifc", Progress.NONE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** How many instances a file has. */
  static int count(StepFile file) {
    return file.keywords().stream().mapToInt(k -> file.idsOf(k).length).sum();
  }

  /** The parameters of the one instance with id 1 of a file whose data section is this. */
  static List<Value> parameters(String instances) {
    return open(of(instances)).find(1).orElseThrow().parameters();
  }

  /** What a parameter decodes to. */
  static Value value(String parameter) {
    List<Value> values = parameters("#1=IFCTHING(" + parameter + ");");
    if (values.size() != 1) {
      throw new AssertionError("one parameter became " + values);
    }
    return values.get(0);
  }
}
