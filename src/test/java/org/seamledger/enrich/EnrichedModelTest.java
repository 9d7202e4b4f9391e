package org.seamledger.enrich;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.FarModel;
import org.seamledger.SharedModels;
import org.seamledger.detail.KindedJunction;
import org.seamledger.node.KindedNode;
import org.seamledger.progress.Progress;
import org.seamledger.run.ModelCopies;
import org.seamledger.source.ModelFile;
import org.seamledger.step.Instance;
import org.seamledger.step.StepFile;
import org.seamledger.step.Value;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/** A model's copy with the answers in it, read again by this program's reader and held to the standard's rules. */
class EnrichedModelTest {

  private static final Path SAMPLES = Path.of("ifc-samples");

  @TempDir
  Path folder;

  private Path copy(Takeoff takeoff, int model, Path from, String name) throws IOException {
    Path to = folder.resolve(name);
    try (var out = Files.newOutputStream(to)) {
      ModelCopies.write(takeoff, model, new ModelFile(from), out);
    }
    return to;
  }

  private static Takeoff takeoff(Path... models) {
    return Analysis.run(Inputs.ofFiles(List.of(models)), Progress.NONE);
  }

  private static StepFile open(Path file) throws IOException {
    return StepFile.open(FileChannel.open(file), file.toString(), Progress.NONE);
  }

  private static List<String> lines(Takeoff takeoff) {
    return takeoff.junctions().stream()
        .map(j -> j.junction().id() + " " + j.kind() + " " + j.junction().lengthM() + " " + j.junction().faces()).toList();
  }

  /** One of each schema, in millimetres, inches and metres; with level faces, chimneys, pipes and curves. */
  @ParameterizedTest
  @ValueSource(strings = {"school", "granary", "bathhouse", "brewhouse", "forge", "boathouse", "dovecote"})
  void keepsEveryByteAndEveryJunction(String sample) throws IOException {
    Path model = SAMPLES.resolve(sample + ".ifc");
    holds(model, takeoff(model));
  }

  /** One of each schema and unit: sets, representations and contexts that the copy adds are such as the body's tables allow. */
  @ParameterizedTest
  @ValueSource(strings = {"school", "granary", "bathhouse", "brewhouse"})
  void breaksNoRuleOfTheBodysTables(String sample) throws IOException {
    Path tables = SharedModels.folder().resolveSibling("standards").resolve("ifc-rules/tables");
    Path model = SAMPLES.resolve(sample + ".ifc");
    Takeoff takeoff = takeoff(model);
    try (StepFile original = open(model); StepFile enriched = open(copy(takeoff, 0, model, "copy.ifc"))) {
      Set<String> added = new TreeSet<>(BodyRules.violations(enriched, tables));
      added.removeAll(BodyRules.violations(original, tables));
      assertThat(added).isEmpty();
      assertThat(instances(enriched, "IFCSHAPEREPRESENTATION").size()).isGreaterThan(instances(original, "IFCSHAPEREPRESENTATION").size());
    }
  }

  @Tag("slow")
  @Test
  void keepsSharedModels() throws IOException {
    for (Path model : SharedModels.all()) {
      String name = model.getFileName().toString();
      if (!name.startsWith("d14") && !name.startsWith("d15") && !name.startsWith("d16")) {
        holds(model, takeoff(model));
      }
    }
  }

  private void holds(Path model, Takeoff takeoff) throws IOException {
    Path copy = copy(takeoff, 0, model, "copy.ifc");
    byte[] before = Files.readAllBytes(model);
    byte[] after = Files.readAllBytes(copy);
    try (StepFile original = open(model); StepFile enriched = open(copy)) {
      int end = (int) original.dataEnd();
      assertThat(Arrays.equals(before, 0, end, after, 0, end)).as("bytes before ours").isTrue();
      int tail = before.length - end;
      assertThat(Arrays.equals(before, end, before.length, after, after.length - tail, after.length)).as("bytes behind ours").isTrue();
      Set<String> added = new TreeSet<>(BodyRules.violations(enriched));
      added.removeAll(BodyRules.violations(original));
      assertThat(added).as("rules of the standard's body").isEmpty();
      assertThat(BodyRules.misfits(enriched)).isEqualTo(BodyRules.misfits(original));
      assertThat(enriched.repeatedIds()).isEqualTo(original.repeatedIds());
      assertThat(uniqueGlobalIds(enriched, original)).as("added anything").isEqualTo(!takeoff.coverage().isEmpty());
      noDanglingReference(enriched, original.largestId());
    }
    Takeoff again = takeoff(copy);
    assertThat(lines(again)).isEqualTo(lines(takeoff));
    Path twice = copy(again, 0, copy, "twice.ifc");
    assertThat(Files.mismatch(copy, twice)).as("written into its own copy").isEqualTo(-1);
  }

