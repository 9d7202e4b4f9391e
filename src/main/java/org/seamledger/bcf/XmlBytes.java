package org.seamledger.bcf;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The characters of an XML document, by its byte order mark or the encoding that it declares, else UTF-8 (XML 1.0, appendix F). They are
 * not left to the parser, which writes to standard error of bytes that are none.
 */
final class XmlBytes {

  private static final Pattern DECLARED =
      Pattern.compile("^(?:\u00EF\u00BB\u00BF)?<\\?xml[^>]{0,100}?\\bencoding\\s*=\\s*[\"']([A-Za-z][\\w.-]{0,40})[\"']");
  private static final int HEAD = 200;
  private static final char MARK = '\uFEFF';

  private XmlBytes() {
  }

  /**
   * @param place what the document is called in messages
   * @throws BcfFormatException where its bytes are not of its encoding, or that is not known here
   */
  static String text(byte[] document, String place) {
    Charset charset = charset(document, place);
    CharsetDecoder decoder =
        charset.newDecoder().onMalformedInput(CodingErrorAction.REPORT).onUnmappableCharacter(CodingErrorAction.REPORT);
    CharBuffer text = CharBuffer.allocate((int) (document.length * (double) decoder.maxCharsPerByte()) + 1);
    CoderResult result = decoder.decode(ByteBuffer.wrap(document), text, true);
    String read = text.flip().toString();
    if (result.isError()) {
      int line = 1 + (int) read.chars().filter(c -> c == '\n').count();
      int column = read.length() - read.lastIndexOf('\n');
      throw new BcfFormatException(place + ":" + line + ":" + column, "text in " + charset, "bytes that are none");
    }
    return !read.isEmpty() && read.charAt(0) == MARK ? read.substring(1) : read;
  }

  private static Charset charset(byte[] d, String place) {
    int first = d.length < 2 ? 0 : (d[0] & 0xFF) << 8 | d[1] & 0xFF;
    if (first == 0xFEFF || first == 0xFFFE) {
      return StandardCharsets.UTF_16;
    }
    Matcher declared = DECLARED.matcher(new String(d, 0, Math.min(HEAD, d.length), StandardCharsets.ISO_8859_1));
    try {
      return declared.find() ? Charset.forName(declared.group(1)) : StandardCharsets.UTF_8;
    } catch (IllegalArgumentException e) {
      throw new BcfFormatException(place + ":1", "an encoding that is known", BcfReader.shown(declared.group(1)));
    }
  }
}
