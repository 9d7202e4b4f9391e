package org.seamledger.step;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Where the instances of a file stand: for each its id, its offset and its keyword's number, in the file's order.
 *
 * <p>A record goes by its <em>handle</em>: page number times 65,536 plus place in the page. Handles ascend with offsets. Pages keep ids and
 * offsets as 32-bit differences from their first record's, so a record takes ten bytes. A page's arrays are smaller than half a region of
 * the G1 collector, which otherwise gives each whole regions of its own.
 */
final class RecordIndex {

  private static final int PAGE_BITS = 16;
  private static final int PAGE = 1 << PAGE_BITS;
  private static final int IN_PAGE = PAGE - 1;
  /** Keyword number of records whose id an earlier record has. */
  private static final short REPEATED = (short) 0xFFFF;
  private static final int REPEATED_KEPT = 100;
  /** Keywords of few records get lists of these, as long as the lists together hold at most one record in so many. */
  private static final int LISTED_SHARE = 8;

  private static final class Page {
    final long firstOffset;
    final long firstId;
    int[] offsets;
    short[] keywords;
    int[] ids;
    /** In place of {@link #ids} where a difference doesn't fit 32 bits. */
    long[] wideIds;
    int count;

    Page(long firstOffset, long firstId, int capacity) {
      this.firstOffset = firstOffset;
      this.firstId = firstId;
      offsets = new int[capacity];
      keywords = new short[capacity];
      ids = new int[capacity];
    }

    long id(int slot) {
      return wideIds == null ? firstId + ids[slot] : wideIds[slot];
    }

    void setId(int slot, long id) {
      long difference = id - firstId;
      if (wideIds == null && difference != (int) difference) {
        widen();
      }
      if (wideIds == null) {
        ids[slot] = (int) difference;
      } else {
        wideIds[slot] = id;
      }
    }

    private void widen() {
      wideIds = new long[ids.length];
      for (int i = 0; i < count; i++) {
        wideIds[i] = firstId + ids[i];
      }
      ids = null;
    }

    void trim() {
      if (count < offsets.length) {
        resize(count);
      }
    }

    void resize(int capacity) {
      offsets = Arrays.copyOf(offsets, capacity);
      keywords = Arrays.copyOf(keywords, capacity);
      if (wideIds == null) {
        ids = Arrays.copyOf(ids, capacity);
      } else {
        wideIds = Arrays.copyOf(wideIds, capacity);
      }
    }
  }

  private final List<Page> pages = new ArrayList<>();
  private Page last;
  private long end;
  private long lastId = Long.MIN_VALUE;
  private int count;
  private boolean ascending = true;
  /** Handles by ascending id, where the file's order is another. */
  private int[] order;
  private final List<Long> repeated = new ArrayList<>();
  private int[] counts = new int[0];
  private int[][] listed;

  // ---- filling

  void add(long id, long offset, int keyword) {
    Page page = last;
    if (page == null || page.count == PAGE || offset - page.firstOffset > 0xFFFFFFFFL) {
      page = startPage(offset, id);
    } else if (page.count == page.offsets.length) {
      page.resize(Math.min(PAGE, 4 * page.count));
    }
    int slot = page.count;
    page.offsets[slot] = (int) (offset - page.firstOffset);
    page.keywords[slot] = (short) keyword;
    page.setId(slot, id);
    page.count = slot + 1;
    count++;
    ascending &= id > lastId;
    lastId = id;
  }

  private Page startPage(long offset, long id) {
    if (last != null) {
      last.trim();
    }
    if (pages.size() == 1 << 31 - PAGE_BITS) {
      throw new Misread(offset, "at most " + Integer.MAX_VALUE + " instances", "more");
    }
    last = new Page(offset, id, pages.isEmpty() ? 1024 : PAGE);
    pages.add(last);
    return last;
  }

  /** Ends the filling. @param end offset behind the last record */
  void finish(long end, int keywords) {
    this.end = end;
    if (last != null) {
      last.trim();
    }
    if (!ascending) {
      order = new HandleSort(this::id).sorted(handles());
      dropRepeated();
    }
    counts = countByKeyword(keywords);
  }

  private int[] handles() {
    int[] handles = new int[count];
    int n = 0;
    for (int p = 0; p < pages.size(); p++) {
      for (int slot = 0; slot < pages.get(p).count; slot++) {
        handles[n++] = p << PAGE_BITS | slot;
      }
    }
    return handles;
  }

  /** Of records with one id the first stays. The sort was stable, so it stands before the others. */
  private void dropRepeated() {
    int kept = 0;
    for (int i = 0; i < order.length; i++) {
      if (kept > 0 && id(order[i]) == id(order[kept - 1])) {
        noteRepeated(id(order[i]));
        page(order[i]).keywords[order[i] & IN_PAGE] = REPEATED;
      } else {
        order[kept++] = order[i];
      }
    }
    if (kept < order.length) {
      order = Arrays.copyOf(order, kept);
      count = kept;
    }
  }