  private static boolean uniqueGlobalIds(StepFile enriched, StepFile original) {
    Set<String> ids = new HashSet<>();
    for (String keyword : enriched.keywords()) {
      enriched.forEach(keyword, i -> {
        if (i.id() > original.largestId() && i.parameter(0) instanceof Value.Text t && t.value().length() == 22) {
          assertThat(ids.add(t.value())).as(i.keyword() + " " + t.value()).isTrue();
        }
      });
    }
    return !ids.isEmpty();
  }

  private static void noDanglingReference(StepFile enriched, long last) {
    for (String keyword : enriched.keywords()) {
      enriched.forEachReferences(keyword, (id, r) -> {
        for (int i = 0; id > last && i < r.size(); i++) {
          assertThat(enriched.keywordOf(r.target(i))).as("#" + id + " refers to #" + r.target(i)).isNotEmpty();
        }
      });
    }
  }

  private static List<Instance> instances(StepFile file, String keyword) {
    List<Instance> found = new java.util.ArrayList<>();
    file.forEach(keyword, found::add);
    return found;
  }

  /** Of each junction's assembly, by its tag: the length that its quantity set states, in the file's own unit. */
  private static Map<String, Double> lengths(StepFile file) {
    Map<Long, String> tags = new TreeMap<>();
    instances(file, "IFCELEMENTASSEMBLY").forEach(a -> tags.put(a.id(), ((Value.Text) a.parameter(7)).value().substring(11)));
    Map<String, Double> lengths = new TreeMap<>();
    for (Instance rel : instances(file, "IFCRELDEFINESBYPROPERTIES")) {
      long object = ((Value.Reference) ((Value.Aggregate) rel.parameter(4)).items().get(0)).id();
      Instance set = rel.parameter(5) instanceof Value.Reference r ? file.find(r.id()).orElseThrow() : rel;
      if (tags.containsKey(object) && set.keyword().equals("IFCELEMENTQUANTITY")) {
        Instance length = file.find(((Value.Reference) ((Value.Aggregate) set.parameter(5)).items().get(0)).id()).orElseThrow();
        lengths.put(tags.get(object), ((Value.Real) length.parameter(3)).value());
      }
    }
    return lengths;
  }

  /** Inches, millimetres and metres: 0.0254 m and 0.001 m by definition (NIST SP 811). */
  @ParameterizedTest
  @CsvSource({"school", "granary", "bathhouse", "brewhouse", "forge", "boathouse", "dovecote", "stable", "lodge"})
  void statesLengthsInTheModelsUnit(String sample) throws IOException {
    Path model = SAMPLES.resolve(sample + ".ifc");
    Takeoff takeoff = takeoff(model);
    Map<String, Double> metres = Map.of("metre", 1.0, "millimetre", 0.001, "centimetre", 0.01, "foot", 0.3048, "inch", 0.0254);
    double unit = metres.get(takeoff.models().get(0).lengthUnit());
    try (StepFile enriched = open(copy(takeoff, 0, model, "copy.ifc"))) {
      Map<String, Double> stated = lengths(enriched);
      for (KindedJunction j : takeoff.junctions()) {
        assertThat(stated.get(j.junction().id()) * unit).isCloseTo(j.junction().lengthM(), within(1e-6));
      }
      double inUnits = instances(enriched, "IFCEXTRUDEDAREASOLID").stream().filter(s -> s.parameter(3) instanceof Value.Real)
          .mapToDouble(s -> ((Value.Real) s.parameter(3)).value()).max().orElseThrow();
      assertThat(inUnits * unit).as("longest bar, metres").isBetween(0.5, 80.0);
    }
  }

