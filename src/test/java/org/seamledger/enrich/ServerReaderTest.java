package org.seamledger.enrich;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bimserver.emf.IfcModelInterface;
import org.bimserver.emf.MetaDataManager;
import org.bimserver.emf.Schema;
import org.bimserver.ifc.step.deserializer.Ifc2x3tc1StepDeserializer;
import org.bimserver.ifc.step.deserializer.Ifc4StepDeserializer;
import org.bimserver.models.ifc2x3tc1.Ifc2x3tc1Package;
import org.bimserver.models.ifc4.Ifc4Package;
import org.bimserver.plugins.deserializers.DeserializeException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.progress.Progress;
import org.seamledger.run.ModelCopies;
import org.seamledger.source.ModelFile;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/** Copies of models with the answers in them, read by BIMserver's own readers, which go by the EXPRESS schemas (they have no IFC4X3). */
class ServerReaderTest {

  @TempDir
  private static Path schemas;

  private static MetaDataManager metaData;

  @TempDir
  private Path folder;

  /** One schema after the other: the library's parser puts other streams into {@link System} while it works. */
  @BeforeAll
  static void readSchemas() {
    PrintStream out = System.out;
    PrintStream err = System.err;
    try {
      System.setOut(new PrintStream(OutputStream.nullOutputStream()));
      System.setErr(new PrintStream(OutputStream.nullOutputStream()));
      metaData = new MetaDataManager(schemas);
      metaData.addEPackage(Ifc2x3tc1Package.eINSTANCE, Schema.IFC2X3TC1);
      metaData.addEPackage(Ifc4Package.eINSTANCE, Schema.IFC4);
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
  }

  /** The deserializers that hold a whole model are called deprecated, for the server streams; they go by the same schemas. */
  @SuppressWarnings("deprecation")
  private IfcModelInterface read(byte[] file, Schema schema) throws Exception {
    var reader = schema == Schema.IFC4 ? new Ifc4StepDeserializer(schema) : new Ifc2x3tc1StepDeserializer();
    reader.init(metaData.getPackageMetaData(schema.name()));
    return reader.read(Files.write(folder.resolve("read.ifc"), file).toFile());
  }

  private static Takeoff takeoff(Path model) {
    return Analysis.run(Inputs.ofFiles(List.of(model)), Progress.NONE);
  }

  private static byte[] copy(Takeoff takeoff, Path model) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ModelCopies.write(takeoff, 0, new ModelFile(model), out);
    return out.toByteArray();
  }

  private static int count(IfcModelInterface model, String entity) {
    return model.getAllWithSubTypes(model.getPackageMetaData().getEClass(entity)).size();
  }

  /** As many assemblies come out as junctions and nodes went in, beside all that the model had. */
  @ParameterizedTest
  @CsvSource({"brewhouse,IFC2X3TC1", "forge,IFC2X3TC1", "school,IFC4", "gatehouse,IFC4"})
  void readsWholeCopies(String sample, Schema schema) throws Exception {
    Path file = Path.of("ifc-samples", sample + ".ifc");
    Takeoff takeoff = takeoff(file);
    IfcModelInterface before = read(Files.readAllBytes(file), schema);
    IfcModelInterface after = read(copy(takeoff, file), schema);
    assertThat(count(after, "IfcElementAssembly") - count(before, "IfcElementAssembly"))
        .isEqualTo(takeoff.junctions().size() + takeoff.nodes().size()).isPositive();
    assertThat(count(after, "IfcElement")).isGreaterThan(count(before, "IfcElement"));
    assertThat(after.size()).isGreaterThan(before.size());
  }

  /** They do look: a copy with an attribute too many, or an enumeration's value that the schema doesn't have, is refused. */
  @Test
  void refusesWhatIsWrong() throws Exception {
    Path file = Path.of("ifc-samples", "gatehouse.ifc");
    String copy = new String(copy(takeoff(file), file), StandardCharsets.ISO_8859_1);
    String assembly = copy.lines().filter(l -> l.contains("IFCELEMENTASSEMBLY(")).findFirst().orElseThrow();
    for (String wrong : List.of(assembly.replace("IFCELEMENTASSEMBLY(", "IFCELEMENTASSEMBLY($,"),
        assembly.replaceAll("\\.\\w+\\.\\)", ".NOSUCHVALUE.)"))) {
      assertThat(wrong).isNotEqualTo(assembly);
      assertThatThrownBy(() -> read(copy.replace(assembly, wrong).getBytes(StandardCharsets.ISO_8859_1), Schema.IFC4))
          .isInstanceOf(DeserializeException.class);
    }
  }
}
