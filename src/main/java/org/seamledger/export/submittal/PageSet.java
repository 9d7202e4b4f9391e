package org.seamledger.export.submittal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Parts of a submittal that can be had by themselves. */
public enum PageSet {
  COVER("Cover"), CONTENTS("Contents"), KEY_PLAN("Roof plan"), SCHEDULE("Schedule of junctions and nodes"), DETAILS("Details"),
  NODES("Nodes"), ORDER("Order"), FINDINGS("Findings"), ASSUMPTIONS("Assumptions"), CAUTIONS("Cautions and hold points");

  /** Everything, in the usual order. */
  public static final List<PageSet> ALL = List.of(values());
  /** What a reviewer of the design looks at. */
  public static final List<PageSet> ARCHITECT =
      List.of(COVER, CONTENTS, KEY_PLAN, SCHEDULE, DETAILS, NODES, FINDINGS, ASSUMPTIONS, CAUTIONS);
  /** What people on the roof work from: the cautions before all else. */
  public static final List<PageSet> CREW = List.of(CAUTIONS, CONTENTS, KEY_PLAN, SCHEDULE, DETAILS, NODES, ORDER);

  private final String title;

  PageSet(String title) {
    this.title = title;
  }

  String title() {
    return title;
  }

  /** As command line and service name it. */
  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** All words that {@link #of} knows, for a message. */
  public static String choices() {
    return "all, architect, crew, " + ALL.stream().map(PageSet::word).collect(Collectors.joining(", "));
  }

  /** The sets that a list of words names, each once, in its order; empty where a word is unknown, or there is none. */
  public static Optional<List<PageSet>> of(String words) {
    List<PageSet> sets = new ArrayList<>();
    for (String word : words.split(",")) {
      String w = word.strip().toLowerCase(Locale.ROOT);
      List<PageSet> named = switch (w) {
        case "all" -> ALL;
        case "architect" -> ARCHITECT;
        case "crew" -> CREW;
        default -> Arrays.stream(values()).filter(s -> s.word().equals(w)).toList();
      };
      if (named.isEmpty()) {
        return Optional.empty();
      }
      sets.addAll(named);
    }
    return Optional.of(sets.stream().distinct().toList());
  }
}
