package org.seamledger.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.seamledger.SharedModels;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.progress.Progress;

/** The index of real models against a count by regular expression: these models start each instance on a line of its own. */
@Tag("slow")
class SharedModelsIndexTest {

  private static final Pattern START = Pattern.compile("^#(\\d+)\\s*=\\s*(\\w+)", Pattern.MULTILINE);
  private static final Pattern REFERENCE = Pattern.compile("#(\\d+)");
  private static final Pattern TEXT = Pattern.compile("'[^']*'");

  @Test
  void countsOfEveryEntity() throws Exception {
    for (Path path : SharedModels.all()) {
      if (path.getFileName().toString().startsWith("d14")) {
        continue;
      }
      byte[] bytes = Files.readAllBytes(path);
      Map<String, Integer> expected = new TreeMap<>();
      int total = 0;
      for (Matcher m = START.matcher(new String(bytes, StandardCharsets.ISO_8859_1)); m.find(); total++) {
        expected.merge(m.group(2), 1, Integer::sum);
      }
      try (StepFile file = StepFile.open(Files.newByteChannel(path), path.toString(), Progress.NONE)) {
        assertThat(Exchange.count(file)).as(path.toString()).isEqualTo(total);
        assertThat(file.keywords()).containsExactlyElementsOf(expected.keySet());
        expected.forEach((keyword, n) -> assertThat(file.idsOf(keyword)).as(path + " " + keyword).hasSize(n).isSorted());
        assertThat(file.repeatedIds()).isEmpty();
        assertThat(file.size()).isEqualTo(bytes.length);
        assertThat(file.sha256()).isEqualTo(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes)));
        assertThat(file.header().schemas()).hasSize(1).first().asString().startsWith("IFC");
      }
    }
  }

  @Test
  void everyInstanceDecodesAndItsReferencesAreThoseInItsText() throws Exception {
    for (Path path : SharedModels.all()) {
      if (path.getFileName().toString().startsWith("d14")) {
        continue;
      }
      String text = Files.readString(path, StandardCharsets.ISO_8859_1);
      try (StepFile file = StepFile.open(Files.newByteChannel(path), path.toString(), Progress.NONE)) {
        Matcher m = START.matcher(text);
        boolean more = m.find();
        while (more) {
          long id = Long.parseLong(m.group(1));
          int from = m.end();
          more = m.find();
          String body = TEXT.matcher(text.substring(from, more ? m.start() : text.lastIndexOf("ENDSEC"))).replaceAll("");
          Set<Long> expected = new HashSet<>();
          REFERENCE.matcher(body).results().forEach(r -> expected.add(Long.parseLong(r.group(1))));
          Set<Long> found = new HashSet<>();
          collect(new Value.Aggregate(file.find(id).orElseThrow().parameters()), found);
          if (!found.equals(expected)) {
            assertThat(found).as(path + " #" + id).isEqualTo(expected);
          }
        }
        for (String keyword : file.keywords()) {
          Map<Long, Set<Long>> skimmed = new TreeMap<>();
          file.forEachReferences(keyword, (id, references) -> {
            Set<Long> targets = skimmed.computeIfAbsent(id, i -> new HashSet<>());
            for (int i = 0; i < references.size(); i++) {
              targets.add(references.target(i));
            }
          });
          Map<Long, Set<Long>> decoded = new TreeMap<>();
          file.forEach(keyword, instance -> {
            assertEquals(keyword, instance.keyword());
            assertEquals(keyword, file.keywordOf(instance.id()));
            collect(new Value.Aggregate(instance.parameters()), decoded.computeIfAbsent(instance.id(), i -> new HashSet<>()));
          });
          assertThat(skimmed).as(path + " " + keyword).isEqualTo(decoded);
        }
      }
    }
  }

  @Test
  void aCommentThatNeverEndsIsShownWhereItStarts() throws IOException {
    Path path = SharedModels.named("d14");
    assertThatThrownBy(() -> StepFile.open(Files.newByteChannel(path), "d14.ifc", Progress.NONE))
        .isInstanceOfSatisfying(UnreadableModelException.class, e -> {
          assertThat(e.getMessage()).isEqualTo("d14.ifc:15:51: expected */ at the end of this comment, found the end of the file");
        });
  }

  private static void collect(Value value, Set<Long> into) {
    if (value instanceof Value.Reference reference) {
      into.add(reference.id());
    } else if (value instanceof Value.Aggregate aggregate) {
      aggregate.items().forEach(item -> collect(item, into));
    } else if (value instanceof Value.Typed typed) {
      collect(typed.value(), into);
    }
  }
}
