package gapwise.analysis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.effect.MeasureOptions;
import gapwise.effect.StudyEffect;
import java.util.List;
import java.util.Map;

/**
 * Studies whose own estimated variance is 0: a risk difference of two groups without events, means
 * whose patients all have one value. Each would take all the weight, so it is left out where others
 * have a variance to be pooled by. Where none has, nothing is set apart, and pooling says why it
 * does nothing.
 */
public final class ZeroVariances {
  private static final String CODE = "zero-variance";

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

  /**
   * Adds to what pooling and regression say of a variance of 0 what would help, which is another
   * thing for each measure and which they do not know. What a model says itself, beyond its first
   * semicolon, gives way to it.
   */
  public static void advise(String measure, List<Result.Warning> warnings) {
    warnings.replaceAll(
        one ->
            one.code().equals(CODE) && one.study().isEmpty() && one.group().isEmpty()
                ? Result.Warning.of(
                    CODE,
                    say(
                        "analysis.zero-variance-advised",
                        Map.of(
                            "what",
                            one.message().replaceFirst(";.*", ""),
                            "advice",
                            advice(measure))))
                : one);
  }

  private static String advice(String measure) {
    return switch (measure) {
      case "proportion" -> say("analysis.zero-variance-of-shares");
      case "odds-ratio", "risk-ratio", "risk-difference", "incidence-rate-ratio" ->
          say("analysis.zero-variance-of-groups");
      case "incidence-rate" -> say("analysis.zero-variance-of-rates");
      case "reported-effect" -> say("analysis.zero-variance-of-effects");
      default -> say("analysis.zero-variance-of-means");
    };
  }

  private static StudyEffect apart(StudyEffect effect, String measure) {
    boolean zero =
        effect.leftOut().isEmpty()
            && effect.variance().isPresent()
            && effect.variance().getAsDouble() == 0;
    return zero
        ? StudyEffect.withoutVariance(
            effect.estimate().orElseThrow(),
            CODE,
            measure.equals("risk-difference")
                ? say("analysis.zero-variance-of-counts")
                : say("analysis.zero-variance-of-one"))
        : effect;
  }
}
