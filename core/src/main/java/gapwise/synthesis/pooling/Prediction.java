package gapwise.synthesis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.effect.Interval;
import gapwise.numeric.ReferenceDistribution;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.GroupMeans;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * The interval in which the true effect of a further study lies, mean +- multiplier root(tau^2 +
 * se^2): Higgins, Thompson and Spiegelhalter, J R Stat Soc A 2009;172:137.
 *
 * @param reference whose multiplier
 * @param standardError which standard error of the mean
 */
public record Prediction(Reference reference, Error standardError) {
  /** Whose multiplier; k stands for k - p + 1 when there are p means. */
  public enum Reference {
    T_K_MINUS_2,
    T_K_MINUS_1,
    NORMAL,
    /** None: limits are those of a mixture over tau, which is not taken as known. */
    UNKNOWN_SPREAD;

    /** Whether tau is taken as it is estimated. */
    public boolean takesSpreadAsKnown() {
      return this != UNKNOWN_SPREAD;
    }

    /** The word in a plan. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The reference of a word in a plan; empty if the word is another. */
    public static Optional<Reference> named(String word) {
      return Arrays.stream(values()).filter(one -> one.word().equals(word)).findFirst();
    }

    /**
     * The distribution; empty if no degrees of freedom are left, or where tau is not taken as
     * known.
     *
     * @param residual degrees of freedom, k - p
     */
    public Optional<ReferenceDistribution> distribution(int residual) {
      if (this == NORMAL) {
        return Optional.of(ReferenceDistribution.normal());
      }
      if (this == UNKNOWN_SPREAD) {
        return Optional.empty();
      }
      int degrees = this == T_K_MINUS_2 ? residual - 1 : residual;
      return degrees < 1 ? Optional.empty() : Optional.of(ReferenceDistribution.studentT(degrees));
    }
  }

  /** Which standard error of the mean. */
  public enum Error {
    SUM_OF_WEIGHTS,
    HARTUNG_KNAPP
  }

  /** The same, or the usual one for where thousands of values are pooled and no limit is told. */
  public Prediction asKnown() {
    return reference.takesSpreadAsKnown()
        ? this
        : new Prediction(Reference.T_K_MINUS_2, standardError);
  }

  /** The interval about one mean of all studies; empty if these are too few, or too many. */
  public Optional<Interval> around(WeightedMean mean, double tauSquared, double level) {
    return reference.takesSpreadAsKnown()
        ? distribution(mean, tauSquared).map(further -> further.interval(level))
        : UnknownTau.ofOneMean(mean.sample(), tauSquared).map(further -> further.interval(level));
  }

  /** Why there is no interval where a variance between studies is estimated. */
  Problem missing(EffectSample sample, GroupMeans model) {
    if (reference.takesSpreadAsKnown()) {
      return new Problem("", "too-few-studies", say("analysis.no-prediction"));
    }
    return UnknownTau.isTold(sample, model)
        ? new Problem("", "prediction-left-out", say("analysis.further-study-left-out"))
        : new Problem("", "too-few-studies", say("analysis.no-unknown-spread"));
  }

  /**
   * The distribution that the interval cuts from: the reference times root(tau^2 + se^2) about the
   * mean; empty if no degrees of freedom are left, or where tau is not taken as known.
   */
  public Optional<Predictive> distribution(WeightedMean mean, double tauSquared) {
    double error =
        standardError == Error.SUM_OF_WEIGHTS
            ? mean.standardError()
            : mean.hartungKnappStandardError();
    return reference
        .distribution(mean.residualDegreesOfFreedom())
        .map(
            about ->
                new Predictive(mean.estimate(), Math.hypot(Math.sqrt(tauSquared), error), about));
  }
}
