package org.seamledger.ifc;

import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.seamledger.element.Building;
import org.seamledger.element.Element;
import org.seamledger.element.Opening;
import org.seamledger.geometry.Box3;
import org.seamledger.ifc.entity.IfcInput;
import org.seamledger.progress.Progress;
import org.seamledger.step.StepFile;

/** Prints what is read of models, to look at: {@code DumpBuilding [-p|-q] MODEL...}; with {@code -p} the properties too, with {@code -q}
 * counts only. */
final class DumpBuilding {

  private DumpBuilding() {
  }

  public static void main(String[] arguments) throws Exception {
    List<String> files = new ArrayList<>(List.of(arguments));
    boolean properties = files.remove("-p");
    boolean quiet = files.remove("-q");
    List<IfcInput> inputs = new ArrayList<>();
    long start = System.nanoTime();
    for (String file : files) {
      String name = Path.of(file).getFileName().toString();
      inputs.add(new IfcInput(StepFile.open(FileChannel.open(Path.of(file)), name, Progress.NONE), name));
    }
    long indexed = System.nanoTime();
    Building b = IfcReader.read(inputs, Progress.NONE);
    long read = System.nanoTime();
    b.models().forEach(System.out::println);
    System.out.println("offset " + b.offset() + String.format(Locale.ROOT, "  index %.2f s, read %.2f s", (indexed - start) / 1e9,
        (read - indexed) / 1e9));
    System.out.println("ROOFS " + b.roofs().size());
    (quiet ? List.<Element>of() : b.roofs()).forEach(e -> print(e, properties));
    System.out.println("NEIGHBOURS " + b.neighbours().size());
    (quiet ? List.<Element>of() : b.neighbours()).forEach(e -> print(e, properties));
    System.out.println("FINDINGS " + b.findings().size());
    b.findings().forEach(f -> System.out.println("  " + f.severity().word() + " " + f.code() + ": " + f.message()));
  }

  private static void print(Element e, boolean properties) {
    System.out.println("  " + e.category() + " " + e.ifcClass() + " " + e.globalId() + " \"" + e.name() + "\" " + text(e.bounds())
        + " solids " + e.body().size() + (e.whole().isEmpty() ? "" : " of " + e.whole()));
    for (Opening o : e.openings()) {
      System.out.println("      opening " + o.globalId() + " "
          + text(o.body().stream().map(s -> s.bounds()).reduce(Box3.EMPTY, Box3::union)) + " " + o.fillingClass() + " " + o.filling());
    }
    if (properties) {
      e.properties().forEach((k, v) -> System.out.println("      " + k + " = " + v));
    }
  }

  private static String text(Box3 b) {
    return String.format(Locale.ROOT, "[%.3f %.3f %.3f .. %.3f %.3f %.3f]", b.minX(), b.minY(), b.minZ(), b.maxX(), b.maxY(), b.maxZ());
  }
}
