package org.seamledger.takeoff;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Properties;
import org.seamledger.shacl.BrokenRulesException;
import org.seamledger.shacl.RuleFiles;

/** This program's name and version. */
public final class Program {

  public static final String NAME = "seamledger";

  private Program() {
  }

  /**
   * The hash of the rules that an analysis under these shapes would name as its own now, without parsing them.
   *
   * @param shapes folder of shapes to use instead of the program's own
   * @throws UnusableFileException where they can't be read
   */
  public static String rules(Optional<Path> shapes) {
    try {
      return shapes.map(RuleFiles::in).orElseGet(RuleFiles::packaged).hash();
    } catch (BrokenRulesException e) {
      throw new UnusableFileException(e);
    }
  }

  /** The version in the build file, such as {@code 0.1.0}. */
  public static String version() {
    try (InputStream in = Program.class.getResourceAsStream("version.properties")) {
      Properties properties = new Properties();
      properties.load(in);
      return properties.getProperty("version");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
