package gapwise.answer;

import gapwise.evidence.Design;
import gapwise.search.IndexedArm;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * How much is recorded of one thing.
 *
 * @param studies number of studies
 * @param arms number of groups of patients
 * @param patients patients of those groups that say how many they have
 * @param designs number of studies of each design that there is, best first; studies that give none
 *     are in none of them
 */
public record Tally(int studies, int arms, long patients, Map<Design, Integer> designs) {
  /** Nothing. */
  public static final Tally NOTHING = new Tally(0, 0, 0, Map.of());

  public Tally {
    Map<Design, Integer> ordered = new EnumMap<>(Design.class);
    ordered.putAll(designs);
    designs = Collections.unmodifiableMap(ordered);
  }

  /** Whether there is nothing. */
  public boolean isNothing() {
    return arms == 0;
  }

  /** The design that says most of cause and effect; empty where no study gives its design. */
  public Optional<Design> best() {
    return designs.keySet().stream().findFirst();
  }

  /** Studies whose design is not given. */
  public int designNotGiven() {
    return studies - designs.values().stream().mapToInt(Integer::intValue).sum();
  }

  /** Adds up. The arms of a study must come one after another. */
  static final class Sum {
    private static final Design[] DESIGNS = Design.values();
    private final int[] designs = new int[DESIGNS.length];
    private String lastStudy = "";
    private int studies;
    private int arms;
    private long patients;

    void add(IndexedArm arm) {
      arms++;
      patients += arm.patients().orElse(0);
      if (!arm.studyId().equals(lastStudy)) {
        lastStudy = arm.studyId();
        studies++;
        if (arm.design().isPresent()) {
          designs[arm.design().get().ordinal()]++;
        }
      }
    }

    Tally tally() {
      return arms == 0 ? NOTHING : new Tally(studies, arms, patients, counted());
    }

    private Map<Design, Integer> counted() {
      Map<Design, Integer> counted = new EnumMap<>(Design.class);
      for (Design design : DESIGNS) {
        if (designs[design.ordinal()] > 0) {
          counted.put(design, designs[design.ordinal()]);
        }
      }
      return counted;
    }
  }
}
