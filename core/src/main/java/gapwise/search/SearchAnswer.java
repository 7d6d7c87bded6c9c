package gapwise.search;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What was found.
 *
 * @param arms number of arms found
 * @param studies number of studies that they belong to
 * @param patients patients of those arms that say how many they have
 * @param hits the arms of the page asked for, best or first first
 * @param facets counts beside each filter
 * @param looseWords said where no arm has all words, so that any of them was enough
 * @param didYouMean another spelling that would find more, when little was found
 */
public record SearchAnswer(
    int arms,
    int studies,
    long patients,
    List<ArmHit> hits,
    List<Facet> facets,
    Optional<LooseWords> looseWords,
    Optional<String> didYouMean) {

  public SearchAnswer {
    hits = List.copyOf(hits);
    facets = List.copyOf(facets);
    Objects.requireNonNull(looseWords, "looseWords");
    Objects.requireNonNull(didYouMean, "didYouMean");
  }

  /** One arm found. */
  public record ArmHit(String studyId, String armId) {
    public ArmHit {
      Objects.requireNonNull(studyId, "studyId");
      Objects.requireNonNull(armId, "armId");
    }
  }

  /**
   * A filter with the number of arms and studies that each of its values would leave, the other
   * filters as they are.
   *
   * @param filter name of the filter as in {@link SearchRequest}: methods, bones, segments,
   *     infected, designs, risks, outcomes, details
   * @param counts values with at least one arm, most first
   * @param without arms that there would be with this filter off; of details, which narrow one
   *     another, with any one of them off
   */
  public record Facet(String filter, List<Count> counts, int without) {
    public Facet {
      counts = List.copyOf(counts);
    }
  }

  /** A value of a filter by its code, with the number of arms and of the studies they belong to. */
  public record Count(String code, int arms, int studies) {
    /** The same value counted elsewhere too. */
    Count plus(Count other) {
      return new Count(code, arms + other.arms, studies + other.studies);
    }
  }
}
