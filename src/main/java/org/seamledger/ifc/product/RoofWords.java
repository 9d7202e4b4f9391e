package org.seamledger.ifc.product;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** Whether a name says roof, in the languages of {@code roof-words.txt}. */
final class RoofWords {

  private static final Pattern BETWEEN_WORDS = Pattern.compile("[^\\p{L}\\p{M}]+");
  private static final List<Pattern> ROOF = new ArrayList<>();
  private static final List<Pattern> NO_ROOF = new ArrayList<>();

  static {
    for (String line : ElementClass.lines("roof-words.txt")) {
      boolean exception = line.startsWith("!");
      String words = line.substring(exception ? 1 : line.indexOf(':') + 1);
      for (String word : words.trim().split("\\s+")) {
        (exception ? NO_ROOF : ROOF).add(pattern(word));
      }
    }
  }

  private RoofWords() {
  }

  private static Pattern pattern(String word) {
    StringBuilder regex = new StringBuilder();
    for (String piece : plain(word).split("(?=\\*)|(?<=\\*)")) {
      regex.append(piece.equals("*") ? ".*" : Pattern.quote(piece));
    }
    return Pattern.compile(regex.toString());
  }

  /** Lower case, without accents, joined marks apart. */
  static String plain(String s) {
    return Normalizer.normalize(s.toLowerCase(Locale.ROOT), Normalizer.Form.NFD).replaceAll("\\p{Mn}", "");
  }

  static boolean sayRoof(String name) {
    String plain = plain(name);
    List<String> words = new ArrayList<>(List.of(BETWEEN_WORDS.split(plain)));
    words.addAll(List.of(plain.split("[\\s:;,/]+")));
    return words.stream().anyMatch(w -> matches(ROOF, w)) && words.stream().noneMatch(w -> matches(NO_ROOF, w));
  }

  private static boolean matches(List<Pattern> patterns, String word) {
    return patterns.stream().anyMatch(p -> p.matcher(word).matches());
  }
}
