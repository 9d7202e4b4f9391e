package org.seamledger.export.node;

import org.seamledger.node.NodeLine;

/** What a line is called at a node. */
final class LineWords {

  private LineWords() {
  }

  static String of(NodeLine line) {
    String words = line.sort().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
    return switch (line.end().height()) {
      case LEVEL -> words;
      case HIGH -> words + ", falls away";
      case LOW -> words + ", rises";
    };
  }
}
