package org.seamledger.takeoff;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** This program's name and version. */
public final class Program {

  public static final String NAME = "seamledger";

  private Program() {
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
