package org.seamledger.source;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.bimserver.interfaces.objects.SProject;

/** A server with two projects of two revisions each, in a list of servers as {@code office}. */
public final class ServedOffice implements AutoCloseable {

  private final FakeBimServer fake = new FakeBimServer();

  public ServedOffice() {
    SProject second = FakeBimServer.project("a/b@home", "ifc4");
    second.setOid(FakeBimServer.PROJECT + 1);
    fake.result("getAllProjects", List.of(second, FakeBimServer.project("Boat house", "ifc4")));
    fake.result("getAllRevisionsOfProject", List.of(FakeBimServer.revision(FakeBimServer.REVISION, 1, "first"),
        FakeBimServer.revision(FakeBimServer.REVISION + 65536, 2, "second")));
  }

  /** From now on the user has no right to see any project. */
  public void hideProjects() {
    fake.result("getAllProjects", List.of());
  }

  public String url() {
    return fake.access().url().toString();
  }

  /** Writes a list that only its owner can read. */
  public Path list(Path folder) throws IOException {
    Path file = Files.createTempFile(folder, "servers", ".properties",
        PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    return Files.writeString(file,
        "office.url=" + url() + "\noffice.user=" + FakeBimServer.USER + "\noffice.password=" + FakeBimServer.PASSWORD + "\n");
  }

  @Override
  public void close() {
    fake.close();
  }
}
