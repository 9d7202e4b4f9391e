package org.seamledger.shacl;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.seamledger.finding.SettingsFile;

/**
 * The text of one file of rules.
 *
 * @param name without its folder, such as {@code kinds.ttl}
 * @param place how messages name it
 */
record RuleFile(String name, String place, String text) {

  static RuleFile read(Path file) {
    try {
      return new RuleFile(file.getFileName().toString(), file.toString(), decode(file.toString(), SettingsFile.bytes(file)));
    } catch (IOException e) {
      throw new BrokenRulesException(file.toString(), 0, 0,
          "can't be read (" + (e.getClass() == IOException.class ? e.getMessage() : e.getClass().getSimpleName()) + ")");
    }
  }

  static String decode(String place, byte[] bytes) {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString().replace("\r\n", "\n").replace('\r', '\n');
    } catch (CharacterCodingException e) {
      throw new BrokenRulesException(place, 0, 0, "is not UTF-8 text");
    }
  }
}
