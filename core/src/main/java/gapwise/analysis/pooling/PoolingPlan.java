package gapwise.analysis.pooling;

import gapwise.analysis.plan.PlanHead;
import gapwise.effect.Measure;
import gapwise.effect.MeasureOptions;
import gapwise.effect.Measures;
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
   * @param commonVariance whether they share one variance between studies
   */
  public record Groups(String column, boolean commonVariance) {}

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
