package org.seamledger.step;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Decodes one statement, clause 6 and 12 of ISO 10303-21. Kinder than the standard where real writers stray and the meaning is plain: reals
 * without a point, keywords in lower case, and the words some runtimes print for infinite and undefined numbers.
 */
final class ParameterReader {

  /** Aggregates and typed parameters inside each other; IFC itself needs four. */
  static final int DEEPEST = 100;
  private static final Value OMITTED = new Value.Omitted();
  private static final Value DERIVED = new Value.Derived();

  private final byte[] bytes;
  private final int end;
  /** Offset in the file of the array's first byte. */
  private final long base;
  private int at;
  /** Values of the aggregates being read, the innermost's on top. */
  private Value[] values = new Value[32];
  private int top;

  /** @param offset in the file of the byte at {@code from} */
  ParameterReader(byte[] bytes, int from, int to, long offset) {
    this.bytes = bytes;
    this.at = from;
    this.end = to;
    this.base = offset - from;
  }

  // ---- statements

  /** An instance of the data section or an entity of the header, with its semicolon. */
  void statement() {
    blank();
    if (peek() == '#') {
      instance();
    } else {
      keyword();
      parameters(0);
      expect(';', "; at the end of the statement");
    }
  }

  /** The parameters of an entity of the header. */
  List<Value> headerEntity() {
    blank();
    keyword();
    return parameters(0);
  }

  Instance instance() {
    blank();
    expect('#', "an instance (#)");
    long id = id();
    if (!passed('=')) {
      throw misread("= after #" + id);
    }
    blank();
    String keyword = peek() == '(' ? StepFile.COMPLEX : keyword();
    Instance instance = new Instance(id, keyword, keyword.equals(StepFile.COMPLEX) ? parts() : parameters(0));
    if (!passed(';')) {
      throw misread("; at the end of #" + id);
    }
    return instance;
  }

  /** The parts of an instance that is of several entities at once, each a typed aggregate. */
  private List<Value> parts() {
    List<Value> parts = new ArrayList<>();
    at++;
    for (blank(); peek() != ')'; blank()) {
      parts.add(new Value.Typed(keyword(), new Value.Aggregate(parameters(1))));
    }
    at++;
    return parts;
  }

  /** Offset in the file of what stands behind what was read last. */
  long offset() {
    return base + at;
  }

  // ---- parameters

  private List<Value> parameters(int depth) {
    expect('(', "(");
    if (depth > DEEPEST) {
      throw new Misread(base + at - 1, "at most " + DEEPEST + " parentheses inside each other", "more");
    }
    blank();
    if (peek() == ')') {
      at++;
      return List.of();
    }
    int bottom = top;
    for (;;) {
      push(parameter(depth));
      blank();
      int c = peek();
      if (c != ',' && c != ')') {
        throw misread(", or )");
      }
      at++;
      if (c == ')') {
        return popTo(bottom);
      }
    }
  }

  private void push(Value value) {
    if (top == values.length) {
      values = Arrays.copyOf(values, 2 * top);
    }
    values[top++] = value;
  }

  /** The values above {@code bottom}. The short lists that make up most of a model are had without copying an array. */
  private List<Value> popTo(int bottom) {
    int size = top - bottom;
    top = bottom;
    return switch (size) {
      case 1 -> List.of(values[bottom]);
      case 2 -> List.of(values[bottom], values[bottom + 1]);
      case 3 -> List.of(values[bottom], values[bottom + 1], values[bottom + 2]);
      case 4 -> List.of(values[bottom], values[bottom + 1], values[bottom + 2], values[bottom + 3]);
      default -> List.of(Arrays.copyOfRange(values, bottom, bottom + size));
    };
  }

  private Value parameter(int depth) {
    blank();
    int c = peek();
    switch (c) {
      case '#' :
        at++;
        return new Value.Reference(id());
      case '\'' :
        return text();
      case '$' :
        at++;
        return OMITTED;
      case '*' :
        at++;
        return DERIVED;
      case '(' :
        return new Value.Aggregate(parameters(depth + 1));
      case '"' :
        return binary();
      case '.' :
        return KeywordTable.isDigit(peek(1)) ? number() : enumeration();
      default :
        if (c == '-' || c == '+' || KeywordTable.isDigit(c)) {
          return number();
        }
        return word(depth);
    }
  }

  private long id() {
    int from = at;
    long id = 0;
    for (int c; KeywordTable.isDigit(c = peek()); at++) {
      if (id > (Long.MAX_VALUE - (c - '0')) / 10) {
        at = from;
        throw misread("an instance's number of at most " + Long.MAX_VALUE);
      }
      id = 10 * id + c - '0';
    }
    if (at == from) {
      throw misread("an instance's number");
    }
    return id;
  }

