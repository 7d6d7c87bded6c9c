package gapwise.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.lucene.index.SortedSetDocValues;
import org.apache.lucene.util.BytesRef;
import org.apache.lucene.util.FixedBitSet;

/**
 * The values of one filter in one segment of the index, with what was counted of them. A filter
 * that has several parts keeps an arm out when the arm has none of the values asked of any part.
 */
final class FilterColumn {
  private final Filter filter;
  private final SortedSetDocValues values;
  private final FixedBitSet asked;
  private final int[] parts;
  private final boolean[] partNarrows;
  private final boolean[] partPasses;
  private final int[] arms;
  private final int[] studies;

  /** The study that each value was last counted of. */
  private final int[] lastStudy;

  private int[] current = new int[8];
  private int held;
  private int failedAlone;

  FilterColumn(Filter filter, SortedSetDocValues values, Set<String> codes) throws IOException {
    this.filter = filter;
    this.values = values;
    int valueCount = Math.toIntExact(values.getValueCount());
    parts = new int[valueCount];
    List<String> names = new ArrayList<>();
    filter.byPart(codes).forEach(of -> names.add(filter.part(of.iterator().next())));
    int narrowing = names.size();
    for (int place = 0; place < valueCount; place++) {
      String part = filter.part(values.lookupOrd(place).utf8ToString());
      if (!names.contains(part)) {
        names.add(part);
      }
      parts[place] = names.indexOf(part);
    }
    partNarrows = new boolean[names.size()];
    Arrays.fill(partNarrows, 0, narrowing, true);
    partPasses = new boolean[names.size()];
    asked = new FixedBitSet(Math.max(1, valueCount));
    arms = new int[valueCount];
    studies = new int[valueCount];
    lastStudy = new int[valueCount];
    Arrays.fill(lastStudy, -1);
    for (String code : codes) {
      long place = values.lookupTerm(new BytesRef(Filter.term(code)));
      if (place >= 0) {
        asked.set((int) place);
      }
    }
  }

  Filter filter() {
    return filter;
  }

  /** Whether it keeps any arm out. */
  boolean narrows() {
    return partNarrows.length > 0 && partNarrows[0];
  }

  /** Reads the values of an arm and tells how many parts of the filter keep it out. */
  int load(int document) throws IOException {
    held = 0;
    Arrays.fill(partPasses, false);
    if (values.advanceExact(document)) {
      int count = values.docValueCount();
      if (count > current.length) {
        current = new int[count * 2];
      }
      while (held < count) {
        int place = (int) values.nextOrd();
        current[held++] = place;
        partPasses[parts[place]] |= asked.get(place);
      }
    }
    int failed = 0;
    for (int part = 0; part < partNarrows.length && partNarrows[part]; part++) {
      failed += partPasses[part] ? 0 : 1;
    }
    return failed;
  }

  /** Whether the arm last read has any value. */
  boolean holdsAny() {
    return held > 0;
  }

  /** The place of the first value of the arm last read, which must have one. */
  int first() {
    return current[0];
  }

  /** The codes of the segment by their places; there are few, so each is read once. */
  List<String> codes() throws IOException {
    List<String> codes = new ArrayList<>();
    for (int place = 0; place < arms.length; place++) {
      codes.add(values.lookupOrd(place).utf8ToString());
    }
    return codes;
  }

  /**
   * Counts the arm last read beside each of its values.
   *
   * @param study place of its study in the segment, where the arms of a study stand side by side
   */
  void count(int study) {
    for (int i = 0; i < held; i++) {
      count(current[i], study);
    }
  }

  private void count(int place, int study) {
    arms[place]++;
    if (lastStudy[place] != study) {
      lastStudy[place] = study;
      studies[place]++;
    }
  }

  /** Counts the arm last read as one that one part of this filter alone keeps out. */
  void countFailedAlone(int study) {
    for (int i = 0; i < held; i++) {
      int part = parts[current[i]];
      if (partNarrows[part] && !partPasses[part]) {
        count(current[i], study);
      }
    }
    failedAlone++;
  }

  int failedAlone() {
    return failedAlone;
  }

  void addTo(Map<String, SearchAnswer.Count> counts) throws IOException {
    for (int place = 0; place < arms.length; place++) {
      if (arms[place] > 0) {
        String code = values.lookupOrd(place).utf8ToString();
        counts.merge(
            code,
            new SearchAnswer.Count(code, arms[place], studies[place]),
            SearchAnswer.Count::plus);
      }
    }
  }
}
