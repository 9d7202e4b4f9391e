package org.seamledger.ids;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import javax.xml.transform.stream.StreamSource;
import org.junit.jupiter.api.Test;
import org.seamledger.SharedModels;
import org.seamledger.ids.check.IdsCheck;
import org.seamledger.ids.check.SpecificationResult;
import org.seamledger.progress.Headway;
import org.seamledger.source.ModelFile;
import org.xml.sax.SAXException;

/** The specification for roof models that comes with the program. */
class RoofModelIdsTest {

  private static final Path FILE = Path.of("shapes/ids/roof-model.ids");

  private static IdsDocument document() throws IOException {
    try (InputStream in = Files.newInputStream(FILE)) {
      return IdsReader.read(in, FILE.toString());
    }
  }

  @Test
  void isValidByTheStandardsSchema() throws IOException, SAXException {
    StandardSchema.read(SharedStandards.file("ids.xsd")).newValidator().validate(new StreamSource(FILE.toFile()));
  }

  @Test
  void isValidAndEachPointHasItsReason() throws IOException {
    IdsDocument document = document();
    assertThat(document.problems()).isEmpty();
    assertThat(document.specifications()).hasSizeGreaterThan(10).allSatisfy(s -> {
      assertThat(s.description()).isNotBlank();
      assertThat(s.instructions()).isNotBlank();
      assertThat(s.releases()).hasSize(3);
    });
    assertThat(document.specifications().stream().map(Specification::identifier)).doesNotHaveDuplicates();
  }

  /** What real models of other people's tools lack; looked up in the files themselves, see SOURCES.md beside them for some of it. */
  @Test
  void tellsWhatRealModelsLack() throws IOException {
    Map<String, Set<String>> lacking = new TreeMap<>();
    for (Path model : SharedModels.all()) {
      String name = model.getFileName().toString().replaceFirst("_.*", "");
      if (!name.equals("d14")) {
        Set<String> failed = new TreeSet<>();
        IdsCheck.run(List.of(new ModelFile(model)), List.of(document()), Headway.UNHEARD).get(0).specifications().stream()
            .filter(s -> !s.passes()).map(SpecificationResult::specification).forEach(s -> failed.add(s.identifier()));
        lacking.put(name, failed);
      }
    }
    System.out.println("roof models lack: " + lacking);
    // d01: roof slabs without an IfcRoof. d07: roofs by name only, invalid GlobalIds, storeys without elevation, a site without a place.
    assertThat(lacking.get("d01")).containsExactly("roof-01", "roof-03");
    assertThat(lacking.get("d07")).containsExactly("roof-01", "roof-02", "roof-05", "roof-14", "roof-16");
  }
}
