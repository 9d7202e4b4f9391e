package org.seamledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The structure of the page as a table: which room of `web/js` may import which. DEVELOPERS.md shows it. */
class WebArchitectureTest {

  private static final Path ROOT = Path.of("web", "js");
  private static final int LONGEST_LINE = 140;
  private static final int LONGEST_FUNCTION = 40;
  private static final int LONGEST_FILE = 200;
  private static final Pattern IMPORT =
      Pattern.compile("(?:^\\s*import\\s[^;]*?from\\s*|^\\s*import\\s*|\\bimport\\()'([^']+)'", Pattern.MULTILINE);
  /** Comments name types by their file, which is no import. */
  private static final Pattern COMMENT = Pattern.compile("/\\*.*?\\*/", Pattern.DOTALL);
  private static final Pattern ROW = Pattern.compile("^\\| (`[^|]*`) \\| ([^|]*) \\|$");
  private static final Pattern BLOCK = Pattern.compile("^(?:  )?(?:export |default |async |static |const |let |get |set |\\*)*\\w.*");

  /** From the bottom up: a room (a file, or a folder without files of its own row) and the rooms that it may import. */
  private static final Map<String, List<String>> MAY_IMPORT = mayImport();

  private static Map<String, List<String>> mayImport() {
    List<String> ground = List.of("dom", "state", "units", "api", "navigate");
    Map<String, List<String>> table = new LinkedHashMap<>();
    table.put("types", List.of());
    table.put("dom", List.of());
    table.put("state", List.of());
    table.put("api", List.of());
    table.put("navigate", List.of());
    table.put("units", List.of("state"));
    table.put("ledger", List.of("units"));
    table.put("actions", with(ground, "ledger"));
    table.put("parts", with(ground, "ledger"));
    table.put("plan", with(ground, "ledger"));
    table.put("roof3d", with(ground, "ledger", "three"));
    table.put("table", with(ground, "ledger", "parts"));
    table.put("detail", with(ground, "ledger", "actions", "parts"));
    table.put("views", with(ground, "ledger", "actions", "parts"));
    table.put("start", with(ground, "parts"));
    table.put("desk", with(ground, "ledger", "parts", "plan", "roof3d", "table", "detail", "views"));
    table.put("phone", List.of("dom", "ledger"));
    table.put("main", with(ground, "actions", "start", "desk"));
    return table;
  }

  private static List<String> with(List<String> some, String... more) {
    return Stream.concat(some.stream(), Stream.of(more)).toList();
  }

  static List<Path> files() throws IOException {
    try (Stream<Path> all = Files.walk(ROOT)) {
      return all.filter(f -> f.toString().endsWith(".js")).sorted().toList();
    }
  }

  static List<Path> sources() throws IOException {
    try (Stream<Path> all = Files.walk(ROOT.getParent())) {
      return all.filter(f -> f.toString().endsWith(".js") || f.toString().endsWith(".css")).sorted().toList();
    }
  }

  /** The room of a file: its folder, or its own name where it stands at the top. */
  private static String room(Path file) {
    String first = ROOT.relativize(file).getName(0).toString();
    return first.endsWith(".js") ? first.substring(0, first.length() - 3) : first;
  }

  /** What a file imports, static or at need: files of the page, and names of libraries as they stand. */
  private static Set<String> imports(Path file) throws IOException {
    Set<String> found = new TreeSet<>();
    Matcher m = IMPORT.matcher(COMMENT.matcher(Files.readString(file)).replaceAll(""));
    while (m.find()) {
      found.add(m.group(1).startsWith(".") ? file.resolveSibling(m.group(1)).normalize().toString() : m.group(1));
    }
    return found;
  }

  private static String roomOf(String imported) {
    Path path = Path.of(imported);
    return path.startsWith(ROOT) ? room(path) : imported.split("/")[0];
  }

  @ParameterizedTest
  @MethodSource("files")
  void importsOnlyWhatTheTableSays(Path file) throws IOException {
    String own = room(file);
    assertThat(MAY_IMPORT).as("the table has every room").containsKey(own);
    Set<String> rooms = imports(file).stream().map(WebArchitectureTest::roomOf).filter(r -> !r.equals(own))
        .collect(Collectors.toCollection(TreeSet::new));
    assertThat(MAY_IMPORT.get(own)).as("what " + file + " may import").containsAll(rooms);
  }

  @ParameterizedTest
  @MethodSource("files")
  void importsFilesThatAreThere(Path file) throws IOException {
    assertThat(imports(file).stream().filter(i -> Path.of(i).startsWith(ROOT.getParent())).map(Path::of)).allMatch(Files::isRegularFile);
  }

