package org.seamledger.ids;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Looks whether a document is in the encoding that it declares, or in UTF-8 where it states nothing: the parser would tell standard error
 * before it tells us.
 */
final class Utf8Check {

  private static final Pattern ENCODING = Pattern.compile("^\\s*<\\?xml[^>]*encoding\\s*=\\s*[\"']([^\"']*)[\"']");
  private static final int DECLARATION = 200;

  private Utf8Check() {
  }

  /** The first byte that belongs to no character; nothing where all do, or the encoding is not known here. */
  static Optional<IdsProblem> of(byte[] text, String file) {
    Optional<Charset> charset = charset(text);
    if (charset.isEmpty()) {
      return Optional.empty();
    }
    CharsetDecoder decoder = charset.get().newDecoder();
    ByteBuffer in = ByteBuffer.wrap(text);
    CharBuffer out = CharBuffer.allocate(1 << 16);
    CoderResult result;
    do {
      out.clear();
      result = decoder.decode(in, out, true);
    } while (result.isOverflow());
    return result.isError() ? Optional.of(problem(text, in.position(), file, charset.get())) : Optional.empty();
  }

  private static Optional<Charset> charset(byte[] text) {
    if (text.length > 1 && (text[0] == 0 || text[1] == 0 || (text[0] & 0xFE) == 0xFE && (text[1] & 0xFE) == 0xFE)) {
      return Optional.empty();
    }
    Matcher declared = ENCODING.matcher(new String(text, 0, Math.min(DECLARATION, text.length), StandardCharsets.ISO_8859_1)
        .replaceFirst("^\u00EF\u00BB\u00BF", ""));
    try {
      return Optional.of(declared.find() ? Charset.forName(declared.group(1)) : StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  private static IdsProblem problem(byte[] text, int at, String file, Charset charset) {
    String before = new String(text, 0, at, charset);
    int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
    return new IdsProblem(file, line, before.length() - before.lastIndexOf('\n'), "text in " + charset.name(),
        String.format("the byte %02X", text[at]));
  }
}
