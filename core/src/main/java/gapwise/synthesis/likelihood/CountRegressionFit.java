package gapwise.synthesis.likelihood;

import static gapwise.sentence.Sentences.say;

import gapwise.effect.Interval;
import gapwise.effect.StudyData;
import gapwise.numeric.ReferenceDistribution;
import gapwise.problem.Problem;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.pooling.Predictive;
import gapwise.synthesis.regression.Coefficient;
import gapwise.synthesis.regression.DesignMatrix;
import gapwise.synthesis.regression.Predicted;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A fitted {@link CountRegression}. Limits and tests are those of the profile likelihood, its
 * signed root against the normal distribution or Student's t on k - p; beyond {@link
 * #MOST_PROFILED} studies those of the information at the top, which take no further fits. Not for
 * use by several threads at once.
 */
public final class CountRegressionFit implements CountRegression {
  /** A profile takes some dozens of fits for each limit. */
  public static final int MOST_PROFILED = 1000;

  /** What was asked of, studies that say nothing among it. */
  record Counts(
      ExactLikelihood.Model model, List<? extends StudyData> studies, DesignMatrix design) {}

  private final Counts counts;
  private final DesignMatrix design;
  private final LinearMeans.Turned turned;
  private final RegressionSearch search;
  private final RegressionSearch.Top top;
  private final LikelihoodLimits limits;
  private final ReferenceDistribution reference;

  /** Told when they are first asked for, since a test needs none. */
  private List<Coefficient> coefficients = List.of();

  private final boolean falls;
  private boolean withoutLimit;

  /**
   * @param falls whether the likelihood falls without end along every coefficient
   */
  CountRegressionFit(
      Counts counts,
      DesignMatrix design,
      LinearMeans.Turned turned,
      RegressionSearch search,
      RegressionSearch.Top top,
      LikelihoodLimits limits,
      boolean falls) {
    this.counts = counts;
    this.design = design;
    this.turned = turned;
    this.search = search;
    this.top = top;
    this.limits = limits;
    this.falls = falls;
    this.withoutLimit = !falls;
    this.reference =
        limits.studentT()
            ? ReferenceDistribution.studentT(residualDegreesOfFreedom())
            : ReferenceDistribution.normal();
  }

  private int residualDegreesOfFreedom() {
    return design.rows() - design.columns();
  }

  /** Studies that say something, k. */
  public int studies() {
    return design.rows();
  }

  /** One for each term. */
  public List<Coefficient> coefficients() {
    if (coefficients.isEmpty()) {
      List<Coefficient> told = new ArrayList<>();
      for (int j = 0; j < design.columns(); j++) {
        double[] one = new double[design.columns()];
        one[j] = 1;
        told.add(new Coefficient(design.terms().get(j), value(one)));
      }
      coefficients = List.copyOf(told);
    }
    return coefficients;
  }

  /** Standard deviation of true values about what the moderators explain, at least 0. */
  public double tau() {
    return top.place().tau;
  }

  /** With all constants. */
  public double logLikelihood() {
    return top.value();
  }

  /** Whether the search settled. */
  public boolean converged() {
    return top.settled();
  }

  /** What a reader must know. */
  public List<Problem> warnings() {
    List<Problem> warnings = ExactLikelihood.warnings(LikelihoodFit.Points.ENOUGH, top.settled());
    if (tau() == 0) {
      warnings.add(
          0,
          new Problem(
              "",
              "between-study-variance-at-zero",
              say("analysis.residual-likelihood-variance-at-zero")));
    }
    coefficients();
    if (withoutLimit) {
      warnings.add(new Problem("", "profile-without-limit", say("analysis.profile-without-limit")));
    }
    return warnings;
  }

  /** Whether the profile of a sum told so far stays too high to set a limit to it. */
  public boolean isWithoutLimit() {
    return falls && withoutLimit;
  }

  /** A sum of coefficients with its limits and its test against 0. */
  private PooledMean value(double[] sum) {
    double[] direction = turned.carried(sum);
    double length = length(direction);
    if (length == 0) {
      return new PooledMean(
          0,
          0,
          new Interval(0, 0),
          OptionalDouble.empty(),
          reference.wholeDegreesOfFreedom(),
          OptionalDouble.empty());
    }
    for (int j = 0; j < direction.length; j++) {
      direction[j] /= length;
    }
    RegressionProfile profile = new RegressionProfile(search, turned.means(), top, direction);
    double estimate = length * profile.best();
    double error = length * profile.error();
    if (studies() > MOST_PROFILED || !falls) {
      return PooledMean.symmetric(estimate, error, reference, limits.level());
    }
    double root = -profile.root(0);
    return new PooledMean(
        estimate,
        error,
        new Interval(limit(profile, length, -1), limit(profile, length, 1)),
        OptionalDouble.of(root),
        reference.wholeDegreesOfFreedom(),
        OptionalDouble.of(reference.twoSidedP(root)));
  }

  private double limit(RegressionProfile profile, double length, int way) {
    RegressionProfile.Limit found = profile.limit(way * reference.multiplier(limits.level()));
    withoutLimit |= !found.reached();
    return length * found.value();
  }

  private static double length(double[] numbers) {
    double most = 0;
    for (double one : numbers) {
      most = Math.max(most, Math.abs(one));
    }
    if (most == 0) {
      return 0;
    }
    double sum = 0;
    for (double one : numbers) {
      sum += one / most * (one / most);
    }
    return most * Math.sqrt(sum);
  }

  /** Whether all terms but the intercept are 0; empty if there are none. */
  public Optional<LikelihoodRatioTest> moderatorTest() {
    return test(
        design.terms().stream().filter(term -> !term.equals(DesignMatrix.INTERCEPT)).toList());
  }

  /**
   * Whether some terms are all 0.
   *
   * @param terms not all that there are
   * @return empty without terms
   */
  public Optional<LikelihoodRatioTest> test(List<String> terms) {
    if (terms.isEmpty()) {
      return Optional.empty();
    }
    RegressionSearch.Top without = search.top(LinearMeans.Turned.of(design.without(terms)).means());
    return Optional.of(
        LikelihoodRatioTest.of(
            top.value() - without.value(),
            terms.size(),
            limits.studentT() ? residualDegreesOfFreedom() : 0));
  }

  /**
   * The mean expected at given values of the moderators, and where the true value of a further
   * study would lie: mean +- multiple root(tau^2 + se^2), as without moderators, with k - p + 1 for
   * k.
   *
   * @param row a number for each term
   */
  public Predicted predicted(double[] row) {
    PooledMean mean = value(row);
    Optional<Predictive> further =
        limits
            .prediction()
            .flatMap(one -> one.distribution(residualDegreesOfFreedom()))
            .map(
                about ->
                    new Predictive(
                        mean.estimate(), Math.hypot(tau(), mean.standardError()), about));
    return new Predicted(mean, further.map(one -> one.interval(limits.level())), further);
  }

  /** As {@link ExactLikelihood#shares}, each study at what its moderators give. */
  public List<Double> shares() {
    List<Double> centres = new ArrayList<>();
    for (int i = 0; i < counts.design().rows(); i++) {
      double centre = 0;
      for (int j = 0; j < counts.design().columns(); j++) {
        centre += counts.design().value(i, j) * coefficients().get(j).value().estimate();
      }
      centres.add(centre);
    }
    return ExactLikelihood.shares(counts.model(), counts.studies(), centres, tau());
  }
}
