package org.seamledger.step;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.progress.Progress;

/**
 * Whatever the bytes: a result or the one exception. The normal test run replays the files in
 * {@code src/test/resources/org/seamledger/step/StepFileFuzzTestInputs}. It looks for new ones by
 * {@code JAZZER_FUZZ=1 mvn test -Djazzer.hooks=true -Dtest=StepFileFuzzTest#anyDataSectionGivesAResultOrTheOneException}.
 */
class StepFileFuzzTest {

  @FuzzTest(maxDuration = "4m")
  void anyBytesGiveAResultOrTheOneException(byte[] bytes) throws IOException {
    read(bytes, Feed.BLOCK);
    read(bytes, 7);
  }

  @FuzzTest(maxDuration = "4m")
  void anyDataSectionGivesAResultOrTheOneException(byte[] bytes) throws IOException {
    String text = Exchange.of(new String(bytes, StandardCharsets.ISO_8859_1));
    read(text.getBytes(StandardCharsets.ISO_8859_1), Feed.BLOCK);
  }

  private static void read(byte[] bytes, int block) throws IOException {
    try (StepFile file = StepFile.open(new MemoryChannel(bytes, block), "any.ifc", block, Progress.NONE)) {
      for (String keyword : file.keywords()) {
        readAll(file, keyword);
      }
    } catch (UnreadableModelException e) {
      check(e);
    }
  }

  private static void readAll(StepFile file, String keyword) {
    for (long id : file.idsOf(keyword)) {
      try {
        Instance instance = file.find(id).orElseThrow();
        if (instance.id() != id || !instance.keyword().equals(keyword)) {
          throw new AssertionError("#" + id + " " + keyword + " became " + instance);
        }
      } catch (UnreadableModelException e) {
        check(e);
      }
    }
    try {
      file.forEachReferences(keyword, (id, references) -> {
        for (int i = 0; i < references.size(); i++) {
          file.keywordOf(references.target(i));
        }
      });
    } catch (UnreadableModelException e) {
      check(e);
    }
  }

  private static void check(UnreadableModelException e) {
    if (!e.getMessage().matches("any\\.ifc:[1-9]\\d*:[1-9]\\d*: [ -~]+")) {
      throw new AssertionError("no place, or no plain line: " + e.getMessage(), e);
    }
  }
}
