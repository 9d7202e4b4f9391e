package org.seamledger;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.FileDescriptor;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The structure of the program as a table: which package may know which, and which library lives where. DEVELOPERS.md shows it. */
@Tag("slow")
class ArchitectureTest {

  private static final String ROOT = "org.seamledger";
  private static JavaClasses program;

  @BeforeAll
  static void readClasses() {
    program = new ClassFileImporter().withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages(ROOT);
  }

  /** What a takeoff is made of: who may see a takeoff may see these. */
  private static final List<String> RESULTS =
      List.of("takeoff", "sequence", "weather", "node", "detail", "quantity", "drainage", "junction", "roof", "element", "geometry",
          "measure",
          "finding");

  /** From the bottom up: a package and the packages that it may import. */
  private static final Map<String, List<String>> MAY_IMPORT = mayImport();

  private static Map<String, List<String>> mayImport() {
    Map<String, List<String>> table = new LinkedHashMap<>();
    table.put("measure", List.of());
    table.put("finding", List.of());
    table.put("progress", List.of());
    table.put("geometry", List.of("measure"));
    table.put("journal", List.of("finding"));
    table.put("photo", List.of());
    table.put("source", List.of("finding"));
    table.put("step", List.of("progress", "finding"));
    table.put("bcf", List.of("finding"));
    table.put("schema", List.of());
    table.put("ids", List.of("schema", "step", "source", "progress", "finding"));
    table.put("element", List.of("geometry", "measure", "finding"));
    table.put("site", List.of("geometry", "measure", "finding"));
    table.put("ifc.entity", List.of("site", "step", "geometry", "measure", "finding"));
    table.put("ifc.placement", List.of("ifc.entity", "site", "step", "geometry", "finding"));
    table.put("ifc.curve", List.of("ifc.placement", "ifc.entity", "step", "geometry"));
    table.put("ifc.solid", List.of("ifc.curve", "ifc.placement", "ifc.entity", "step", "geometry"));
    table.put("ifc.product",
        List.of("ifc.solid", "ifc.placement", "ifc.entity", "site", "step", "element", "geometry", "progress", "finding"));
    table.put("ifc",
        List.of("ifc.product", "ifc.solid", "ifc.curve", "ifc.placement", "ifc.entity", "site", "step", "element", "geometry", "progress",
            "finding"));
    table.put("roof", List.of("element", "geometry", "measure", "progress", "finding"));
    table.put("junction", List.of("roof", "element", "geometry", "measure", "progress", "finding"));
    table.put("drainage", List.of("junction", "roof", "geometry", "finding"));
    table.put("rdf", List.of("junction", "roof", "element", "geometry", "measure"));
    table.put("shacl", List.of("rdf", "finding"));
    table.put("detail", List.of("shacl", "rdf", "junction", "roof", "measure", "progress", "finding"));
    table.put("node", List.of("detail", "shacl", "junction", "roof", "geometry", "progress"));
    table.put("quantity", List.of("node", "drainage", "detail", "junction", "roof", "geometry", "measure", "progress", "finding"));
    table.put("weather", List.of("quantity", "detail", "measure"));
    table.put("sequence", List.of("weather", "quantity", "node", "detail", "shacl", "junction", "roof", "geometry", "measure", "finding"));
    table.put("takeoff",
        List.of("sequence", "quantity", "node", "drainage", "detail", "shacl", "rdf", "junction", "roof", "ifc", "ifc.entity", "site",
            "element",
            "step", "source",
            "geometry",
            "progress", "finding", "measure"));
    table.put("order.stock", List.of("quantity"));
    table.put("order", with("order.stock", RESULTS));
    table.put("enrich", with("schema", with("step", with("ifc.entity", RESULTS))));
    table.put("ledger", with("journal", RESULTS));
    table.put("export.wording", List.of("takeoff", "quantity", "detail", "drainage", "junction", "element", "measure", "finding"));
    table.put("export.json", with("order", RESULTS));
    table.put("export.report", with("order", with("export.wording", RESULTS)));
    table.put("export.sheet", List.of("export.wording", "takeoff", "roof", "element", "geometry", "measure"));
    table.put("export.plan", with("export.sheet", with("export.wording", RESULTS)));
    table.put("export.node", with("export.sheet", with("export.wording", RESULTS)));
    table.put("export.section", with("export.sheet", with("export.wording", RESULTS)));
    table.put("graph", with("rdf", RESULTS));
    table.put("export.view", RESULTS);
    table.put("export.bcf", with("export.view", with("export.wording", with("bcf", RESULTS))));
    table.put("export.workbook", with("export.sheet", with("export.report", with("export.wording", with("order", RESULTS)))));
    table.put("export.crew", with("export.sheet", with("export.report", with("export.json", with("export.wording", RESULTS)))));
    table.put("export.submittal", with("export.crew", with("export.plan", with("export.section", with("export.node", with("export.sheet",
        with("export.report", with("export.wording", with("order", with("ledger", with("journal", with("photo", RESULTS))))))))))));
    table.put("export",
        Stream
            .of(List.of("export.node", "export.section", "export.plan", "export.sheet", "export.report", "export.json", "export.wording",
                "ids",
                "order", "ledger", "journal"),
                RESULTS)
            .flatMap(List::stream).toList());
    List<String> stored =
        with("progress", with("source", with("step", with("enrich",
            with("export", with("export.sheet", with("order", with("ledger", RESULTS))))))));
    table.put("run",
        with("export.crew", with("graph", with("export.workbook", with("export.submittal", with("export.bcf", with("bcf", stored)))))));
    table.put("watch", with("run", stored));
    table.put("portfolio", with("run", with("export.plan", with("export.wording", stored))));
    List<String> watched = with("watch", with("run", stored));
    table.put("queue", watched);
    table.put("http.setting", List.of("watch", "run", "ledger"));
    table.put("http.answer", List.of("ledger", "finding"));
    table.put("http.job", with("queue", with("http.answer", with("http.setting", watched))));
    List<String> worked = with("http.job", with("http.answer", with("http.setting", watched)));
    table.put("http.api",
        with("journal", with("photo", with("graph", with("bcf", with("export.crew", with("export.submittal", worked)))))));
    table.put("http",
        List.of("http.api", "http.job", "http.answer", "http.setting", "watch", "run", "ledger", "finding"));
    List<String> served = with("portfolio", with("queue", with("http", with("http.setting", watched))));
    table.put("cli",
        with("journal",
            with("graph", with("export.crew",
                with("export.submittal", with("export.workbook", with("bcf", with("export.bcf", with("ids", served)))))))));
    table.put("cluster", with("cli", with("portfolio", with("run", stored))));
    return table;
  }

