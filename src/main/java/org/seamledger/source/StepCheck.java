package org.seamledger.source;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.seamledger.source.ModelServerException.Reason;

/** Whether downloaded bytes are a whole exchange structure (ISO 10303-21) of the schema that they should have. */
final class StepCheck {

  private static final String BEGIN = "ISO-10303-21;";
  private static final String END = "END-ISO-10303-21;";
  private static final Pattern SCHEMA = Pattern.compile("FILE_SCHEMA\\s*\\(\\s*\\(\\s*'([^']*)'");
  private static final int HEAD = 64 * 1024;
  private static final int TAIL = 256;

  private StepCheck() {
  }

  /**
   * @param schema {@code IFC2X3} or {@code IFC4}
   * @param who the server, for the message
   * @throws ModelServerException where it is no such model
   */
  static void require(SeekableByteChannel channel, String schema, String who) throws IOException {
    String head = read(channel, 0, HEAD).strip();
    String begun = head.startsWith("\uFEFF") ? head.substring(1) : head;
    if (!begun.startsWith(BEGIN)) {
      throw unusable(who + " sent " + what(begun) + " instead of a model");
    }
    long size = channel.size();
    if (!read(channel, Math.max(0, size - TAIL), TAIL).strip().endsWith(END)) {
      throw unusable(who + " sent a model that is cut short after " + size + " bytes: it does not end with " + END);
    }
    Matcher labelled = SCHEMA.matcher(begun);
    String label = labelled.find() ? labelled.group(1).toUpperCase(Locale.ROOT) : "no schema";
    if (!label.equals(schema)) {
      throw unusable(who + " sent a model labelled " + Lines.plain(label) + " from a project of " + schema
          + "; its elements would be misread");
    }
  }

  private static String what(String begun) {
    if (begun.isEmpty()) {
      return "nothing";
    }
    return begun.startsWith("<") ? "a web page" : Lines.quote(begun.substring(0, Math.min(60, begun.length())));
  }

  private static String read(SeekableByteChannel channel, long from, int most) throws IOException {
    ByteBuffer buffer = ByteBuffer.allocate((int) Math.min(most, channel.size() - from));
    channel.position(from);
    while (buffer.hasRemaining() && channel.read(buffer) >= 0) {
      continue;
    }
    channel.position(0);
    return new String(buffer.array(), 0, buffer.position(), StandardCharsets.UTF_8);
  }

  private static ModelServerException unusable(String message) {
    return new ModelServerException(Reason.UNUSABLE, message);
  }
}
