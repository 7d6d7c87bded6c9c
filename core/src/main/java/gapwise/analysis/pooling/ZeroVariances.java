package gapwise.analysis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.effect.MeasureOptions;
import gapwise.effect.StudyEffect;
import java.util.List;

/**
 * Studies whose own estimated variance is 0: a risk difference of two groups without events, means
 * whose patients all have one value. Each would take all the weight, so it is left out where others
 * have a variance to be pooled by. Where none has, nothing is set apart, and pooling says why it
 * does nothing.
 */
public final class ZeroVariances {
  private ZeroVariances() {}

  /**
   * The effects, those without variance left out.
   *
   * <p>Single proportions are not set apart: on the raw and log scale those with every event, or
   * none, have no variance, and what is left without them would be another proportion. Their
   * pooling is refused as a whole and says which scale or model can use them.
   */
  public static List<StudyEffect> setApart(PoolingPlan plan, List<StudyEffect> effects) {
    boolean byVariance = plan.options().pooling() == MeasureOptions.Pooling.INVERSE_VARIANCE;
    boolean others =
        effects.stream().anyMatch(one -> one.leftOut().isEmpty() && one.variance().orElse(0) > 0);
    return byVariance && others && !plan.measure().equals("proportion")
        ? effects.stream().map(one -> apart(one, plan.measure())).toList()
        : effects;
  }

  private static StudyEffect apart(StudyEffect effect, String measure) {
    boolean zero =
        effect.leftOut().isEmpty()
            && effect.variance().isPresent()
            && effect.variance().getAsDouble() == 0;
    return zero
        ? StudyEffect.withoutVariance(
            effect.estimate().orElseThrow(),
            "zero-variance",
            measure.equals("risk-difference")
                ? say("analysis.zero-variance-of-counts")
                : say("analysis.zero-variance-of-one"))
        : effect;
  }
}
