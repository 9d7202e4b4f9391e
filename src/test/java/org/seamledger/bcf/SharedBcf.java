package org.seamledger.bcf;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.Assumptions;
import org.seamledger.SharedModels;
import org.xml.sax.SAXException;

/**
 * What the standard's body publishes with BCF: XML schemas and test cases. They don't come with the project (their licence is
 * CC BY-ND 4.0); tests that need them are skipped where they are absent.
 */
public final class SharedBcf {

  private SharedBcf() {
  }

  static Path folder(String name) {
    Path folder = SharedModels.folder().resolve("../standards/bcf").resolve(name).normalize();
    return Files.exists(folder) ? folder : Assumptions.abort("no " + name + " of the standard here");
  }

  /** The BCF files of all cases. */
  static List<Path> cases() throws IOException {
    try (Stream<Path> files = Files.walk(folder("testcases"))) {
      return files.filter(f -> f.getFileName().toString().endsWith(".bcf")).sorted().toList();
    }
  }

  /**
   * Validates a document by a schema of the standard.
   *
   * @throws SAXException where it isn't valid
   */
  public static void validate(BcfVersion version, String schema, byte[] document) throws IOException, SAXException {
    SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI).newSchema(folder(version.id()).resolve(schema).toFile()).newValidator()
        .validate(new StreamSource(new ByteArrayInputStream(document)));
  }
}
