package gapwise.synthesis.smallstudy;

import gapwise.effect.TwoByTwo;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.pooling.PoolingSettings;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What tests for small-study effects look at.
 *
 * @param effects of the studies as pooled
 * @param tables raw counts of the same studies in the same order, for odds ratios; else empty
 * @param errorFollowsEffect whether the standard error is worked out from the same numbers as the
 *     effect and moves with it, as that of a log odds ratio or a logit does
 * @param atBound number of studies with a group that has no event, or only events
 * @param settings how the plan pools
 */
public record SmallStudyData(
    EffectSample effects,
    Optional<List<TwoByTwo>> tables,
    boolean errorFollowsEffect,
    int atBound,
    PoolingSettings settings) {
  /**
   * Fewest studies for a test of asymmetry to be read. With fewer its power is too low to tell
   * chance from asymmetry: Sterne et al., BMJ 2011;343:d4002.
   */
  public static final int FEWEST = 10;

  /** Fewest studies from which a test can be worked out, two coefficients and one to spare. */
  private static final int FEWEST_TO_COMPUTE = 3;

  /** Share of sparse studies from which the effect-and-error tests are refused. No source. */
  private static final double MOST_AT_BOUND = 0.5;

  public SmallStudyData {
    Objects.requireNonNull(effects, "effects");
    Objects.requireNonNull(settings, "settings");
    tables = tables.map(List::copyOf);
    if (tables.isPresent() && tables.get().size() != effects.size()) {
      throw new IllegalArgumentException(
          tables.get().size() + " tables with " + effects.size() + " effects");
    }
  }

  /** Why nothing can be computed from the effects; empty if it can. */
  Optional<Refusal> unusable() {
    if (effects.size() == 1) {
      return notComputable("single-study", "one study cannot be set against smaller ones");
    }
    Optional<Refusal> tooFew = tooFew(effects.size());
    if (tooFew.isPresent()) {
      return tooFew;
    }
    if (effects.hasZeroVariance()) {
      return notComputable("zero-variance", "a study's estimated variance is 0, so it has no size");
    }
    if (!effects.isWithinArithmetic()) {
      return notComputable(
          "number-out-of-range",
          "effects and their variances differ by more powers of ten than can be reckoned with");
    }
    return Optional.empty();
  }

  private static Optional<Refusal> notComputable(String code, String reason) {
    return Optional.of(new Refusal.NotComputable(new Problem("", code, reason)));
  }

  /** Why a test of asymmetry cannot be made of so few studies; empty if it can. */
  static Optional<Refusal> tooFew(int studies) {
    return studies >= FEWEST_TO_COMPUTE
        ? Optional.empty()
        : notComputable(
            "too-few-studies",
            studies + " studies leave no degrees of freedom beside two coefficients");
  }

  /**
   * Why a test of effects against their errors should not be made of such sparse data: Schwarzer et
   * al., Stat Med 2002;21:2465; Peters et al., JAMA 2006;295:676. Empty if it may.
   */
  Optional<Refusal> tooSparse() {
    if (!errorFollowsEffect || atBound < MOST_AT_BOUND * effects.size()) {
      return Optional.empty();
    }
    return Optional.of(new Refusal.TooRare(atBound, effects.size(), tables.isPresent()));
  }

  /** Why a test of effects against their errors is refused; empty if it may be made. */
  Optional<Refusal> refusal() {
    return unusable().or(this::tooSparse);
  }

  double standardError(int study) {
    return Math.sqrt(effects.variance(study));
  }
}
