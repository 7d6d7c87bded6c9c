package gapwise.search;

import java.util.Arrays;
import java.util.Map;
import java.util.Set;

/**
 * What is counted of one filter in one segment of the index. A filter that has several parts keeps
 * an arm out when the arm has none of the values asked of any part.
 */
final class FilterColumn {
  private final Filter filter;
  private final SegmentCodes codes;
  private final boolean[] asked;
  private final boolean[] partNarrows;
  private final boolean[] partPasses;

  /** Parts of which something is asked that no arm of the segment has. */
  private final int partsWithoutCodes;

  private final int[] arms;
  private final int[] studies;

  /** The study that each value was last counted of. */
  private final int[] lastStudy;

  private int from;
  private int to;
  private int failedAlone;

  /**
   * @param codes those of the segment
   * @param askedCodes those asked for; none where the filter does not narrow
   */
  FilterColumn(Filter filter, SegmentCodes codes, Set<String> askedCodes) {
    this.filter = filter;
    this.codes = codes;
    int values = codes.codes().size();
    partNarrows = new boolean[codes.partNames().size()];
    partPasses = new boolean[partNarrows.length];
    asked = new boolean[values];
    int without = 0;
    for (Set<String> ofPart : filter.byPart(askedCodes)) {
      int part = codes.partNames().indexOf(filter.part(ofPart.iterator().next()));
      if (part < 0) {
        without++;
      } else {
        partNarrows[part] = true;
      }
      for (String code : ofPart) {
        int place = codes.place(Filter.term(code));
        if (place >= 0) {
          asked[place] = true;
        }
      }
    }
    partsWithoutCodes = without;
    arms = new int[values];
    studies = new int[values];
    lastStudy = new int[values];
    Arrays.fill(lastStudy, -1);
  }

  Filter filter() {
    return filter;
  }

  /** Looks at the values of an arm. */
  void load(int document) {
    from = codes.from(document);
    to = codes.from(document + 1);
  }

  /** How many parts of the filter keep the arm last looked at out. */
  int failedParts() {
    return partNarrows.length == 1 ? failedOnlyPart() : failedOfSeveral();
  }

  /** Of a filter of one part, as most are. */
  private int failedOnlyPart() {
    for (int i = from; i < to; i++) {
      if (asked[codes.at(i)]) {
        return partsWithoutCodes;
      }
    }
    return partsWithoutCodes + (partNarrows[0] ? 1 : 0);
  }

  private int failedOfSeveral() {
    Arrays.fill(partPasses, false);
    for (int i = from; i < to; i++) {
      int place = codes.at(i);
      partPasses[codes.part(place)] |= asked[place];
    }
    int failed = partsWithoutCodes;
    for (int part = 0; part < partNarrows.length; part++) {
      failed += partNarrows[part] && !partPasses[part] ? 1 : 0;
    }
    return failed;
  }

  /**
   * Counts the arm last looked at beside each of its values.
   *
   * @param study place of its study in the segment, where the arms of a study stand side by side
   */
  void count(int study) {
    for (int i = from; i < to; i++) {
      count(codes.at(i), study);
    }
  }

  private void count(int place, int study) {
    arms[place]++;
    if (lastStudy[place] != study) {
      lastStudy[place] = study;
      studies[place]++;
    }
  }

  /** Counts the arm last looked at as one that one part of this filter alone keeps out. */
  void countFailedAlone(int study) {
    for (int i = from; i < to; i++) {
      int place = codes.at(i);
      int part = codes.part(place);
      if (partNarrows[part] && !partPasses[part]) {
        count(place, study);
      }
    }
    failedAlone++;
  }

  int failedAlone() {
    return failedAlone;
  }

  void addTo(Map<String, SearchAnswer.Count> counts) {
    for (int place = 0; place < arms.length; place++) {
      if (arms[place] > 0) {
        String code = codes.codes().get(place);
        counts.merge(
            code,
            new SearchAnswer.Count(code, arms[place], studies[place]),
            SearchAnswer.Count::plus);
      }
    }
  }
}
