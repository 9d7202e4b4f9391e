package org.seamledger.step;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * The text of a string's bytes: clause 6.4.3 of ISO 10303-21, and raw UTF-8 as its third edition allows (bytes that are no UTF-8 are taken as
 * ISO 8859-1). Escapes that are none stay as they stand; line ends inside a string are dropped, they only wrapped it.
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
   * True where the apostrophe at {@code position} belongs to a {@code \S\} right before it, which stands for the character 128 places on,
   * and so doesn't end the string.
   */
  static boolean isShifted(byte[] bytes, int position) {
    if (position < 3 || bytes[position - 1] != '\\' || bytes[position - 2] != 'S') {
      return false;
    }
    int backslashes = 0;
    while (position - 3 - backslashes >= 0 && bytes[position - 3 - backslashes] == '\\') {
      backslashes++;
    }
    return backslashes % 2 == 1;
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
    if (at + 1 < end && bytes[at + 1] == '\\') {
      text.append('\\');
      at += 2;
    } else if (is("\\S\\") && at + 3 < end) {
      text.append(new String(new byte[] {(byte) (bytes[at + 3] | 0x80)}, page));
      at += 4;
    } else if (is("\\X\\") && hex(at + 3, 2) >= 0) {
      text.append((char) hex(at + 3, 2));
      at += 5;
    } else if (is("\\X2\\") && isRun(at + 4, 4)) {
      run(4);
    } else if (is("\\X4\\") && isRun(at + 4, 8)) {
      run(8);
    } else if (isPage()) {
      page = page(bytes[at + 2]);
      at += 4;
    } else if (is("\\N\\")) {
      text.append('\n');
      at += 3;
    } else {
      text.append('\\');
      at++;
    }
  }

  private boolean is(String directive) {
    if (end - at < directive.length()) {
      return false;
    }
    for (int i = 0; i < directive.length(); i++) {
      if (bytes[at + i] != directive.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  private boolean isPage() {
    return end - at >= 4 && bytes[at + 1] == 'P' && bytes[at + 2] >= 'A' && bytes[at + 2] <= 'I' && bytes[at + 3] == '\\';
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