  /** Bars lie where the line lies: at the sample's own place, in its own unit. */
  @Test
  void barsLieOnTheirLines() throws IOException {
    Path model = SharedModels.named("d11");
    Takeoff takeoff = takeoff(model);
    try (StepFile enriched = open(copy(takeoff, 0, model, "copy.ifc"))) {
      for (Instance assembly : instances(enriched, "IFCELEMENTASSEMBLY")) {
        String id = ((Value.Text) assembly.parameter(7)).value().substring(11);
        Instance placement = follow(enriched, assembly, 5);
        Instance at = follow(enriched, follow(enriched, placement, 1), 0);
        double[] feet = ((Value.Aggregate) at.parameter(0)).items().stream().mapToDouble(v -> ((Value.Real) v).value()).toArray();
        var first = takeoff.world(takeoff.junctions().stream().filter(j -> j.junction().id().equals(id)).findFirst()
            .map(j -> j.junction().path().get(0))
            .orElseGet(() -> takeoff.nodes().stream().filter(n -> n.id().equals(id)).findFirst().orElseThrow().node().at()));
        assertThat(new double[] {feet[0] * 0.3048, feet[1] * 0.3048, feet[2] * 0.3048})
            .containsExactly(new double[] {first.x(), first.y(), first.z()}, within(1e-6));
      }
    }
  }

  /** A thousand kilometres east and north of the model's origin, in millimetres, metres and inches: bars lie on their lines within 1 mm. */
  @ParameterizedTest
  @CsvSource({"granary,0.001", "bathhouse,1", "boathouse,0.0254"})
  void barsLieOnTheirLinesFarFromTheOrigin(String sample, double unit) throws IOException {
    Path model = SAMPLES.resolve(sample + ".ifc");
    Path far = FarModel.of(model, unit, folder.resolve("far.ifc"));
    Takeoff near = takeoff(model);
    Takeoff takeoff = takeoff(far);
    assertThat(takeoff.junctions()).hasSameSizeAs(near.junctions());
    try (StepFile plain = open(copy(near, 0, model, "near-copy.ifc")); StepFile enriched = open(copy(takeoff, 0, far, "far-copy.ifc"))) {
      List<double[]> before = feet(plain);
      List<double[]> after = feet(enriched);
      assertThat(after).hasSameSizeAs(before).isNotEmpty();
      for (double[] from : before) {
        double[] moved = {from[0] * unit + FarModel.METRES, from[1] * unit + FarModel.METRES, from[2] * unit};
        assertThat(after).anySatisfy(to -> assertThat(new double[] {to[0] * unit, to[1] * unit, to[2] * unit})
            .containsExactly(moved, within(1e-3)));
      }
      assertThat(lengths(enriched).values().stream().mapToDouble(v -> v).sum())
          .isCloseTo(lengths(plain).values().stream().mapToDouble(v -> v).sum(), within(1e-3 / unit));
    }
  }

  /** Where the assemblies stand, in the file's own unit. */
  private static List<double[]> feet(StepFile file) {
    return instances(file, "IFCELEMENTASSEMBLY").stream().map(a -> follow(file, follow(file, follow(file, a, 5), 1), 0))
        .map(at -> ((Value.Aggregate) at.parameter(0)).items().stream().mapToDouble(v -> ((Value.Real) v).value()).toArray()).toList();
  }

  /** Nothing to add: the copy is the model. */
  @Test
  void aModelWithoutARoofStaysAsItIs() throws IOException {
    Path model = Files.writeString(folder.resolve("bare.ifc"), """
        ISO-10303-21;HEADER;FILE_DESCRIPTION((''),'2;1');FILE_NAME('bare','','',(''),'','','');FILE_SCHEMA(('IFC4'));ENDSEC;DATA;
        #1=IFCPROJECT('0hGinPNwiSDrAurecV39RR',$,'Bare',$,$,$,$,$,$);
        ENDSEC;END-ISO-10303-21;
        """);
    assertThat(Files.mismatch(model, copy(takeoff(model), 0, model, "copy.ifc"))).isEqualTo(-1);
  }

