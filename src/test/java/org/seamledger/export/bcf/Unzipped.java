package org.seamledger.export.bcf;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.xpath.XPathFactory;
import org.seamledger.bcf.BcfVersion;
import org.seamledger.takeoff.Takeoff;
import org.w3c.dom.Document;

/** A package as another program sees it: its files by name, read by the JDK's own XML and ZIP readers. */
record Unzipped(Map<String, byte[]> files) {

  /** By this program, as old as the model. */
  static BcfOptions plain(BcfVersion version) {
    return new BcfOptions(version, "seamledger", Optional.empty());
  }

  static byte[] bytes(Takeoff takeoff, BcfOptions options) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      BcfPackage.write(takeoff, options, out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  static Unzipped of(byte[] zip) throws IOException {
    Map<String, byte[]> files = new LinkedHashMap<>();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
        files.put(e.getName(), in.readAllBytes());
      }
    }
    return new Unzipped(files);
  }

  static Unzipped of(Takeoff takeoff, BcfOptions options) throws IOException {
    return of(bytes(takeoff, options));
  }

  java.util.List<String> named(String ending) {
    return files.keySet().stream().filter(n -> n.endsWith(ending)).toList();
  }

  private Document document(String name) throws Exception {
    return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(files.get(name)));
  }

  /** What an XPath gives in a file. */
  String text(String name, String path) throws Exception {
    return XPathFactory.newInstance().newXPath().evaluate(path, document(name));
  }

  double number(String name, String path) throws Exception {
    return Double.parseDouble(text(name, path));
  }
}