  private Value text() {
    int from = at + 1;
    int close = TextDecoder.end(bytes, from, end);
    if (close < 0) {
      at = end;
      throw misread("' at the end of the text");
    }
    at = close + 1;
    return new Value.Text(TextDecoder.decode(bytes, from, close));
  }

  private Value binary() {
    int from = ++at;
    while (Character.digit(peek(), 16) >= 0) {
      at++;
    }
    if (peek() != '"') {
      throw misread("hexadecimal digits and \"");
    }
    return new Value.Binary(ascii(from, at++));
  }

  private Value enumeration() {
    int from = ++at;
    while (KeywordTable.isWord(peek())) {
      at++;
    }
    if (peek() != '.' || at == from) {
      throw misread("an enumeration value and .");
    }
    return new Value.Enumeration(KeywordTable.upperCase(ascii(from, at++)));
  }

  /** A typed parameter, or a word for a number that is none. */
  private Value word(int depth) {
    int start = at;
    String keyword = wordOrEmpty();
    if (keyword.isEmpty()) {
      throw misread("a parameter");
    }
    double special = NumberReader.special(keyword);
    if (special != 0) {
      skipIndefinite();
      return new Value.Real(special);
    }
    if (!KeywordTable.isKeyword(bytes, start, at)) {
      at = start;
      throw misread("a parameter");
    }
    blank();
    List<Value> inside = parameters(depth + 1);
    if (inside.size() > 1) {
      at = start;
      throw misread("one parameter in " + keyword);
    }
    return new Value.Typed(keyword, inside.isEmpty() ? OMITTED : inside.get(0));
  }

  private Value number() {
    int from = at;
    if (peek() == '-' || peek() == '+') {
      at++;
    }
    if (KeywordTable.isWord(peek()) && !KeywordTable.isDigit(peek())) {
      double special = NumberReader.special(wordOrEmpty());
      if (special == 0) {
        at = from;
        throw misread("a number");
      }
      skipIndefinite();
      return new Value.Real(bytes[from] == '-' ? -special : special);
    }
    at = NumberReader.end(bytes, from, end);
    if (at < 0) {
      at = from;
      throw misread("a number");
    }
    if (peek() == '#') {
      return unprintable(from);
    }
    return NumberReader.value(bytes, from, at);
  }

  /** {@code 1.#INF}, {@code -1.#IND}, {@code 1.#QNAN0}: what a C runtime prints. */
  private Value unprintable(int from) {
    at++;
    boolean infinite = wordOrEmpty().startsWith("INF");
    double value = !infinite ? Double.NaN : bytes[from] == '-' ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    return new Value.Real(value);
  }

  /** The {@code (ind)} of {@code -nan(ind)}. */
  private void skipIndefinite() {
    if (peek() == '(') {
      at++;
      wordOrEmpty();
      expect(')', ")");
    }
  }

  // ---- words and signs

  private String keyword() {
    int from = at;
    String word = wordOrEmpty();
    if (!KeywordTable.isKeyword(bytes, from, at)) {
      at = from;
      throw misread("an entity's name");
    }
    return word;
  }

  private String wordOrEmpty() {
    int from = at;
    if (peek() == '!') {
      at++;
    }
    while (KeywordTable.isWord(peek())) {
      at++;
    }
    return KeywordTable.upperCase(ascii(from, at));
  }

  private String ascii(int from, int to) {
    return new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
  }

  private int peek() {
    return at < end ? bytes[at] : -1;
  }

  private int peek(int ahead) {
    return at + ahead < end ? bytes[at + ahead] : -1;
  }

  private void expect(char wanted, String expected) {
    if (!passed(wanted)) {
      throw misread(expected);
    }
  }

  /** Passes blanks, and the sign where it stands behind them. */
  private boolean passed(char wanted) {
    blank();
    if (peek() != wanted) {
      return false;
    }
    at++;
    return true;
  }

  private void blank() {
    while (at < end) {
      if (bytes[at] == '/' && peek(1) == '*') {
        comment();
      } else if (Scanner.isBlank(bytes[at])) {
        at++;
      } else {
        return;
      }
    }
  }

  private void comment() {
    int start = at;
    for (at += 2; at < end; at++) {
      if (bytes[at] == '*' && peek(1) == '/') {
        at += 2;
        return;
      }
    }
    throw new Misread(base + start, "*/ at the end of this comment", Misread.END);
  }

  private Misread misread(String expected) {
    return new Misread(base + at, expected, Found.at(bytes, at, end));
  }
}
