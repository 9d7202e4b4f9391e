package org.seamledger.step;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Writes random instances in random ways: blanks, comments, line ends and escapes wherever they may stand. Keeps what was written. */
final class RandomExchange {

  private static final String[] NAMES =
      {"IFCA", "IFCWALL", "IFCCARTESIANPOINT", "IFCRELASSOCIATESPROFILEPROPERTIES", "A1_B", "!OWN", "X1234567",
          "IFCX123456789012"};
  private static final String[] CHARACTERS = {"a", "Z", " ", "'", "\\", ";", "=", "/*", "*/", "#1=IFCA();", "ä",
      "§", "屋", "🏠", "(", ")", "\"", "S", "1.5", "&", "\\S\\"};

  private final Random random;
  private final StringBuilder text = new StringBuilder();
  final Map<Long, Instance> instances = new LinkedHashMap<>();

  RandomExchange(Random random, int count) {
    this.random = random;
    blank();
    text.append(Exchange.HEAD).append("DATA");
    blank();
    text.append(';');
    for (int i = 0; i < count; i++) {
      instance();
      if (random.nextInt(200) == 0) {
        between();
        text.append("ENDSEC;\nDATA;");
      }
    }
    between();
    text.append(Exchange.TAIL);
  }

  byte[] bytes() {
    return text.toString().getBytes(StandardCharsets.ISO_8859_1);
  }

  private void instance() {
    long id;
    do {
      id = random.nextInt(50) == 0 ? random.nextLong() >>> 1 : random.nextInt(3) == 0 ? random.nextInt(1000) : instances.size() * 3L;
    } while (instances.containsKey(id));
    between();
    text.append('#').append(id);
    blank();
    text.append('=');
    blank();
    if (random.nextInt(30) == 0) {
      instances.put(id, new Instance(id, StepFile.COMPLEX, parts()));
    } else {
      String name = NAMES[random.nextInt(NAMES.length)];
      text.append(random.nextInt(20) == 0 ? name.toLowerCase() : name);
      instances.put(id, new Instance(id, name, aggregate(0)));
    }
    blank();
    text.append(';');
  }

  private List<Value> parts() {
    List<Value> parts = new ArrayList<>();
    text.append('(');
    for (int n = 1 + random.nextInt(3); n > 0; n--) {
      blank();
      String name = NAMES[random.nextInt(NAMES.length)];
      text.append(name);
      parts.add(new Value.Typed(name, new Value.Aggregate(aggregate(1))));
      blank();
    }
    text.append(')');
    return parts;
  }

  private List<Value> aggregate(int depth) {
    List<Value> values = new ArrayList<>();
    blank();
    text.append('(');
    blank();
    for (int n = random.nextInt(depth > 3 ? 2 : 6); n > 0; n--) {
      values.add(value(depth));
      blank();
      text.append(n > 1 ? "," : "");
      blank();
    }
    text.append(')');
    return values;
  }

  private Value value(int depth) {
    return switch (random.nextInt(depth > 4 ? 7 : 9)) {
      case 0 -> write("$", new Value.Omitted());
      case 1 -> write("*", new Value.Derived());
      case 2 -> reference(random.nextLong() >>> random.nextInt(1, 64));
      case 3 -> whole(random.nextLong() >> random.nextInt(64));
      case 4 -> real(Double.longBitsToDouble(random.nextLong()));
      case 5 -> word();
      case 6 -> string();
      case 7 -> new Value.Aggregate(aggregate(depth + 1));
      default -> typed(depth);
    };
  }

  private Value reference(long id) {
    return write("#" + id, new Value.Reference(id));
  }

  private Value whole(long value) {
    return write(Long.toString(value), new Value.Whole(value));
  }

  private Value real(double value) {
    if (!Double.isFinite(value)) {
      return real(random.nextInt(10_000) / 64.0);
    }
    String written = Double.toString(value);
    return write(random.nextBoolean() ? written : written.replaceFirst("\\.0(?=E|$)", "."), new Value.Real(Double.parseDouble(written)));
  }

  private Value word() {
    return random.nextBoolean() ? write(".USERDEFINED.", new Value.Enumeration("USERDEFINED"))
        : write("\"0A4F\"", new Value.Binary("0A4F"));
  }

  private Value typed(int depth) {
    String name = NAMES[random.nextInt(NAMES.length)];
    text.append(name);
    blank();
    text.append('(');
    blank();
    Value inside = value(depth + 1);
    blank();
    text.append(')');
    return new Value.Typed(name, inside);
  }

  private Value write(String written, Value value) {
    text.append(written);
    return value;
  }

  private Value string() {
    StringBuilder meant = new StringBuilder();
    text.append('\'');
    for (int n = random.nextInt(random.nextInt(20) == 0 ? 200 : 12); n > 0; n--) {
      String some = CHARACTERS[random.nextInt(CHARACTERS.length)];
      meant.append(some);
      some.codePoints().forEach(this::escaped);
      if (random.nextInt(40) == 0) {
        text.append("\r\n");
      }
    }
    text.append('\'');
    return new Value.Text(meant.toString());
  }

  private void escaped(int c) {
    switch (random.nextInt(4)) {
      case 0 -> text.append(String.format(c > 0xFFFF ? "\\X4\\%08X\\X0\\" : "\\X2\\%04X\\X0\\", c));
      case 1 -> text.append(c > 0xFF ? raw(c) : String.format("\\X\\%02X", c));
      case 2 -> text.append(c >= 0xA0 && c <= 0xFE ? "\\S\\" + (char) (c - 128) : raw(c));
      default -> text.append(raw(c));
    }
  }

  private static String raw(int c) {
    if (c == '\'' || c == '\\') {
      return "" + (char) c + (char) c;
    }
    // Raw UTF-8, a byte a character of this text.
    return new String(new String(Character.toChars(c)).getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1);
  }

  private void between() {
    text.append(random.nextInt(4) == 0 ? "\r\n" : "\n");
    blank();
  }

  private void blank() {
    if (random.nextInt(8) != 0) {
      return;
    }
    for (int n = random.nextInt(3); n > 0; n--) {
      switch (random.nextInt(6)) {
        case 0 -> text.append("/* a ; comment's ( = */");
        case 1 -> text.append("/**/");
        case 2 -> text.append("\r\n");
        case 3 -> text.append(" ".repeat(random.nextInt(100)));
        case 4 -> text.append("/***** #1=IFCA(); /* ****/");
        default -> text.append('\t');
      }
    }
  }
}
