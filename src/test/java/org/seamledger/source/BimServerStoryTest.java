package org.seamledger.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole story against a real BIMserver. */
class BimServerStoryTest {

  @TempDir
  private Path folder;

  @Test
  void whatIsCheckedInIsListedDownloadedAndAnswered() throws Exception {
    RealBimServer real = RealBimServer.shared();
    KnownServers known = KnownServers.read(real.list(folder, "site"));
    long project = real.addProject("Boat house", "ifc4");
    real.checkIn(project, Path.of("ifc-samples/gatehouse.ifc"), "first");
    try (ModelServer server = known.connect("site")) {
      assertThat(server.projects()).contains(new ServedProject(project, "Boat house", "IFC4"));
      List<ServedRevision> revisions = server.revisions(project);
      assertThat(revisions).extracting(ServedRevision::number).containsExactly(1);
      try (OpenModel model = server.model(revisions.get(0)).open()) {
        assertThat(model.name()).isEqualTo("Boat house, revision 1");
        assertThat(model.bytes()).isGreaterThan(1000);
      }
      byte[] answer = "{}".getBytes(StandardCharsets.UTF_8);
      server.attach(revisions.get(0), new Attachment("seamledger ledger", "application/json", answer));
      assertThat(server.attachments(revisions.get(0))).singleElement().satisfies(a -> assertThat(a.content()).isEqualTo(answer));
    }
  }
}