  private static List<String> with(String one, List<String> others) {
    return Stream.concat(Stream.of(one), others.stream()).toList();
  }

  /** A library's packages and the only packages that may know it. */
  private static final Map<String, Set<String>> ROOM = Map.ofEntries(
      Map.entry("org.apache.jena..", Set.of("rdf", "shacl", "graph")),
      Map.entry("org.locationtech.jts..", Set.of("geometry")),
      Map.entry("java.sql..", Set.of("ledger")),
      Map.entry("javax.sql..", Set.of("ledger")),
      Map.entry("org.sqlite..", Set.of("ledger")),
      Map.entry("org.postgresql..", Set.of("ledger")),
      Map.entry("com.github.kagkarlsson..", Set.of("queue")),
      Map.entry("org.dhatim..", Set.of("export.workbook")),
      Map.entry("org.apache.fop..", Set.of("export.submittal")),
      Map.entry("org.apache.xmlgraphics..", Set.of("export.submittal")),
      Map.entry("org.apache.fontbox..", Set.of("export.submittal")),
      Map.entry("org.apache.pdfbox..", Set.of("export.submittal")),
      Map.entry("io.javalin..", Set.of("http", "http.api", "http.answer")),
      Map.entry("org.eclipse.jetty..", Set.of("http", "http.api")),
      Map.entry("jakarta.servlet..", Set.of("http", "http.api", "http.answer")),
      Map.entry("org.bimserver..", Set.of("source")),
      Map.entry("com.google.zxing..", Set.of("export.sheet")),
      Map.entry("org.apache.commons.compress..", Set.of("source")),
      Map.entry("org.apache.spark..", Set.of("cluster")),
      Map.entry("org.apache.parquet..", Set.of("cluster")),
      Map.entry("picocli..", Set.of("cli")),
      Map.entry("ch.qos.logback..", Set.of("cli")));

