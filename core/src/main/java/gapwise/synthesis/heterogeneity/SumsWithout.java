package gapwise.synthesis.heterogeneity;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Sums of a {@link WholeSample} without one of its studies, from the sums of all: each by taking
 * away what the study adds about the mean without it. Where little would remain, so that the
 * subtraction costs digits, it says so.
 */
public final class SumsWithout implements ResidualSums {
  /** What must remain of a sum; the subtraction then costs at most four of sixteen digits. */
  private static final double LEAST_SHARE = 1e-4;

  private final WholeSample whole;
  private final double effect;
  private final double variance;
  private final int omitted;
  private boolean exact = true;

  public SumsWithout(WholeSample whole, int omitted) {
    this.whole = whole;
    this.omitted = omitted;
    this.effect = whole.sample().effect(omitted);
    this.variance = whole.sample().variance(omitted);
  }

  /** Whether no subtraction so far has cost more than four digits. */
  public boolean isExact() {
    return exact;
  }

  /**
   * The sums of the others at one tau squared; names as in {@link SumsOverTau.At}, about their own
   * mean.
   */
  public record Rest(
      double weights, double mean, double squares, double weightSquares, double squaredSquares) {}

  public Rest at(double tauSquared) {
    SumsOverTau.At all = whole.sums().at(tauSquared);
    double weight = 1 / (variance + tauSquared);
    double weights = rest(all.weights(), weight);
    double fromMean = effect - all.mean();
    double shift = weight / weights * fromMean;
    double squares = rest(all.squares(), weight * (all.weights() / weights) * fromMean * fromMean);
    double weightSquares = rest(all.weightSquares(), weight * weight);
    double about =
        all.squaredSquares() + 2 * shift * all.crossed() + shift * shift * all.weightSquares();
    double own = weight * (fromMean + shift);
    return new Rest(weights, all.mean() - shift, squares, weightSquares, rest(about, own * own));
  }

  private double rest(double all, double own) {
    double rest = all - own;
    exact &= rest >= LEAST_SHARE * all;
    return Math.max(0, rest);
  }

  @Override
  public int size() {
    return whole.sample().size() - 1;
  }

  @Override
  public int parameters() {
    return 1;
  }

  @Override
  public double squaresAt(double tauSquared) {
    return at(tauSquared).squares();
  }

  @Override
  public double unweightedSquares() {
    double k = whole.sample().size();
    return rest(whole.unweightedSquares(), k / (k - 1) * effect * effect);
  }

  /** With w v = 1 - t w the sum of P v is k - 1 - t tr P, k counting the others. */
  @Override
  public double momentEstimateAt(double tauSquared) {
    Rest rest = at(tauSquared);
    double trace = rest.weights() - rest.weightSquares() / rest.weights();
    return tauSquared + (rest.squares() - (size() - 1)) / trace;
  }

  @Override
  public double unweightedMomentEstimate() {
    double within = rest(whole.variances(), variance) / size();
    return unweightedSquares() / (size() - 1) - within;
  }

  @Override
  public double inverseVariances() {
    return at(0).weights();
  }

  @Override
  public double smallestVariance() {
    return whole.sample().variance(whole.sample().mostExact());
  }

  @Override
  public double largestVariance() {
    return whole.largestVariances().without(omitted);
  }

  @Override
  public double largestEffect() {
    return whole.largestEffects().without(omitted);
  }

  @Override
  public double logLikelihoodAt(double tauSquared, boolean restricted) {
    Rest rest = at(tauSquared);
    double logs = whole.sums().at(tauSquared).logs() - Math.log(variance + tauSquared);
    double terms = restricted ? size() - 1 : size();
    double twice = terms * Math.log(2 * Math.PI) + rest.squares() + logs;
    return -(restricted ? twice + Math.log(rest.weights()) : twice) / 2;
  }

  @Override
  public TauSquared.Estimate highestLikelihood(boolean restricted) {
    OptionalDouble only = OneHump.of(new WithoutOne(restricted));
    return only.isPresent()
        ? new TauSquared.Estimate(only.getAsDouble(), true)
        : ResidualSums.super.highestLikelihood(restricted);
  }

  /** The likelihood of the others, from the sums of all about the mean of all. */
  private final class WithoutOne implements OneHump.Likelihood {
    private final boolean restricted;

    WithoutOne(boolean restricted) {
      this.restricted = restricted;
    }

    @Override
    public double unweightedSquares() {
      return SumsWithout.this.unweightedSquares();
    }

    @Override
    public double unweightedMomentEstimate() {
      return SumsWithout.this.unweightedMomentEstimate();
    }

    @Override
    public double smallestVariance() {
      return SumsWithout.this.smallestVariance();
    }

    @Override
    public Optional<SlopeParts> partsAt(double tauSquared) {
      SumsOverTau.At all = whole.sums().at(tauSquared);
      double weight = 1 / (variance + tauSquared);
      double square = weight * weight;
      double cube = weight * square;
      double fromMean = effect - all.mean();
      return new SlopeParts.Sums(
              rest(all.weights(), weight),
              -weight * fromMean,
              rest(all.weightSquares(), square),
              all.crossed() - square * fromMean,
              rest(all.squaredSquares(), square * fromMean * fromMean),
              rest(all.weightCubes(), cube),
              all.crossedCubes() - cube * fromMean,
              rest(all.squaredCubes(), cube * fromMean * fromMean))
          .parts(tauSquared, restricted);
    }

    @Override
    public double slopeAt(double tauSquared) {
      return likelihoodSlopeAt(tauSquared, restricted);
    }
  }

  @Override
  public double likelihoodSlopeAt(double tauSquared, boolean restricted) {
    Rest rest = at(tauSquared);
    double trace =
        restricted ? rest.weights() - rest.weightSquares() / rest.weights() : rest.weights();
    return rest.squaredSquares() - trace;
  }
}
