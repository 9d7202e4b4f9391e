package org.seamledger.ifc.product;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.seamledger.element.Category;

/** Whether a name says flashing or gutter, in the languages of {@code flashing-words.txt}. */
final class FlashingWords {

  private static final Map<Category, Pattern> SAYS = new EnumMap<>(Category.class);
  private static final Pattern NEITHER;
  private static final Pattern BETWEEN_WORDS = Pattern.compile("[^\\p{L}\\p{M}]+");

  static {
    Map<Category, List<String>> words = new EnumMap<>(Category.class);
    List<String> neither = new ArrayList<>();
    for (String line : ElementClass.lines("flashing-words.txt")) {
      boolean exception = line.startsWith("!");
      List<String> list = exception ? neither
          : words.computeIfAbsent(line.startsWith("gutter ") ? Category.GUTTER : Category.FLASHING, k -> new ArrayList<>());
      for (String word : line.substring(exception ? 1 : line.indexOf(':') + 1).trim().split("\\s+")) {
        list.add(expression(word));
      }
    }
    words.forEach((category, list) -> SAYS.put(category, any(list)));
    NEITHER = any(neither);
  }

  private FlashingWords() {
  }

  private static Pattern any(List<String> expressions) {
    return Pattern.compile("(?<= )(?:" + String.join("|", expressions) + ")(?= )");
  }

  private static String expression(String word) {
    StringBuilder regex = new StringBuilder();
    for (String piece : RoofWords.plain(word).split("(?=[*-])|(?<=[*-])")) {
      regex.append(piece.equals("*") ? "\\S*" : piece.equals("-") ? " ?" : Pattern.quote(piece));
    }
    return regex.toString();
  }

  /** Flashing or gutter, or empty; what says both is a flashing of the gutter. @param words as {@link #words} gives them */
  static Optional<Category> in(String words) {
    if (words.isBlank() || NEITHER.matcher(words).find()) {
      return Optional.empty();
    }
    return List.of(Category.FLASHING, Category.GUTTER).stream().filter(c -> SAYS.get(c).matcher(words).find()).findFirst();
  }

  /** The words of a name in plain letters, a blank before and behind each: names that differ in numbers only have the same. */
  static String words(String name) {
    StringBuilder words = new StringBuilder(name.length() + 2).append(' ');
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      if (c > '~') {
        return " " + BETWEEN_WORDS.matcher(RoofWords.plain(name)).replaceAll(" ").strip() + " ";
      }
      boolean upper = c >= 'A' && c <= 'Z';
      if (upper || c >= 'a' && c <= 'z') {
        words.append(upper ? (char) (c + 'a' - 'A') : c);
      } else if (words.charAt(words.length() - 1) != ' ') {
        words.append(' ');
      }
    }
    return words.charAt(words.length() - 1) == ' ' && words.length() > 1 ? words.toString() : words.append(' ').toString();
  }
}
