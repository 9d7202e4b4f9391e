package org.seamledger;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The drawing of the walk in DEVELOPERS.md, in the part of Mermaid's flowcharts that it keeps to. */
record WalkDrawing(Set<String> nodes, List<Arrow> arrows) {

  private static final Pattern BLOCK = Pattern.compile("```mermaid\n%%\\{init[^\n]*\nflowchart TB\n(.*?)```", Pattern.DOTALL);
  private static final Pattern STRUCTURE = Pattern.compile("subgraph \\w+ \\[[^]]+]|end|");
  private static final Pattern NODE = Pattern.compile("(\\w+)(?:\\[\"([\\w.]+)\"])?");
  private static final Pattern ARROW = Pattern.compile(" (-->|-\\. makes \\.->) ");

  /**
   * An arrow between two packages.
   *
   * @param makes whether the first makes what the other describes, so that it is the first that imports
   */
  record Arrow(String from, String to, boolean makes) {
    String importing() {
      return makes ? from : to;
    }

    String imported() {
      return makes ? to : from;
    }
  }

  /** Fails at a line that it does not understand: nothing in the drawing goes unchecked. */
  static WalkDrawing read(String document) {
    Matcher block = BLOCK.matcher(document);
    if (!block.find()) {
      throw new AssertionError("there is no drawing");
    }
    Map<String, String> names = new LinkedHashMap<>();
    List<Arrow> arrows = new ArrayList<>();
    block.group(1).lines().map(String::strip).filter(line -> !STRUCTURE.matcher(line).matches()).forEach(line -> {
      Matcher arrow = ARROW.matcher(line);
      int from = 0;
      String before = null;
      boolean makes = false;
      while (arrow.find()) {
        String name = name(line.substring(from, arrow.start()), names);
        if (before != null) {
          arrows.add(new Arrow(before, name, makes));
        }
        before = name;
        makes = arrow.group(1).contains("makes");
        from = arrow.end();
      }
      String last = name(line.substring(from), names);
      if (before != null) {
        arrows.add(new Arrow(before, last, makes));
      }
    });
    return new WalkDrawing(new TreeSet<>(names.values()), arrows);
  }

  private static String name(String words, Map<String, String> names) {
    Matcher node = NODE.matcher(words);
    if (!node.matches()) {
      throw new AssertionError("neither a package nor an arrow: " + words);
    }
    if (node.group(2) != null) {
      names.put(node.group(1), node.group(2));
    }
    return names.computeIfAbsent(node.group(1), id -> id);
  }
}
