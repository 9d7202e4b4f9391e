package org.seamledger.takeoff;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** What people call the models of one analysis, so that each is told from the others. */
final class ModelNames {

  private ModelNames() {
  }

  /** Each name without its folders, or with as many of them as tell it from the others. */
  static List<String> shown(List<String> names) {
    List<String> shown = new ArrayList<>();
    for (String name : names) {
      String whole = plain(name);
      String end = whole.substring(whole.lastIndexOf('/') + 1);
      while (count(end, names) > 1 && end.length() < whole.length()) {
        end = whole.substring(whole.lastIndexOf('/', whole.length() - end.length() - 2) + 1);
      }
      // Nothing tells models apart that were given by one name.
      shown.add(count(end, names) > 1 ? whole.substring(whole.lastIndexOf('/') + 1) : end);
    }
    return shown;
  }

  private static long count(String end, List<String> names) {
    return names.stream().filter(n -> endsWith(n, end)).count();
  }

  private static String plain(String name) {
    return name.replace('\\', '/');
  }

  private static boolean endsWith(String name, String end) {
    return plain(name).equals(end) || plain(name).endsWith("/" + end);
  }

  /**
   * Position of the model that somebody means.
   *
   * @param word a whole name, or the end of one from a folder on
   * @param names for each model what it may be called
   * @throws IllegalArgumentException with a message for users where it is none's, or not one's alone
   */
  static int position(String word, List<? extends Set<String>> names) {
    List<Integer> found = IntStream.range(0, names.size()).filter(i -> names.get(i).contains(word)).boxed().toList();
    if (found.isEmpty()) {
      found = IntStream.range(0, names.size()).filter(i -> names.get(i).stream().anyMatch(n -> endsWith(n, plain(word)))).boxed().toList();
    }
    if (found.isEmpty()) {
      throw new IllegalArgumentException("no model is named '" + word + "'; there " + (names.size() == 1 ? "is " : "are ") + all(names));
    }
    if (found.size() > 1) {
      List<Set<String>> some = found.stream().map(i -> (Set<String>) new LinkedHashSet<>(names.get(i))).toList();
      boolean same = new LinkedHashSet<>(some).size() < some.size();
      throw new IllegalArgumentException("more than one model is named '" + word + "'; " + (same
          ? "give it once, or give copies names of their own" : "say which: " + all(some)));
    }
    return found.get(0);
  }

  private static String all(List<? extends Set<String>> names) {
    return names.stream().map(n -> n.iterator().next()).collect(Collectors.joining(", "));
  }

  /** The names of each model together: how it was typed first. */
  static List<Set<String>> together(List<String> typed, List<String> names) {
    return IntStream.range(0, names.size())
        .mapToObj(i -> Collections.unmodifiableSet((Set<String>) new LinkedHashSet<>(List.of(typed.get(i), names.get(i))))).toList();
  }
}
