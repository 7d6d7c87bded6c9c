package gapwise.synthesis.likelihood;

import gapwise.numeric.BracketedRoot;
import gapwise.numeric.ScannedMaximum;
import gapwise.numeric.StepSums;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Events among patients whose chance differs between studies by a beta distribution, as an urn:
 * with the odds of the correlation phi = rho/(1 - rho), patient j + 1 of a study with e events so
 * far has the event with probability (mu + e phi)/(1 + j phi) (Skellam, J R Stat Soc B 1948;10:257;
 * Griffiths, Biometrics 1973;29:637, both from memory). Hence
 *
 * <p>log L = sum log(mu + j phi) over j below the events, + sum log(1 - mu + j phi) over j below
 * the others, - sum log(1 + j phi) over j below all, + log of the binomial coefficient, of every
 * study, which at phi = 0 is the binomial likelihood without a limit to be taken. Searched over phi
 * with the best mu for each, where the score of mu falls through 0 once.
 */
final class BetaBinomialLikelihood {
  /** No pooled share of counts that a double holds has a logit further away. */
  private static final double FURTHEST_LOGIT = 60;

  /** Of phi; at a correlation nearer to 1 nothing is told. */
  private static final double LARGEST_ODDS = 1e12;

  private final StepSums events;
  private final StepSums others;
  private final StepSums totals;
  private final double constant;

  private BetaBinomialLikelihood(double[] events, double[] totals) {
    double[] rest =
        IntStream.range(0, events.length).mapToDouble(i -> totals[i] - events[i]).toArray();
    this.events = StepSums.of(events);
    this.others = StepSums.of(rest);
    this.totals = StepSums.of(totals);
    // Sorted, so that the order of studies does not touch the last digit.
    constant =
        IntStream.range(0, events.length)
            .mapToDouble(i -> BinomialLikelihoods.logChoose(totals[i], events[i]))
            .sorted()
            .sum();
  }

  /**
   * Fits.
   *
   * @param events each from 0 to its total, whole
   * @param totals each above 0, as many as events
   */
  static BetaBinomialFit fit(double[] events, double[] totals) {
    boolean none = Arrays.stream(events).allMatch(e -> e == 0);
    boolean all = IntStream.range(0, events.length).allMatch(i -> events[i] == totals[i]);
    boolean ends =
        IntStream.range(0, events.length).allMatch(i -> events[i] == 0 || events[i] == totals[i]);
    boolean paired = Arrays.stream(totals).anyMatch(n -> n > 1);
    if (events.length == 0) {
      return new BetaBinomialFit.NoMaximum(LikelihoodFit.Reason.NO_INFORMATION);
    }
    if (none || all) {
      return new BetaBinomialFit.NoMaximum(
          none ? LikelihoodFit.Reason.MEAN_FALLS : LikelihoodFit.Reason.MEAN_RISES);
    }
    if (ends && paired && events.length > 1) {
      return new BetaBinomialFit.NoMaximum(LikelihoodFit.Reason.SPREAD_RISES);
    }
    return new BetaBinomialLikelihood(events, totals).highest(paired && events.length > 1);
  }

  private BetaBinomialFit highest(boolean spread) {
    if (!spread) {
      return top(0, true);
    }
    double upper = 1;
    while (slope(upper) > 0 && upper < LARGEST_ODDS) {
      upper *= 4;
    }
    if (slope(upper) > 0) {
      return new BetaBinomialFit.NoMaximum(LikelihoodFit.Reason.OUT_OF_RANGE);
    }
    ScannedMaximum.Maximum best =
        ScannedMaximum.find(phi -> value(phi, logit(phi)), this::slope, upper);
    return top(best.place(), best.converged());
  }

  /** The best logit of mu at some phi. */
  private double logit(double phi) {
    return BracketedRoot.find(
            logit -> {
              double mu = share(logit);
              double rest = share(-logit);
              return events.of(j -> 1 / (mu + j * phi)) - others.of(j -> 1 / (rest + j * phi));
            },
            -FURTHEST_LOGIT,
            FURTHEST_LOGIT)
        .value();
  }

  /** How the likelihood with the best mu changes with phi: as if mu stood still. */
  private double slope(double phi) {
    double logit = logit(phi);
    double mu = share(logit);
    double rest = share(-logit);
    return events.of(j -> j / (mu + j * phi))
        + others.of(j -> j / (rest + j * phi))
        - totals.of(j -> j / (1 + j * phi));
  }

  private double value(double phi, double logit) {
    double mu = share(logit);
    double rest = share(-logit);
    return constant
        + events.of(j -> Math.log(mu + j * phi))
        + others.of(j -> Math.log(rest + j * phi))
        - totals.of(j -> Math.log1p(j * phi));
  }

  private BetaBinomialFit top(double phi, boolean converged) {
    double logit = logit(phi);
    double mu = share(logit);
    double rest = share(-logit);
    double bend = mu * rest;
    double meanMean =
        (events.of(j -> 1 / squared(mu + j * phi)) + others.of(j -> 1 / squared(rest + j * phi)))
            * bend
            * bend;
    double information = meanMean;
    boolean proper = true;
    if (phi > 0) {
      double meanOdds =
          (events.of(j -> j / squared(mu + j * phi)) - others.of(j -> j / squared(rest + j * phi)))
              * bend;
      double oddsOdds =
          events.of(j -> squared(j / (mu + j * phi)))
              + others.of(j -> squared(j / (rest + j * phi)))
              - totals.of(j -> squared(j / (1 + j * phi)));
      double left = meanMean - meanOdds / oddsOdds * meanOdds;
      proper = oddsOdds > 0 && left > 0;
      information = proper ? left : meanMean;
    }
    double error = 1 / Math.sqrt(information);
    double value = value(phi, logit);
    if (!(error > 0) || !Double.isFinite(error) || !Double.isFinite(value)) {
      return new BetaBinomialFit.NoMaximum(LikelihoodFit.Reason.OUT_OF_RANGE);
    }
    return new BetaBinomialFit.Estimate(logit, error, phi / (1 + phi), value, converged && proper);
  }

  private static double share(double logit) {
    return 1 / (1 + Math.exp(-logit));
  }

  private static double squared(double x) {
    return x * x;
  }
}
