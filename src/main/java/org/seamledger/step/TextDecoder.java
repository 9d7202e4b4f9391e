package org.seamledger.step;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * The text of a string's bytes: clause 6.4.3 of ISO 10303-21, and raw UTF-8 as its third edition allows (bytes that are no UTF-8 are taken
 * as ISO 8859-1). Escapes that are none stay as they stand; line ends inside a string are dropped, they only wrapped it.
 */
final class TextDecoder {

  private final byte[] bytes;
  private final int end;
  private int at;
  private final StringBuilder text;
  private Charset page = StandardCharsets.ISO_8859_1;

  private TextDecoder(byte[] bytes, int from, int to) {
    this.bytes = bytes;
    this.at = from;
    this.end = to;
    this.text = new StringBuilder(to - from);
  }

  /** @param from behind the opening apostrophe @param to at the closing one */
  static String decode(byte[] bytes, int from, int to) {
    for (int i = from; i < to; i++) {
      byte b = bytes[i];
      if (b < ' ' || b == '\\' || b == '\'') {
        return new TextDecoder(bytes, from, to).decode();
      }
    }
    return new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
  }

  /**
   * True where the apostrophe at {@code position} seems to belong to a {@code \S\} right before it, which stands for the character 128
   * places on, and so doesn't end the string. Only a reading from the string's start can tell, see {@link #end}.
   */
  static boolean mayBeShifted(byte[] bytes, int position) {
    return position >= 3 && bytes[position - 1] == '\\' && bytes[position - 2] == 'S' && bytes[position - 3] == '\\';
  }

  /**
   * The place of the apostrophe that closes a string, or -1 where there is none before {@code limit}.
   *
   * @param from behind the opening apostrophe
   */
  static int end(byte[] bytes, int from, int limit) {
    int at = from;
    while (at < limit) {
      byte b = bytes[at];
      if (b == '\\') {
        at += directive(bytes, at, limit);
      } else if (b != '\'') {
        at++;
      } else if (at + 1 < limit && bytes[at + 1] == '\'') {
        at += 2;
      } else {
        return at;
      }
    }
    return -1;
  }

  /** How many bytes belong together from the backslash at {@code at} on; 1 where it begins no directive. */
  private static int directive(byte[] bytes, int at, int limit) {
    int second = at + 1 < limit ? bytes[at + 1] : 0;
    int third = at + 2 < limit ? bytes[at + 2] : 0;
    int fourth = at + 3 < limit ? bytes[at + 3] : 0;
    if (second == '\\') {
      return 2;
    }
    if (third == '\\') {
      return second == 'S' ? 4 : second == 'X' || second == 'N' || second == 'F' ? 3 : 1;
    }
    boolean page = second == 'P' && third >= 'A' && third <= 'I';
    boolean run = second == 'X' && (third == '0' || third == '2' || third == '4');
    return fourth == '\\' && (page || run) ? 4 : 1;
  }

  private String decode() {
    while (at < end) {
      byte b = bytes[at];
      if (b == '\\') {
        escape();
      } else if (b == '\'') {
        text.append('\'');
        at += at + 1 < end && bytes[at + 1] == '\'' ? 2 : 1;
      } else if (b < 0) {
        raw();
      } else {
        if (b != '\n' && b != '\r') {
          text.append((char) b);
        }
        at++;
      }
    }
    return text.toString();
  }

  private void raw() {
    int from = at;
    while (at < end && bytes[at] < 0) {
      at++;
    }
    try {
      text.append(StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes, from, at - from)));
    } catch (CharacterCodingException e) {
      text.append(new String(bytes, from, at - from, StandardCharsets.ISO_8859_1));
    }
  }

  private void escape() {
    int length = Math.min(directive(bytes, at, end), end - at);
    byte kind = length > 1 ? bytes[at + 1] : 0;
    byte third = length > 2 ? bytes[at + 2] : 0;
    if (kind == '\\') {
      text.append('\\');
    } else if (kind == 'S' && length == 4) {
      text.append(new String(new byte[] {(byte) (bytes[at + 3] | 0x80)}, page));
    } else if (kind == 'P') {
      page = page(third);
    } else if (kind == 'N') {
      text.append('\n');
    } else if (kind == 'X' && length == 3 && hex(at + 3, 2) >= 0) {
      text.append((char) hex(at + 3, 2));
      length += 2;
    } else if (kind == 'X' && third == '2' && isRun(at + 4, 4)) {
      run(4);
      return;
    } else if (kind == 'X' && third == '4' && isRun(at + 4, 8)) {
      run(8);
      return;
    } else {
      text.append(new String(bytes, at, length, StandardCharsets.ISO_8859_1));
    }
    at += length;
  }

  private static Charset page(byte letter) {
    String name = "ISO-8859-" + (letter - 'A' + 1);
    return Charset.isSupported(name) ? Charset.forName(name) : StandardCharsets.ISO_8859_1;
  }

  /** The value of so many hexadecimal digits, or -1. */
  private long hex(int from, int digits) {
    if (end - from < digits) {
      return -1;
    }
    long value = 0;
    for (int i = from; i < from + digits; i++) {
      int digit = bytes[i] < 0 ? -1 : Character.digit(bytes[i], 16);
      if (digit < 0) {
        return -1;
      }
      value = 16 * value + digit;
    }
    return value;
  }

  /** True where characters of so many digits each, and the directive that ends them, follow. */
  private boolean isRun(int from, int digits) {
    int i = from;
    while (hex(i, digits) >= 0) {
      if (digits == 8 && hex(i, digits) > Character.MAX_CODE_POINT) {
        return false;
      }
      i += digits;
    }
    return end - i >= 4 && bytes[i] == '\\' && bytes[i + 1] == 'X' && bytes[i + 2] == '0' && bytes[i + 3] == '\\';
  }

  private void run(int digits) {
    at += 4;
    for (; bytes[at] != '\\'; at += digits) {
      int value = (int) hex(at, digits);
      if (digits == 4) {
        text.append((char) value);
      } else {
        text.appendCodePoint(value);
      }
    }
    at += 4;
  }
}
