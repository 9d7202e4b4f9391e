package org.seamledger.cluster;

/** What a Java machine of the cluster is told, so that results are those of a machine alone. */
final class Platform {

  private static final String XML = "javax.xml.stream.XMLInputFactory";
  private static final String XML_OF_JAVA = "com.sun.xml.internal.stream.XMLInputFactoryImpl";

  /** File names by UTF-8, no local time, and Java's own reader of XML: Spark brings another, which Jena does not get on with. */
  static final String OPTIONS = "-Dfile.encoding=UTF-8 -Duser.timezone=UTC -D" + XML + "=" + XML_OF_JAVA;

  private Platform() {
  }

  /** For a machine that is running already. */
  static void prepare() {
    System.setProperty(XML, XML_OF_JAVA);
  }
}
