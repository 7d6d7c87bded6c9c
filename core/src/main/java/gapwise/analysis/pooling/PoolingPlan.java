package gapwise.analysis.pooling;

import gapwise.analysis.plan.PlanHead;
import gapwise.effect.Measure;
import gapwise.effect.MeasureOptions;
import gapwise.effect.Measures;
import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/**
 * How a plan reads and pools studies.
 *
 * @param options of its measure
 * @param how the measure with these options
 * @param groups which studies are also pooled apart, if any
 */
public record PoolingPlan(
    PlanHead head, MeasureOptions options, Measure<?> how, Model model, Optional<Groups> groups) {
  /**
   * Groups of studies.
   *
   * @param column whose texts make them
   * @param variance which of them share one variance between studies
   * @param blanksApart whether rows that say nothing in the column are a group of their own; else
   *     they are in none
   */
  public record Groups(String column, Variance variance, boolean blanksApart) {
    /** The name of the group of rows that say nothing. */
    public static final String NOT_STATED = "not stated";

    /** The variance between studies of groups. */
    public enum Variance {
      /** One for each group. */
      SEPARATE,
      /** One for all. */
      COMMON,
      /** One for all where a group has few studies, else one for each. */
      COMMON_WHEN_FEW;

      /**
       * A group of so many studies tells little of a variance of its own: Borenstein, Hedges,
       * Higgins and Rothstein, Introduction to Meta-Analysis, 2009, chapter 19 ("five or fewer").
       */
      private static final int FEW = 5;

      /** The variance of this word in a plan; separate for none. */
      public static Variance named(String word) {
        return word.isEmpty()
            ? SEPARATE
            : Variance.valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
      }

      /** Whether groups of these sizes share one. */
      public boolean isCommon(Collection<Long> sizes) {
        return this == COMMON
            || (this == COMMON_WHEN_FEW && sizes.stream().anyMatch(size -> size <= FEW));
      }
    }
  }

  /** The word of the measure. */
  public String measure() {
    return head.measure();
  }

  /** The word of the scale; the measure's only one where it has one. */
  public String scale() {
    return options.scale();
  }

  /** The level of intervals, above 0 and below 1. */
  public double level() {
    return head.level();
  }

  /** The same measure and model without groups, read and pooled otherwise. */
  public PoolingPlan with(MeasureOptions other, Model model) {
    return new PoolingPlan(
        head, other, Measures.named(measure(), other).orElseThrow(), model, Optional.empty());
  }
}
