package org.seamledger.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The index against a sorted map, on offsets that no test could have as a file. */
@Tag("slow")
class RecordIndexTest {

  private record Kept(long offset, int keyword) {
  }

  @Test
  void findsWhatASortedMapFinds() {
    long seed = 11;
    for (int round = 0; round < 40; round++) {
      Random random = new Random(seed + round);
      int n = random.nextInt(1, round % 10 == 0 ? 150_000 : 3000);
      check("seed " + (seed + round), random, n, round % 5);
    }
  }

  private static void check(String context, Random random, int n, int kind) {
    RecordIndex index = new RecordIndex();
    Map<Long, Kept> map = new TreeMap<>();
    int keywords = random.nextInt(1, 300);
    long offset = random.nextInt(1000);
    long id = 0;
    for (int i = 0; i < n; i++) {
      // Rare giants put offsets and ids beyond 32 bits within a page.
      offset += random.nextInt(2000) == 0 ? random.nextLong(1L << 34) : random.nextInt(1, 200);
      id = nextId(random, kind, id, i);
      int keyword = (int) (keywords * random.nextDouble() * random.nextDouble());
      index.add(id, offset, keyword);
      map.putIfAbsent(id, new Kept(offset, keyword));
    }
    index.finish(offset + 100, keywords);
    map.forEach((key, kept) -> {
      int handle = index.find(key);
      assertEquals(kept, new Kept(index.offset(handle), index.keyword(handle)), context);
      assertEquals(key, index.id(handle), context);
      assertThat(index.endBefore(handle)).isGreaterThan(index.offset(handle));
    });
    for (int i = 0; i < 1000; i++) {
      long some = random.nextLong() >>> random.nextInt(64);
      assertEquals(map.containsKey(some), index.find(some) >= 0, context);
    }
    checkKeywords(context, index, map, keywords);
  }

  private static void checkKeywords(String context, RecordIndex index, Map<Long, Kept> map, int keywords) {
    List<List<Long>> expected = new ArrayList<>();
    for (int k = 0; k < keywords; k++) {
      expected.add(new ArrayList<>());
    }
    map.values().forEach(kept -> expected.get(kept.keyword).add(kept.offset));
    for (int k = 0; k < keywords; k++) {
      long[] offsets = Arrays.stream(index.handles(k)).mapToLong(index::offset).toArray();
      assertThat(offsets).as(context).isSorted().isEqualTo(expected.get(k).stream().mapToLong(o -> o).sorted().toArray());
      assertEquals(offsets.length, index.count(k), context);
    }
  }

  private static long nextId(Random random, int kind, long last, int i) {
    return switch (kind) {
      case 0 -> last + random.nextInt(1, 10);
      case 1 -> last + (random.nextInt(3000) == 0 ? random.nextLong(1L << 40) : random.nextInt(1, 4));
      case 2 -> i / 100 * 100 + 99 - i % 100;
      case 3 -> random.nextInt(5000);
      default -> random.nextLong() >>> 1;
    };
  }
}