  static Set<String> packages() {
    return MAY_IMPORT.keySet();
  }

  static boolean mayImport(String name, String imported) {
    return MAY_IMPORT.get(name).contains(imported);
  }

  static Set<String> libraries() {
    return ROOM.keySet();
  }

  @ParameterizedTest
  @MethodSource("packages")
  void importsOnlyWhatTheTableSays(String name) {
    Set<String> others = new TreeSet<>(MAY_IMPORT.keySet());
    others.remove(name);
    others.removeAll(MAY_IMPORT.get(name));
    noClasses().that().resideInAPackage(in(name)).should().dependOnClassesThat().resideInAnyPackage(in(others))
        .because("nothing flows back up").allowEmptyShould(true).check(program);
  }

  @Test
  void tableHasEveryPackage() {
    Set<String> found = new TreeSet<>();
    program.stream().map(JavaClass::getPackageName).filter(name -> !name.equals(ROOT)).map(name -> name.substring(ROOT.length() + 1))
        .forEach(name -> found.add(MAY_IMPORT.containsKey(name) ? name : name.split("\\.")[0]));
    assertThat(MAY_IMPORT.keySet()).containsAll(found);
    assertThat(found).hasSizeGreaterThan(10);
  }

  @Test
  void tableItselfHasNoCycle() {
    List<String> order = List.copyOf(MAY_IMPORT.keySet());
    MAY_IMPORT.forEach((name, imports) -> assertThat(order.subList(0, order.indexOf(name))).as(name).containsAll(imports));
  }

  @Test
  void packagesAreFreeOfCycles() {
    slices().matching(ROOT + ".(**)").should().beFreeOfCycles().check(program);
  }

  @ParameterizedTest
  @MethodSource("libraries")
  void libraryStaysInItsRoom(String library) {
    noClasses().that(not(resideInAnyPackage(in(ROOM.get(library))))).should().dependOnClassesThat(resideInAPackage(library))
        .because("one room knows each library").check(program);
  }

  @Test
  void onlyTheCommandsKnowTheProcessesStreams() {
    noClasses().that(not(resideInAPackage(in("cli")))).should().accessField(System.class, "out").orShould()
        .accessField(System.class, "err").orShould().accessField(FileDescriptor.class, "out").orShould()
        .accessField(FileDescriptor.class, "err").orShould().callMethod(Throwable.class, "printStackTrace")
        .because("standard output belongs to results").check(program);
  }

  @Test
  void onlyTheProcessEndsItself() {
    noClasses().that().doNotHaveFullyQualifiedName(ROOT + ".cli.Main").should().callMethod(System.class, "exit", int.class).check(program);
  }

  @Test
  void noPackageIsNamedForNothing() {
    Set<String> empty = Set.of("util", "utils", "common", "core", "helper", "helpers", "model", "service", "impl", "misc", "tools");
    assertThat(program.stream().map(JavaClass::getPackageName).flatMap(name -> Arrays.stream(name.split("\\."))))
        .doesNotContainAnyElementsOf(empty);
  }

  /** A package with those below it, or by itself where rooms inside it have rows of their own. */
  private static String in(String name) {
    boolean hasRooms = MAY_IMPORT.keySet().stream().anyMatch(other -> other.startsWith(name + "."));
    return ROOT + "." + name + (hasRooms ? "" : "..");
  }

  private static String[] in(Set<String> names) {
    return names.stream().map(ArchitectureTest::in).toArray(String[]::new);
  }
}
