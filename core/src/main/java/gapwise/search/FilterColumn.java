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

/** The values of one filter in one segment of the index, with what was counted of them. */
final class FilterColumn {
  private final Filter filter;
  private final SortedSetDocValues values;
  private final boolean narrows;
  private final FixedBitSet asked;
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
    narrows = !codes.isEmpty();
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
    return narrows;
  }

  /** Reads the values of an arm and tells whether it passes the filter. */
  boolean load(int document) throws IOException {
    held = 0;
    boolean passes = !narrows;
    if (values.advanceExact(document)) {
      int count = values.docValueCount();
      if (count > current.length) {
        current = new int[count * 2];
      }
      while (held < count) {
        int place = (int) values.nextOrd();
        current[held++] = place;
        passes |= asked.get(place);
      }
    }
    return passes;
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
      int place = current[i];
      arms[place]++;
      if (lastStudy[place] != study) {
        lastStudy[place] = study;
        studies[place]++;
      }
    }
  }

  /** Counts the arm last read as one that this filter alone keeps out. */
  void countFailedAlone(int study) {
    count(study);
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
