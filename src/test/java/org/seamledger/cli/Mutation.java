package org.seamledger.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Damage to a text, made by chance: its records, tokens, numbers, references and characters. The same seed gives the same damage. */
final class Mutation {

  private static final Pattern NUMBER = Pattern.compile("(?<![#\\w.])-?\\d+(?:\\.\\d*)?(?:[eE][+-]?\\d+)?");
  private static final Pattern REFERENCE = Pattern.compile("#\\d+");
  private static final Pattern WORD = Pattern.compile("[A-Za-z_][A-Za-z0-9_:-]*");
  private static final Pattern LIST = Pattern.compile("\\(([^()]{2,200})\\)");
  private static final Pattern QUOTED = Pattern.compile("'[^'\\n]*'|\"[^\"\\n]*\"");
  private static final String[] NUMBERS =
      {"0", "0.", "-0.", "1.", "-1", "1E12", "-1E12", "1.E300", "-1.E308", "1E-300", "4.9E-324", "1E400",
          "99999999999999999999", "2147483648", "1E6", "1E5", "5E7", "1E9", "0.000001", "1.7976931348623157E308", "3.14159", "1e-7"};
  private static final String[] TOKENS =
      {"$", "*", "()", ",", ";", "'", "\"", "\\X2\\D83D\\X0\\", "\\X\\", "\\S\\", "(((((((((", ".T.", "#",
          "\u0000", "\uFFFF", "/*", "{", "}", "[", "]", "<", "&", "@prefix", "_:b", "<!--", "]]>", "\r\n", "1", "null"};

  private final Random random;

  Mutation(long seed) {
    this.random = new Random(seed);
  }

  /** One to four damages; bytes are taken as ISO 8859-1, so that what is no text stays what it is. */
  byte[] of(byte[] original) {
    String text = new String(original, StandardCharsets.ISO_8859_1);
    for (int k = 1 + random.nextInt(random.nextBoolean() ? 1 : 4); k > 0; k--) {
      text = once(text);
    }
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  /** The same done to one file of an archive, or to the archive itself. */
  byte[] ofZip(byte[] archive) throws IOException {
    Map<String, byte[]> files = new LinkedHashMap<>();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(archive))) {
      for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
        files.put(e.getName(), in.readAllBytes());
      }
    }
    int chosen = random.nextInt(files.size() + 1);
    if (chosen == files.size()) {
      return of(archive);
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, byte[]> f : files.entrySet()) {
        out.putNextEntry(new ZipEntry(f.getKey()));
        out.write(chosen-- == 0 ? of(f.getValue()) : f.getValue());
      }
    }
    return bytes.toByteArray();
  }

  private String once(String text) {
    return switch (random.nextInt(13)) {
      case 0, 1, 2 -> replaced(text, NUMBER, m -> number(m.group()));
      case 3, 4 -> replaced(text, REFERENCE, m -> other(text, REFERENCE));
      case 5 -> replaced(text, WORD, m -> other(text, WORD));
      case 6 -> replaced(text, random.nextBoolean() ? WORD : NUMBER, m -> TOKENS[random.nextInt(TOKENS.length)]);
      case 7 -> replaced(text, LIST, m -> "(" + m.group(1) + ("," + m.group(1)).repeat(power(3000)) + ")");
      case 8 -> replaced(text, QUOTED, m -> quoted(m.group()));
      case 9 -> lines(text);
      case 10 -> replaced(text, Pattern.compile("[^\\n]"), m -> String.valueOf((char) random.nextInt(256)));
      case 11 -> replaced(text, NUMBER, m -> other(text, NUMBER));
      default -> random.nextInt(6) == 0 ? text.substring(0, random.nextInt(text.length() + 1)) : replaced(text, REFERENCE, m -> "#1");
    };
  }

  private String number(String old) {
    int kind = random.nextInt(4);
    if (kind == 0) {
      try {
        return String.valueOf(Double.parseDouble(old) * Math.pow(10, random.nextInt(17) - 4));
      } catch (NumberFormatException e) {
        return "7";
      }
    }
    return kind == 1 ? "-" + old : NUMBERS[random.nextInt(NUMBERS.length)];
  }

  private String quoted(String old) {
    String inside = old.substring(1, old.length() - 1);
    String made = switch (random.nextInt(3)) {
      case 0 -> (inside + "/a").repeat(power(20_000));
      case 1 -> TOKENS[random.nextInt(TOKENS.length)];
      default -> "\\X2\\00E4\\X0\\" + inside;
    };
    return old.charAt(0) + made + old.charAt(old.length() - 1);
  }

  private String lines(String text) {
    List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
    int i = random.nextInt(lines.size());
    int k = random.nextInt(lines.size());
    switch (random.nextInt(4)) {
      case 0 -> lines.remove(i);
      case 1 -> lines.add(k, lines.get(i));
      case 2 -> lines.set(i, lines.set(k, lines.get(i)));
      default -> lines.set(i, lines.get(i) + " " + lines.get(k));
    }
    return String.join("\n", lines);
  }

  /** A number up to a most, the small ones as likely as the large. */
  private int power(int most) {
    return (int) Math.pow(most, random.nextDouble());
  }

  private String other(String text, Pattern of) {
    List<MatchResult> all = of.matcher(text).results().toList();
    return all.isEmpty() ? "" : all.get(random.nextInt(all.size())).group();
  }

  private String replaced(String text, Pattern what, java.util.function.Function<MatchResult, String> by) {
    List<MatchResult> all = what.matcher(text).results().toList();
    if (all.isEmpty()) {
      return text;
    }
    MatchResult m = all.get(random.nextInt(all.size()));
    return text.substring(0, m.start()) + by.apply(m) + text.substring(m.end());
  }
}
