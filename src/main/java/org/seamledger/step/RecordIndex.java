package org.seamledger.step;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Where the instances of a file stand: for each its id, its offset and its keyword's number, in the file's order.
 *
 * <p>A record goes by its <em>handle</em>: page number times 65,536 plus place in the page. Handles ascend with offsets.
 */
final class RecordIndex {

  private static final int PAGE_BITS = 16;
  private static final int IN_PAGE = (1 << PAGE_BITS) - 1;
  private static final int MOST_PAGES = 1 << 31 - PAGE_BITS;
  private static final int REPEATED_KEPT = 100;
  /** Keywords of few records get lists of these, as long as the lists together hold at most one record in so many. */
  private static final int LISTED_SHARE = 8;

  private IndexPageDraft draft = new IndexPageDraft();
  private IndexPage[] pages = new IndexPage[16];
  private int pageCount;
  /** First ids of the pages. */
  private long[] firstIds;
  private long end;
  private long lastId = Long.MIN_VALUE;
  private long largestId;
  private int count;
  private boolean ascending = true;
  /** Handles by ascending id, where the file's order is another. */
  private int[] order;
  private final List<Long> repeated = new ArrayList<>();
  private int[] counts = new int[0];
  private int[][] listed;

  // ---- filling

  void add(long id, long offset, int keyword) {
    if (!draft.add(id, offset, keyword)) {
      pack();
      draft.add(id, offset, keyword);
    }
    count++;
    ascending &= id > lastId;
    lastId = id;
    largestId = Math.max(largestId, id);
  }

  private void pack() {
    if (pageCount == MOST_PAGES) {
      throw new Misread(draft.firstOffset, "at most " + Integer.MAX_VALUE + " instances", "more");
    }
    if (pageCount == pages.length) {
      pages = Arrays.copyOf(pages, 2 * pageCount);
    }
    pages[pageCount++] = new IndexPage(draft);
    draft.clear();
  }

  /** Ends the filling. @param end offset behind the last record */
  void finish(long end, int keywords) {
    this.end = end;
    if (draft.count > 0) {
      pack();
    }
    draft = null;
    firstIds = new long[pageCount];
    for (int p = 0; p < pageCount; p++) {
      firstIds[p] = pages[p].firstId;
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
    for (int p = 0; p < pageCount; p++) {
      for (int slot = 0; slot < pages[p].count; slot++) {
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
        page(order[i]).setRepeated(order[i] & IN_PAGE);
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
    for (int p = 0; p < pageCount; p++) {
      for (int slot = 0; slot < pages[p].count; slot++) {
        int keyword = pages[p].keyword(slot);
        if (keyword != IndexPage.REPEATED) {
          result[keyword]++;
        }
      }
    }
    return result;
  }

  // ---- asking

  int count(int keyword) {
    return counts[keyword];
  }

  /** Ids that several records have, ascending; the first hundred of them. */
  List<Long> repeated() {
    return List.copyOf(repeated);
  }

  /** The largest id of all records, repeated ones too; 0 where there is none. */
  long largestId() {
    return largestId;
  }

  long id(int handle) {
    return page(handle).id(handle & IN_PAGE);
  }

  long offset(int handle) {
    return page(handle).offset(handle & IN_PAGE);
  }

  int keyword(int handle) {
    return page(handle).keyword(handle & IN_PAGE);
  }

  /** Offset of the record behind, or the end of the last section: between the two the record ends. */
  long endBefore(int handle) {
    IndexPage page = page(handle);
    int next = (handle & IN_PAGE) + 1;
    if (next < page.count) {
      return page.offset(next);
    }
    int nextPage = (handle >>> PAGE_BITS) + 1;
    return nextPage < pageCount ? pages[nextPage].firstOffset : end;
  }

  /** The handle of an id's record, or -1. */
  int find(long id) {
    return ascending ? findByPage(id) : findInOrder(id);
  }

  private int findByPage(long id) {
    int place = Arrays.binarySearch(firstIds, id);
    int page = place >= 0 ? place : -place - 2;
    int slot = page < 0 ? -1 : pages[page].find(id);
    return slot < 0 ? -1 : page << PAGE_BITS | slot;
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
    for (int p = 0; n < result.length; p++) {
      n = pages[p].list(keyword, p << PAGE_BITS, result, n);
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
    for (int p = 0; p < pageCount; p++) {
      for (int slot = 0; slot < pages[p].count; slot++) {
        int k = pages[p].keyword(slot);
        if (k != IndexPage.REPEATED && lists[k] != null) {
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

  private IndexPage page(int handle) {
    return pages[handle >>> PAGE_BITS];
  }
}
