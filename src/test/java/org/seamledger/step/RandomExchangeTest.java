package org.seamledger.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.seamledger.progress.Progress;

/** Random instances written in random ways are read back as they were meant. */
@Tag("slow")
class RandomExchangeTest {

  private static final int ROUNDS = Integer.getInteger("seamledger.rounds", 60);

  @Test
  void readBackAsWritten() {
    long seed = Long.getLong("seamledger.seed", System.nanoTime());
    System.out.println("RandomExchangeTest: -Dseamledger.seed=" + seed);
    for (int round = 0; round < ROUNDS; round++) {
      Random random = new Random(seed + round);
      RandomExchange written = new RandomExchange(random, random.nextInt(1, 400));
      check("seed " + seed + " round " + round, written, 1 + random.nextInt(random.nextBoolean() ? 64 : 5000));
    }
  }

  /** @param block bytes to read at once: small ones put every kind of text across the border of two reads */
  private static void check(String context, RandomExchange written, int block) {
    try (StepFile file = StepFile.open(new MemoryChannel(written.bytes(), block), "random.ifc", block, Progress.NONE)) {
      Map<String, Set<Long>> byKeyword = new HashMap<>();
      assertEquals(written.instances.size(), Exchange.count(file), context);
      written.instances.forEach((id, instance) -> {
        assertEquals(instance, file.find(id).orElse(null), context);
        assertEquals(instance.keyword(), file.keywordOf(id), context);
        byKeyword.computeIfAbsent(instance.keyword(), k -> new HashSet<>()).add(id);
      });
      assertEquals(byKeyword.keySet(), file.keywords(), context);
      byKeyword.forEach((keyword, ids) -> {
        assertThat(file.idsOf(keyword)).as(context).isSorted().containsExactlyInAnyOrder(ids.stream().mapToLong(i -> i).toArray());
        file.forEachReferences(keyword, (id, references) -> checkReferences(context, written.instances.get(id), references));
      });
    } catch (IOException | RuntimeException e) {
      throw new AssertionError(context, e);
    }
  }

  private static void checkReferences(String context, Instance instance, References references) {
    int[] at = {0};
    for (int i = 0; i < instance.parameters().size(); i++) {
      checkReferences(context, instance.parameter(i), i, references, at);
    }
    assertEquals(at[0], references.size(), context);
  }

  private static void checkReferences(String context, Value value, int parameter, References references, int[] at) {
    if (value instanceof Value.Reference reference) {
      assertEquals(reference.id(), references.target(at[0]), context);
      assertEquals(parameter, references.parameter(at[0]++), context);
    }
    List<Value> inside = value instanceof Value.Aggregate aggregate ? aggregate.items()
        : value instanceof Value.Typed typed ? List.of(typed.value()) : List.of();
    inside.forEach(item -> checkReferences(context, item, parameter, references, at));
  }
}
