package org.seamledger.step;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Numbers the keywords of a file in order of appearance. Spellings in lower case share their keyword's number. */
final class KeywordTable {

  /** What {@link #find} gives for a spelling that it doesn't know. */
  static final int UNKNOWN = -1;
  /** Numbers are kept in 16 bits, of which the last value is taken. */
  private static final int MOST = 0xFFFE;
  private static final int LONGEST = 255;

  private final List<String> names = new ArrayList<>();
  private final Map<String, Integer> numbers = new HashMap<>();
  private int spellings;
  private byte[][] spelled = new byte[1024][];
  private long[] hashes = new long[1024];
  private int[] values = new int[1024];

  int size() {
    return names.size();
  }

  String name(int number) {
    return names.get(number);
  }

  /** The number of a keyword, or {@link #UNKNOWN}. */
  int number(String name) {
    return numbers.getOrDefault(name, UNKNOWN);
  }

  /** The hash of no bytes; {@link #mix} adds eight more, those behind the end being 0. */
  static long mix(long hash, long word) {
    long h = (hash ^ word) * 0x9E3779B97F4A7C15L;
    return h ^ h >>> 32;
  }

  static long hash(byte[] bytes, int from, int to) {
    long hash = 0;
    for (int at = from;; at += Long.BYTES) {
      int n = Math.min(Long.BYTES, to - at);
      long word = 0;
      for (int i = 0; i < n; i++) {
        word |= (bytes[at + i] & 0xFFL) << 8 * i;
      }
      hash = mix(hash, word);
      if (n < Long.BYTES) {
        return hash;
      }
    }
  }

  int find(long hash, byte[] bytes, int from, int to) {
    int mask = hashes.length - 1;
    for (int slot = (int) hash & mask; spelled[slot] != null; slot = slot + 1 & mask) {
      if (hashes[slot] == hash && Arrays.equals(spelled[slot], 0, spelled[slot].length, bytes, from, to)) {
        return values[slot];
      }
    }
    return UNKNOWN;
  }

  /** Learns a spelling. {@link #UNKNOWN} where it is no keyword, or one too many. */
  int add(byte[] bytes, int from, int to) {
    if (!isKeyword(bytes, from, to) || spellings == MOST) {
      return UNKNOWN;
    }
    String name = upperCase(new String(bytes, from, to - from, StandardCharsets.ISO_8859_1));
    Integer number = numbers.get(name);
    if (number == null) {
      number = names.size();
      numbers.put(name, number);
      names.add(name);
    }
    if (2 * ++spellings > hashes.length) {
      grow();
    }
    put(hash(bytes, from, to), Arrays.copyOfRange(bytes, from, to), number);
    return number;
  }

  /** The number of instances that are of several entities at once. */
  int complex() {
    return numbers.computeIfAbsent(StepFile.COMPLEX, name -> {
      names.add(name);
      return names.size() - 1;
    });
  }

  /** Clause 6.3.2: a letter or an underscore, then those and digits; an exclamation mark before those of users. */
  static boolean isKeyword(byte[] bytes, int from, int to) {
    int first = from < to && bytes[from] == '!' ? from + 1 : from;
    if (first >= to || to - from > LONGEST || isDigit(bytes[first])) {
      return false;
    }
    for (int i = first; i < to; i++) {
      if (!isWord(bytes[i])) {
        return false;
      }
    }
    return true;
  }

  static boolean isWord(int c) {
    return c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' || isDigit(c) || c == '_';
  }

  static boolean isDigit(int c) {
    return c >= '0' && c <= '9';
  }

  /** Of ASCII letters only, whatever the locale. */
  static String upperCase(String word) {
    for (int i = 0; i < word.length(); i++) {
      if (word.charAt(i) >= 'a' && word.charAt(i) <= 'z') {
        return word.toUpperCase(Locale.ROOT);
      }
    }
    return word;
  }

  private void put(long hash, byte[] spelling, int number) {
    int mask = hashes.length - 1;
    int slot = (int) hash & mask;
    while (spelled[slot] != null) {
      slot = slot + 1 & mask;
    }
    hashes[slot] = hash;
    spelled[slot] = spelling;
    values[slot] = number;
  }

  private void grow() {
    byte[][] oldSpelled = spelled;
    long[] oldHashes = hashes;
    int[] oldValues = values;
    spelled = new byte[2 * oldSpelled.length][];
    hashes = new long[spelled.length];
    values = new int[spelled.length];
    for (int i = 0; i < oldSpelled.length; i++) {
      if (oldSpelled[i] != null) {
        put(oldHashes[i], oldSpelled[i], oldValues[i]);
      }
    }
  }
}
