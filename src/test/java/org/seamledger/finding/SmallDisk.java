package org.seamledger.finding;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assumptions;

/** A folder that is a disk of its own for one process: a file system in memory, so small that it gets full. */
public final class SmallDisk {

  private SmallDisk() {
  }

  /**
   * What a command line begins with whose process shall see one; skips the test where users may not mount.
   *
   * @param size as {@code mount -o size} takes it
   */
  public static List<String> at(Path folder, String size) throws IOException, InterruptedException {
    String mount = "mount -t tmpfs -o size=" + size + ",mode=0700 tmpfs \"$0\" && exec \"$@\"";
    List<String> command = List.of("unshare", "-rm", "sh", "-c", mount, folder.toString());
    List<String> attempt = new ArrayList<>(command);
    attempt.add("true");
    boolean allowed;
    try {
      allowed = new ProcessBuilder(attempt).start().waitFor() == 0;
    } catch (IOException e) {
      allowed = false;
    }
    Assumptions.assumeTrue(allowed, "this machine lets no user mount a file system of their own");
    return command;
  }
}
