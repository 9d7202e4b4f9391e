package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Every class that the program needs is in what is shipped: from each class of ours, and each that a library has the Java platform load for
 * it ({@code META-INF/services}), {@code jdeps} follows what a class mentions to the end. Tests run with more classes than users have.
 */
@Tag("packaged")
class ShippedClassesTest {

  private static final Path JAR = Path.of("target", "seamledger.jar");
  private static final Path LIB = Path.of("target", "lib");
  private static final String OURS = "org.seamledger.";
  /** {@code   org.example.One -> java.lang.Object java.base}; the names of archives stand in lines that are not indented so. */
  private static final Pattern EDGE = Pattern.compile("^ {3,}(?:(\\S+) +)?-> (\\S+) +(.*)$");
  private static final Pattern NODE = Pattern.compile("^ {3}(\\S+)$");

  /** What is mentioned and not shipped, and why nobody misses it: classes whose names begin so, and what they want. */
  private record Allowed(String needing, String missing, String reason) {
    boolean covers(String from, String to) {
      return from.startsWith(needing) && to.startsWith(missing);
    }
  }

  private static final List<Allowed> ALLOWED = List.of(
      new Allowed("io.javalin.compression.", "com.aayushatharva.brotli4j.", "Javalin looks whether Brotli is there; gzip will do"),
      new Allowed("io.javalin.compression.", "com.github.luben.zstd.", "Javalin looks whether Zstandard is there; gzip will do"),
      new Allowed("org.postgresql.", "org.checkerframework.", "annotations for a checker at compile time"),
      new Allowed("org.bimserver.shared.exceptions.", "javax.xml.ws.WebFault", "an annotation for SOAP, which is not spoken here"),
      new Allowed("org.bimserver.shared.meta.", "org.eclipse.core.runtime.",
          "the client reads Java sources of services only where it is given some"),
      new Allowed("org.apache.commons.compress.", "org.tukaani.xz.", "other packings in zips: only Deflate64 is read, the rest refused"),
      new Allowed("org.apache.commons.compress.", "com.github.luben.zstd.", "the same"),
      new Allowed("org.apache.batik.bridge.", "org.mozilla.javascript.", "scripts in drawings: ours have none"),
      new Allowed("org.apache.batik.script.rhino.", "org.mozilla.javascript.", "the same"),
      new Allowed("org.apache.fop.pdf.", "org.bouncycastle.", "signatures of documents: none is made"),
      new Allowed("javax.activation.", "com.sun.activation.registries.", "types of mail; documents go to the server as bytes"),
      new Allowed("org.eclipse.jdt.", "org.eclipse.", "a compiler in an IDE; the client mentions two of its classes and never compiles"),
      new Allowed("org.eclipse.jdt.", "org.osgi.", "the same"));

  private static final Map<String, Set<String>> NEEDS = new LinkedHashMap<>();
  private static final Set<String> NOT_FOUND = new TreeSet<>();

  @BeforeAll
  static void ask() throws IOException {
    List<String> words =
        new ArrayList<>(List.of("--multi-release", "17", "-verbose:class", "-filter:none", "-cp", LIB + File.separator + "*"));
    // A library with a module descriptor wants what it requires as modules.
    libraries().stream().filter(l -> l.getFileName().toString().startsWith("opczip"))
        .forEach(l -> words.addAll(List.of("--module-path", l.toString())));
    words.add(JAR.toString());
    words.addAll(libraries().stream().map(Path::toString).toList());
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    ToolProvider jdeps = ToolProvider.findFirst("jdeps").orElseThrow();
    int status = jdeps.run(new PrintWriter(out), new PrintWriter(err), words.toArray(String[]::new));
    assertThat(status).as(err.toString()).isZero();
    String from = "";
    for (String line : out.toString().lines().toList()) {
      Matcher node = NODE.matcher(line);
      Matcher edge = EDGE.matcher(line);
      if (node.matches()) {
        from = node.group(1);
      } else if (edge.matches()) {
        from = edge.group(1) == null ? from : edge.group(1);
        NEEDS.computeIfAbsent(from, f -> new TreeSet<>()).add(edge.group(2));
        if (edge.group(3).endsWith("not found")) {
          NOT_FOUND.add(edge.group(2));
        }
      }
    }
  }

  private static List<Path> libraries() throws IOException {
    try (Stream<Path> files = Files.list(LIB)) {
      return files.sorted().toList();
    }
  }

  /** Where the program comes in: our classes, and what libraries announce to the platform. */
  private static Set<String> roots() throws IOException {
    Set<String> roots = new TreeSet<>(NEEDS.keySet().stream().filter(name -> name.startsWith(OURS)).toList());
    for (Path library : libraries()) {
      try (JarFile jar = new JarFile(library.toFile())) {
        for (JarEntry entry : jar.stream().filter(e -> e.getName().startsWith("META-INF/services/") && !e.isDirectory()).toList()) {
          try (InputStream in = jar.getInputStream(entry)) {
            new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().map(line -> line.replaceFirst("#.*", "").strip())
                .filter(name -> !name.isEmpty()).forEach(roots::add);
          }
        }
      }
    }
    return roots;
  }

  /** What can't be found, each with the first class on the way to it that wants it. */
  private static Map<String, String> missing() throws IOException {
    Map<String, String> cameFrom = new TreeMap<>();
    Deque<String> open = new ArrayDeque<>();
    for (String root : roots()) {
      cameFrom.put(root, "");
      open.add(root);
    }
    Map<String, String> missing = new TreeMap<>();
    while (!open.isEmpty()) {
      String from = open.remove();
      for (String to : NEEDS.getOrDefault(from, Set.of())) {
        if (NOT_FOUND.contains(to)) {
          missing.put(from + " -> " + to, "from " + way(cameFrom, from));
        } else if (cameFrom.putIfAbsent(to, from) == null) {
          open.add(to);
        }
      }
    }
    return missing;
  }

  private static String way(Map<String, String> cameFrom, String to) {
    StringBuilder way = new StringBuilder(to);
    for (String at = cameFrom.get(to); !at.isEmpty(); at = cameFrom.get(at)) {
      way.insert(0, at + " -> ");
    }
    return way.toString();
  }

  private static boolean covers(Allowed allowed, String pair) {
    String[] ends = pair.split(" -> ");
    return allowed.covers(ends[0], ends[1]);
  }

  @Test
  void whateverIsNeededIsShipped() throws IOException {
    assertThat(NEEDS).as("classes that jdeps saw").hasSizeGreaterThan(10_000).containsKey("org.seamledger.cli.Main");
    Map<String, String> missing = missing();
    missing.keySet().removeIf(pair -> ALLOWED.stream().anyMatch(e -> covers(e, pair)));
    assertThat(missing).isEmpty();
  }

  @Test
  void noExceptionIsLeftOver() throws IOException {
    Set<String> missing = missing().keySet();
    assertThat(ALLOWED).allSatisfy(e -> {
      assertThat(e.reason()).isNotBlank();
      assertThat(missing).as(e.toString()).anyMatch(pair -> covers(e, pair));
    });
  }
}