  private void noteRepeated(long id) {
    if (repeated.size() < REPEATED_KEPT && (repeated.isEmpty() || repeated.get(repeated.size() - 1) != id)) {
      repeated.add(id);
    }
  }

  private int[] countByKeyword(int keywords) {
    int[] result = new int[keywords];
    for (Page page : pages) {
      for (short keyword : page.keywords) {
        if (keyword != REPEATED) {
          result[keyword & 0xFFFF]++;
        }
      }
    }
    return result;
  }

  // ---- asking

  /** Number of records with ids of their own. */
  int count() {
    return count;
  }

  int count(int keyword) {
    return counts[keyword];
  }

  /** Ids that several records have, ascending; the first hundred of them. */
  List<Long> repeated() {
    return List.copyOf(repeated);
  }

  long id(int handle) {
    return page(handle).id(handle & IN_PAGE);
  }

  long offset(int handle) {
    Page page = page(handle);
    return page.firstOffset + (page.offsets[handle & IN_PAGE] & 0xFFFFFFFFL);
  }

  int keyword(int handle) {
    return page(handle).keywords[handle & IN_PAGE] & 0xFFFF;
  }

  /** Offset of the record behind, or the end of the last section: between the two the record ends. */
  long endBefore(int handle) {
    Page page = page(handle);
    int next = (handle & IN_PAGE) + 1;
    if (next < page.count) {
      return page.firstOffset + (page.offsets[next] & 0xFFFFFFFFL);
    }
    int nextPage = (handle >>> PAGE_BITS) + 1;
    return nextPage < pages.size() ? pages.get(nextPage).firstOffset : end;
  }

  /** The handle of an id's record, or -1. */
  int find(long id) {
    return ascending ? findByPage(id) : findInOrder(id);
  }

  private int findByPage(long id) {
    int low = 0;
    int high = pages.size() - 1;
    while (low < high) {
      int middle = low + high + 1 >>> 1;
      if (pages.get(middle).firstId <= id) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    if (high < 0) {
      return -1;
    }
    int slot = findInPage(pages.get(low), id);
    return slot < 0 ? -1 : low << PAGE_BITS | slot;
  }

  private static int findInPage(Page page, long id) {
    if (page.wideIds != null) {
      return Arrays.binarySearch(page.wideIds, 0, page.count, id);
    }
    long difference = id - page.firstId;
    return difference != (int) difference ? -1 : Arrays.binarySearch(page.ids, 0, page.count, (int) difference);
  }

  private int findInOrder(long id) {
    int low = 0;
    int high = order.length - 1;
    while (low <= high) {
      int middle = low + high >>> 1;
      long there = id(order[middle]);
      if (there == id) {
        return order[middle];
      }
      if (there < id) {
        low = middle + 1;
      } else {
        high = middle - 1;
      }
    }
    return -1;
  }

  /** Handles of a keyword's records, ascending. */
  int[] handles(int keyword) {
    if (listed == null) {
      listed = listRare();
    }
    if (listed[keyword] != null) {
      return listed[keyword];
    }
    int[] result = new int[counts[keyword]];
    int n = 0;
    short wanted = (short) keyword;
    for (int p = 0; n < result.length; p++) {
      short[] keywords = pages.get(p).keywords;
      for (int slot = 0; slot < keywords.length; slot++) {
        if (keywords[slot] == wanted) {
          result[n++] = p << PAGE_BITS | slot;
        }
      }
    }
    return result;
  }

  /** The lists of all rare keywords, in one look at the records. */
  private int[][] listRare() {
    int limit = rareLimit();
    int[][] lists = new int[counts.length][];
    for (int k = 0; k < counts.length; k++) {
      lists[k] = counts[k] <= limit ? new int[counts[k]] : null;
    }
    int[] filled = new int[counts.length];
    for (int p = 0; p < pages.size(); p++) {
      short[] keywords = pages.get(p).keywords;
      for (int slot = 0; slot < keywords.length; slot++) {
        int k = keywords[slot] & 0xFFFF;
        if (k < lists.length && lists[k] != null) {
          lists[k][filled[k]++] = p << PAGE_BITS | slot;
        }
      }
    }
    return lists;
  }

  /** The largest count such that all keywords with at most that many records fit the share. */
  private int rareLimit() {
    int[] sorted = counts.clone();
    Arrays.sort(sorted);
    long room = Math.max(count / LISTED_SHARE, 4096);
    int fitting = 0;
    while (fitting < sorted.length && (room -= sorted[fitting]) >= 0) {
      fitting++;
    }
    // Keywords of equal counts stand or fall together.
    return fitting == sorted.length ? Integer.MAX_VALUE : sorted[fitting] - 1;
  }

  private Page page(int handle) {
    return pages.get(handle >>> PAGE_BITS);
  }
}
