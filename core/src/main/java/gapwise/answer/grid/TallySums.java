package gapwise.answer.grid;

import gapwise.evidence.vocabulary.Design;
import gapwise.search.IndexedArm;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;

/**
 * Tallies of many places, added up side by side. Plain arrays, for every arm of the evidence base
 * is added several times for each map that somebody asks for. The arms of a study must come one
 * after another.
 */
final class TallySums {
  private static final Design[] DESIGNS = Design.values();

  private final int[] arms;
  private final long[] patients;
  private final int[] studies;
  private final int[] lastStudy;
  private final int[] designs;

  /**
   * @param places how many tallies
   */
  TallySums(int places) {
    arms = new int[places];
    patients = new long[places];
    studies = new int[places];
    lastStudy = new int[places];
    designs = new int[places * DESIGNS.length];
    Arrays.fill(lastStudy, -1);
  }

  /**
   * Adds an arm to a place.
   *
   * @param study number of its study, the same for all its arms and for no other
   */
  void add(int place, int study, IndexedArm arm) {
    arms[place]++;
    patients[place] += arm.patients().orElse(0);
    if (lastStudy[place] != study) {
      lastStudy[place] = study;
      studies[place]++;
      if (arm.design().isPresent()) {
        designs[place * DESIGNS.length + arm.design().get().ordinal()]++;
      }
    }
  }

  boolean isNothing(int place) {
    return arms[place] == 0;
  }

  Tally tally(int place) {
    return isNothing(place)
        ? Tally.NOTHING
        : new Tally(studies[place], arms[place], patients[place], designs(place));
  }

  private Map<Design, Integer> designs(int place) {
    Map<Design, Integer> counted = new EnumMap<>(Design.class);
    for (Design design : DESIGNS) {
      int count = designs[place * DESIGNS.length + design.ordinal()];
      if (count > 0) {
        counted.put(design, count);
      }
    }
    return counted;
  }
}
