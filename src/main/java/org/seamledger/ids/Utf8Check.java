package org.seamledger.ids;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Looks whether a document that says that it is UTF-8, or states nothing, is so: the parser would tell standard error before it tells us.
 */
final class Utf8Check {

  private static final Pattern ENCODING = Pattern.compile("^\\s*<\\?xml[^>]*encoding\\s*=\\s*[\"']([^\"']*)[\"']");
  private static final int DECLARATION = 200;

  private Utf8Check() {
  }

  /** The first byte that belongs to no character; nothing where all do, or the document is in another encoding. */
  static Optional<IdsProblem> of(byte[] text, String file) {
    if (isOther(text)) {
      return Optional.empty();
    }
    CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    ByteBuffer in = ByteBuffer.wrap(text);
    CharBuffer out = CharBuffer.allocate(1 << 16);
    CoderResult result;
    do {
      out.clear();
      result = decoder.decode(in, out, true);
    } while (result.isOverflow());
    return result.isError() ? Optional.of(problem(text, in.position(), file)) : Optional.empty();
  }

  private static boolean isOther(byte[] text) {
    if (text.length > 1 && (text[0] == 0 || text[1] == 0 || (text[0] & 0xFE) == 0xFE && (text[1] & 0xFE) == 0xFE)) {
      return true;
    }
    Matcher declared = ENCODING.matcher(new String(text, 0, Math.min(DECLARATION, text.length), StandardCharsets.ISO_8859_1)
        .replaceFirst("^\u00EF\u00BB\u00BF", ""));
    return declared.find() && !declared.group(1).equalsIgnoreCase("UTF-8");
  }

  private static IdsProblem problem(byte[] text, int at, String file) {
    String before = new String(text, 0, at, StandardCharsets.UTF_8);
    int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
    return new IdsProblem(file, line, before.length() - before.lastIndexOf('\n'), "text in UTF-8",
        String.format("the byte %02X", text[at]));
  }
}