  /** Markup, quotes, control and right-to-left characters in the names of roofs, storeys and the building: the copy can be read. */
  @Test
  void namesOfEveryKindBreakNothing() throws IOException {
    String name = "<b>''A'' & \\\\S\\\\'' ]]> \\X\\07\\X2\\202E05D205D2202C0020FFFF\\X0\\ \\X4\\0001F3E0\\X0\\";
    Path model = folder.resolve("names.ifc");
    Files.writeString(model, Files.readString(SAMPLES.resolve("granary.ifc"), StandardCharsets.ISO_8859_1)
        .replace("'south'", "'" + name + "'").replace("'Roof'", "'" + name + "'").replace("'granary'", "'" + name + "'"),
        StandardCharsets.ISO_8859_1);
    Takeoff takeoff = takeoff(model);
    assertThat(takeoff.elements().values().stream().map(e -> e.name())).anyMatch(n -> n.startsWith("<b>'A' & "));
    holds(model, takeoff);
    byte[] copy = Files.readAllBytes(folder.resolve("copy.ifc"));
    for (int i = 0; i < copy.length; i++) {
      assertThat(copy[i] == '\n' || copy[i] == '\r' || copy[i] >= 0x20 && copy[i] < 0x7F).as("byte " + i).isTrue();
    }
  }

  /** What is done at nodes and with what: as many pieces, and fasteners of each type, as the result counts. */
  @ParameterizedTest
  @ValueSource(strings = {"school", "granary", "brewhouse"})
  void nodesAndFastenersHaveTheirQuantities(String sample) throws IOException {
    Path model = SAMPLES.resolve(sample + ".ifc");
    Takeoff takeoff = takeoff(model);
    Map<String, Double> counted = new TreeMap<>();
    takeoff.quantities().byJunction().values().stream().flatMap(q -> q.fasteners().stream())
        .forEach(f -> counted.merge(f.type().label(), (double) f.count(), Double::sum));
    assertThat(takeoff.nodes()).isNotEmpty();
    try (StepFile enriched = open(copy(takeoff, 0, model, "copy.ifc"))) {
      Map<Long, String> typed = new TreeMap<>();
      instances(enriched, "IFCMECHANICALFASTENER").forEach(f -> typed.put(f.id(), ((Value.Text) f.parameter(4)).value()));
      Map<String, Double> written = new TreeMap<>();
      counts(enriched, "Count").forEach((id, n) -> written.merge(typed.get(id), n, Double::sum));
      assertThat(written).isEqualTo(counted);
      double pieces = takeoff.nodes().stream().flatMap(n -> takeoff.quantities().byJunction().get(n.id()).metal().stream())
          .mapToInt(m -> m.pieces()).sum();
      Set<Long> ofNodes = new HashSet<>();
      Set<String> nodes = takeoff.nodes().stream().map(KindedNode::id).collect(java.util.stream.Collectors.toSet());
      instances(enriched, "IFCDISCRETEACCESSORY").stream()
          .filter(a -> nodes.contains(((Value.Text) a.parameter(7)).value().substring(11).split("/")[0])).forEach(a -> ofNodes.add(a.id()));
      assertThat(counts(enriched, "Pieces").entrySet().stream().filter(e -> ofNodes.contains(e.getKey())).mapToDouble(Map.Entry::getValue)
          .sum()).isEqualTo(pieces);
      assertThat(instances(enriched, "IFCMECHANICALFASTENER").stream().map(f -> f.parameter(9)).filter(Value.Real.class::isInstance)
          .mapToDouble(v -> ((Value.Real) v).value()).min().orElseThrow()).as("nominal length").isPositive();
    }
  }

  /** Of each object that has such a quantity, the number. */
  private static Map<Long, Double> counts(StepFile file, String name) {
    Map<Long, Double> counts = new TreeMap<>();
    for (Instance rel : instances(file, "IFCRELDEFINESBYPROPERTIES")) {
      Instance set = rel.parameter(5) instanceof Value.Reference r ? file.find(r.id()).orElseThrow() : rel;
      if (set.keyword().equals("IFCELEMENTQUANTITY")) {
        long object = ((Value.Reference) ((Value.Aggregate) rel.parameter(4)).items().get(0)).id();
        for (Value item : ((Value.Aggregate) set.parameter(5)).items()) {
          Instance quantity = file.find(((Value.Reference) item).id()).orElseThrow();
          if (quantity.parameter(0).equals(new Value.Text(name))) {
            counts.put(object, ((Value.Real) quantity.parameter(3)).value());
          }
        }
      }
    }
    return counts;
  }

