package gapwise.synthesis.likelihood;

import gapwise.effect.ArmCounts;
import gapwise.effect.ArmRate;
import gapwise.effect.StudyData;
import gapwise.effect.TwoByTwo;
import gapwise.effect.TwoRates;
import java.util.Arrays;
import java.util.List;

/**
 * The log likelihoods of some studies, each a concave function of its own true value theta and, in
 * models with an intercept a study, of that intercept g. Derivatives are written into an array at
 * the places named here, since they are asked for a million times.
 */
abstract class StudyLikelihoods {
  static final int VALUE = 0;

  /** First derivative by theta. */
  static final int T = 1;

  static final int TT = 2;

  /** First derivative by the intercept. */
  static final int G = 3;

  static final int TG = 4;
  static final int GG = 5;
  static final int TTT = 6;
  static final int TTTT = 7;
  static final int TTG = 8;
  static final int TTTG = 9;
  static final int TGG = 10;
  static final int TTGG = 11;

  /** Length of the array of derivatives. */
  static final int LENGTH = 12;

  /** Which way a study pushes the mean if nothing holds it. */
  enum Pull {
    /** To a finite value. */
    NONE,
    DOWN,
    UP
  }

  /**
   * Counts of one kind, without intercepts.
   *
   * @param data that each say something of what is pooled
   */
  static StudyLikelihoods of(ExactLikelihood.Model model, List<? extends StudyData> data) {
    return switch (model) {
      case PROPORTION -> {
        List<ArmCounts> arms = data.stream().map(ArmCounts.class::cast).toList();
        yield new BinomialLikelihoods(
            arms.stream().mapToDouble(ArmCounts::events).toArray(),
            arms.stream().mapToDouble(ArmCounts::total).toArray(),
            new double[arms.size()]);
      }
      case RATE -> {
        List<ArmRate> arms = data.stream().map(ArmRate.class::cast).toList();
        yield new PoissonLikelihoods(
            arms.stream().mapToDouble(ArmRate::events).toArray(),
            arms.stream().mapToDouble(ArmRate::personTime).toArray());
      }
      case RATE_RATIO -> RateRatioNormal.given(data.stream().map(TwoRates.class::cast).toList());
      case ODDS_RATIO_CONDITIONAL ->
          FourfoldNormal.given(data.stream().map(TwoByTwo.class::cast).toList());
      default ->
          throw new IllegalArgumentException(
              model + " has an intercept a study, which neither priors nor moderators go with");
    };
  }

  /** Number of studies. */
  abstract int size();

  /** Whether each study has an intercept of its own. */
  boolean hasIntercepts() {
    return false;
  }

  /** First and second derivative by theta; the rest of the array is left as it may be. */
  void slopes(int study, double theta, double intercept, double[] d) {
    second(study, theta, intercept, d);
  }

  /** Value and derivatives up to the second. */
  abstract void second(int study, double theta, double intercept, double[] d);

  /**
   * How many studies have the likelihood of each that is the first of its kind; 0 for those that
   * repeat an earlier one, which is worked out with it.
   */
  int[] multiplicities() {
    int[] once = new int[size()];
    Arrays.fill(once, 1);
    return once;
  }

  /** Value and all derivatives. */
  abstract void all(int study, double theta, double intercept, double[] d);

  /** A finite value near the study's own theta. */
  abstract double start(int study);

  /** A value near its information on theta, above 0. */
  abstract double startInformation(int study);

  /** The mean of the studies' own values, weighed by their information. */
  final double startMean() {
    double sum = 0;
    double weights = 0;
    for (int i = 0; i < size(); i++) {
      double weight = startInformation(i);
      sum += weight * start(i);
      weights += weight;
    }
    return sum / weights;
  }

  /** Beyond any spread that the studies' own values could show. */
  final double furthest() {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < size(); i++) {
      low = Math.min(low, start(i));
      high = Math.max(high, start(i));
    }
    return 100 + 10 * (high - low);
  }

  /** A value near the study's intercept. */
  double startIntercept(int study) {
    return 0;
  }

  /** Which way the study pushes the mean. */
  abstract Pull pull(int study);
}