  @Test
  void tableHasNoRoomThatIsNotThereAndNoCycle() throws IOException {
    assertThat(files().stream().map(WebArchitectureTest::room).collect(Collectors.toSet())).isEqualTo(MAY_IMPORT.keySet());
    List<String> order = List.copyOf(MAY_IMPORT.keySet());
    MAY_IMPORT.forEach((name, rooms) -> assertThat(with(order.subList(0, order.indexOf(name)), "three")).as(name).containsAll(rooms));
  }

  @Test
  void filesAreFreeOfCycles() throws IOException {
    Map<String, Set<String>> graph = new TreeMap<>();
    for (Path file : files()) {
      graph.put(file.toString(), imports(file));
    }
    assertThat(graph.values().stream().mapToInt(Set::size).sum()).as("imports are found").isGreaterThan(100);
    boolean shrinks = true;
    while (shrinks) {
      // A file that imports none of those that are left is in no cycle.
      shrinks = graph.values().removeIf(imported -> imported.stream().noneMatch(graph::containsKey));
    }
    assertThat(graph).as("files in a cycle, or on top of one").isEmpty();
  }

  @ParameterizedTest
  @MethodSource("sources")
  void linesAndFilesAreShort(Path file) throws IOException {
    List<String> lines = Files.readAllLines(file);
    assertThat(lines).as(file.toString()).hasSizeLessThan(LONGEST_FILE)
        .allMatch(line -> line.codePointCount(0, line.length()) <= LONGEST_LINE);
  }

  @ParameterizedTest
  @MethodSource("files")
  void functionsAreShort(Path file) throws IOException {
    assertThat(tooLong(Files.readAllLines(file))).as(file.toString()).isEmpty();
  }

  @Test
  void aFunctionThatIsTooLongIsFound() {
    List<String> body = Collections.nCopies(LONGEST_FUNCTION, "  x();");
    List<String> method = Collections.nCopies(LONGEST_FUNCTION, "    x();");
    assertThat(tooLong(framed("export async function f() {", body, "}"))).containsExactly("export async function f() {");
    assertThat(tooLong(framed("const f = () => h('p', {},", body, ");"))).containsExactly("const f = () => h('p', {},");
    List<String> inClass = new ArrayList<>(List.of("class A {"));
    inClass.addAll(framed("  m(a) {", method, "  }"));
    inClass.add("}");
    assertThat(tooLong(inClass)).containsExactly("  m(a) {");
    assertThat(tooLong(framed("function f() {", body.subList(2, body.size()), "}"))).isEmpty();
  }

  private static List<String> framed(String head, List<String> body, String end) {
    return Stream.of(List.of(head), body, List.of(end)).flatMap(List::stream).toList();
  }

  /**
   * Statements of a file, and members of its classes, that take more lines than a function may: from the line that begins one to the line
   * before the next, without comments and empty lines between them. What is nested is shorter still.
   */
  private static List<String> tooLong(List<String> lines) {
    List<String> found = new ArrayList<>();
    boolean isClass = false;
    int begin = -1;
    int end = -1;
    for (int i = 0; i <= lines.size(); i++) {
      String line = i < lines.size() ? lines.get(i) : "x";
      boolean isTop = BLOCK.matcher(line).matches() && !line.startsWith(" ");
      boolean isMember = isClass && line.matches("  [\\w#].*");
      if (isTop || isMember) {
        if (begin >= 0 && end - begin + 1 > LONGEST_FUNCTION) {
          found.add(lines.get(begin));
        }
        begin = i;
        end = i;
        isClass = isTop ? line.matches("(export )?class .*") : isClass;
      } else if (!line.isBlank() && !line.matches("\\s*(//|/?\\*).*")) {
        end = i;
      }
    }
    return found;
  }

  /** The rows of DEVELOPERS.md, rooms that share one taken apart, are those of the table. */
  @Test
  void documentShowsTheTable() throws IOException {
    String text = Files.readString(Path.of("DEVELOPERS.md"));
    String section = text.substring(text.indexOf("## The page's rooms"));
    Map<String, Set<String>> shown = new TreeMap<>();
    for (String line : section.substring(0, section.indexOf("\n## ", 4)).split("\n")) {
      Matcher row = ROW.matcher(line);
      if (row.matches()) {
        Set<String> rooms = row.group(2).equals("nothing") ? Set.of() : Set.of(row.group(2).split(", "));
        Stream.of(row.group(1).replace("`", "").split(", ")).forEach(name -> shown.put(name, rooms));
      }
    }
    Map<String, Set<String>> expected = new TreeMap<>();
    MAY_IMPORT.forEach((name, rooms) -> expected.put(name, Set.copyOf(rooms)));
    assertThat(shown).isEqualTo(expected);
  }
}