  private static Instance follow(StepFile file, Instance from, int attribute) {
    return file.find(((Value.Reference) from.parameter(attribute)).id()).orElseThrow();
  }

  /** Three models of three schemas in three units are one building: each gets its own junctions, all together every one once. */
  @Test
  void sharesTheAnswersAmongSeveralModels() throws IOException {
    List<Path> models;
    try (Stream<Path> files = Files.list(SAMPLES.resolve("infirmary"))) {
      models = files.filter(f -> f.toString().endsWith(".ifc")).sorted().toList();
    }
    Takeoff takeoff = takeoff(models.toArray(Path[]::new));
    List<String> written = new java.util.ArrayList<>();
    for (int i = 0; i < models.size(); i++) {
      try (StepFile enriched = open(copy(takeoff, i, models.get(i), i + ".ifc"))) {
        instances(enriched, "IFCELEMENTASSEMBLY").forEach(a -> written.add(((Value.Text) a.parameter(7)).value().substring(11)));
      }
    }
    assertThat(written).containsExactlyInAnyOrderElementsOf(
        Stream.concat(takeoff.junctions().stream().map(j -> j.junction().id()), takeoff.nodes().stream().map(KindedNode::id)).toList());
  }

  /** A model that is exported again, with every id another: lines that stayed keep their GlobalIds. */
  @Test
  void globalIdsStayFromRevisionToRevision() throws IOException {
    Path model = SAMPLES.resolve("granary.ifc");
    Path later = folder.resolve("later.ifc");
    String text = Files.readString(model, StandardCharsets.ISO_8859_1);
    Files.writeString(later,
        java.util.regex.Pattern.compile("#(\\d+)").matcher(text).replaceAll(m -> "#" + (Long.parseLong(m.group(1)) + 5000)),
        StandardCharsets.ISO_8859_1);
    try (StepFile first = open(copy(takeoff(model), 0, model, "first.ifc"));
        StepFile second = open(copy(takeoff(later), 0, later, "2.ifc"))) {
      List<Value> before = instances(first, "IFCELEMENTASSEMBLY").stream().map(i -> i.parameter(0)).toList();
      assertThat(before).isNotEmpty().isEqualTo(instances(second, "IFCELEMENTASSEMBLY").stream().map(i -> i.parameter(0)).toList());
    }
  }

  @Test
  void packedModelsStayPacked() throws IOException {
    Path model = SAMPLES.resolve("granary.ifc");
    Takeoff takeoff = takeoff(model);
    byte[] plain = Files.readAllBytes(copy(takeoff, 0, model, "plain.ifc"));
    Path gzip = folder.resolve("granary.ifc.gz");
    try (var out = new java.util.zip.GZIPOutputStream(Files.newOutputStream(gzip))) {
      Files.copy(model, out);
    }
    try (var in = new java.util.zip.GZIPInputStream(Files.newInputStream(copy(takeoff, 0, gzip, "copy.ifc.gz")))) {
      assertThat(in.readAllBytes()).isEqualTo(plain);
    }
    Path zip = folder.resolve("granary.ifczip");
    try (var out = new java.util.zip.ZipOutputStream(Files.newOutputStream(zip))) {
      out.putNextEntry(new java.util.zip.ZipEntry("building/granary.ifc"));
      Files.copy(model, out);
    }
    try (var in = new java.util.zip.ZipFile(copy(takeoff, 0, zip, "copy.ifczip").toFile())) {
      assertThat(in.getInputStream(in.getEntry("building/granary.ifc")).readAllBytes()).isEqualTo(plain);
    }
  }

  @Test
  void refusesAModelThatChangedSince() throws IOException {
    Path model = folder.resolve("granary.ifc");
    Files.copy(SAMPLES.resolve("granary.ifc"), model);
    Takeoff takeoff = takeoff(model);
    Files.writeString(model, Files.readString(model, StandardCharsets.ISO_8859_1) + "\n", StandardCharsets.ISO_8859_1);
    org.assertj.core.api.Assertions.assertThatThrownBy(
        () -> ModelCopies.write(takeoff, 0, new ModelFile(model), new ByteArrayOutputStream())).hasMessageContaining("changed since");
  }
}
