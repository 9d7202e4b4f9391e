package org.seamledger.http.answer;

import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.seamledger.finding.Sha256;

/**
 * What the page consists of, read once from the class path: its own files, and the parts of the 3-D library that it imports. A request
 * picks from this table by its whole path; it never names a file.
 */
public final class PageFiles {

  private static final Pattern IMPORT_MAP = Pattern.compile("<script type=\"importmap\">(.*?)</script>", Pattern.DOTALL);
  private static final String WORKER = "/roof/worker.js";
  private static final String THREE = "META-INF/resources/webjars/three/";
  private static final Map<String, String> LIBRARY = Map.of(
      "/lib/three/three.module.min.js", "build/three.module.min.js",
      "/lib/three/three.core.min.js", "build/three.core.min.js",
      "/lib/three/controls/OrbitControls.js", "examples/jsm/controls/OrbitControls.js",
      "/lib/three/lines/LineSegments2.js", "examples/jsm/lines/LineSegments2.js",
      "/lib/three/lines/LineSegmentsGeometry.js", "examples/jsm/lines/LineSegmentsGeometry.js",
      "/lib/three/lines/LineMaterial.js", "examples/jsm/lines/LineMaterial.js");
  private static final Map<String, String> TYPES = Map.of("html", "text/html; charset=utf-8", "js", "text/javascript; charset=utf-8",
      "css", "text/css; charset=utf-8", "svg", "image/svg+xml", "json", "application/json", "webmanifest",
      "application/manifest+json");

  private static final class Entry {
    private final byte[] plain;
    private final String type;
    private final String etag;
    /** Made when the file is first asked for: most of them nobody asks for in the first second. */
    private byte[] gzip;

    Entry(byte[] plain, String type) {
      this.plain = plain;
      this.type = type;
      etag = PageFiles.etag(plain);
    }

    synchronized byte[] gzip() {
      if (gzip == null) {
        gzip = PageFiles.gzip(plain);
      }
      return gzip;
    }
  }

  private final Map<String, Entry> entries = new TreeMap<>();
  private final String contentSecurityPolicy;

  public PageFiles() {
    readOwn();
    String three = THREE + threeVersion() + "/";
    LIBRARY.forEach((path, resource) -> add(path, resource(three + resource)));
    add("/", entries.get("/index.html").plain);
    add("/roof/", entries.get("/roof/index.html").plain);
    nameVersion();
    contentSecurityPolicy = policy(new String(entries.get("/").plain, StandardCharsets.UTF_8));
  }

  private void readOwn() {
    URL index = PageFiles.class.getResource("/web/index.html");
    if (index == null) {
      throw new IllegalStateException("the page is missing from the program");
    }
    try {
      URI uri = index.toURI();
      if (uri.getScheme().equals("jar")) {
        try (FileSystem jar = FileSystems.newFileSystem(uri, Map.of())) {
          addAll(jar.getPath("/web"));
        }
      } else {
        addAll(Path.of(uri).getParent());
      }
    } catch (IOException | URISyntaxException e) {
      throw new IllegalStateException("the page cannot be read", e);
    }
  }

  private void addAll(Path root) throws IOException {
    try (Stream<Path> files = Files.walk(root)) {
      for (Path f : files.filter(Files::isRegularFile).toList()) {
        String path = "/" + root.relativize(f).toString().replace('\\', '/');
        if (TYPES.containsKey(ending(path))) {
          add(path, Files.readAllBytes(f));
        }
      }
    }
  }

  private static String ending(String path) {
    return path.substring(path.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }

  private void add(String path, byte[] content) {
    String type = path.endsWith("/") ? TYPES.get("html") : TYPES.get(ending(path));
    entries.put(path, new Entry(content, type));
  }

  /** The page on the roof keeps its files until their version is another: the worker's own bytes have to differ then. */
  private void nameVersion() {
    MessageDigest all = Sha256.digest();
    entries.forEach((path, entry) -> all.update((path + entry.etag).getBytes(StandardCharsets.UTF_8)));
    String version = HexFormat.of().formatHex(all.digest(), 0, 8);
    String worker = new String(entries.get(WORKER).plain, StandardCharsets.UTF_8).replace("@version@", version);
    add(WORKER, worker.getBytes(StandardCharsets.UTF_8));
  }

  private static String threeVersion() {
    try (InputStream in = PageFiles.class.getResourceAsStream("/META-INF/maven/org.webjars.npm/three/pom.properties")) {
      Properties p = new Properties();
      p.load(in);
      return p.getProperty("version");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static byte[] resource(String name) {
    try (InputStream in = PageFiles.class.getClassLoader().getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks " + name);
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public static String etag(byte[] content) {
    return "\"" + HexFormat.of().formatHex(sha256(content), 0, 8) + "\"";
  }

  public static byte[] gzip(byte[] content) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(bytes)) {
      out.write(content);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static byte[] sha256(byte[] content) {
    return Sha256.digest().digest(content);
  }

  /** Browsers take an import map only from within the page; its hash lets in this one script and no other. */
  private static String policy(String html) {
    Matcher map = IMPORT_MAP.matcher(html);
    String hash = map.find()
        ? " 'sha256-" + Base64.getEncoder().encodeToString(sha256(map.group(1).getBytes(StandardCharsets.UTF_8))) + "'" : "";
    return "default-src 'none'; script-src 'self'" + hash + "; style-src 'self'; img-src 'self' data: blob:; connect-src 'self';"
        + " manifest-src 'self'; worker-src 'self';"
        + " base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
  }

  public String contentSecurityPolicy() {
    return contentSecurityPolicy;
  }

  public boolean has(String path) {
    return entries.containsKey(path);
  }

  public Iterable<String> paths() {
    return entries.keySet();
  }

  public void answer(Context ctx, String path) {
    Entry e = entries.get(path);
    ctx.header("Cache-Control", "no-cache");
    CachedBodies.send(ctx, e.plain, e.gzip(), e.etag, e.type);
  }
}
