package org.seamledger.bcf;

import java.util.function.UnaryOperator;

/** What {@code bcf.version} says. */
final class VersionFields implements XmlWalk.Fields {

  private String version = "";

  @Override
  public void start(String path, UnaryOperator<String> attribute) {
    if (path.equals("Version")) {
      version = attribute.apply("VersionId");
    }
  }

  @Override
  public void end(String path, String text) {
    // Nothing but the attribute matters.
  }

  String version() {
    return version;
  }
}
