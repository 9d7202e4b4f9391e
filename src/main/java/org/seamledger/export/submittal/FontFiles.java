package org.seamledger.export.submittal;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import org.apache.xmlgraphics.io.Resource;
import org.apache.xmlgraphics.io.ResourceResolver;

/** All that the formatter may open: the fonts in the program itself. A document, whatever it names, reaches no file and no network. */
final class FontFiles implements ResourceResolver {

  static final String REGULAR = "DejaVuSans.ttf";
  static final String BOLD = "DejaVuSans-Bold.ttf";
  /** What names of fonts are joined with; it is never looked at. */
  static final URI BASE = URI.create("file:/");

  static InputStream open(String file) throws IOException {
    InputStream in = FontFiles.class.getResourceAsStream(file);
    if (in == null) {
      throw new FileNotFoundException(file);
    }
    return in;
  }

  @Override
  public Resource getResource(URI uri) throws IOException {
    String file = String.valueOf(uri.getPath()).replaceFirst("^/", "");
    if (!file.equals(REGULAR) && !file.equals(BOLD)) {
      throw new FileNotFoundException(uri.toString());
    }
    return new Resource(open(file));
  }

  @Override
  public OutputStream getOutputStream(URI uri) throws IOException {
    throw new FileNotFoundException(uri.toString());
  }
}
