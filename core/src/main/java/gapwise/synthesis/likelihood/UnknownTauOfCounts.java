package gapwise.synthesis.likelihood;

import gapwise.synthesis.heterogeneity.UnknownSpread;
import gapwise.synthesis.regression.DesignMatrix;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The true value of a further study where tau is not taken as known: every tau as likely as any
 * other beforehand, weighed by the likelihood with the mean (and intercepts) at its best for it
 * over the root of the information on the mean there, which is what integrating over a mean of any
 * value gives by Laplace's approximation (Tierney and Kadane, J Am Stat Assoc 1986;81:82). At each
 * tau the value is normal about the best mean, with the variances of that and between studies
 * added.
 */
final class UnknownTauOfCounts {
  /** Every tau takes a search over the mean: more studies take too long. */
  static final int MOST_STUDIES = 1000;

  /** The likelihood falls like tau to the power of 1 less the studies at no limit. */
  private static final int FEWEST_AT_NO_LIMIT = 3;

  private final StudyLikelihoods studies;
  private final LikelihoodFit.Estimate top;
  private final Means means;

  /** Beyond it no study is told from another, and all grows in proportion with tau. */
  private final double far;

  private final TreeMap<Double, Best> found = new TreeMap<>();

  /** The mean that is best for a tau. */
  private record Best(double log, double mean, double variance) {}

  /** How the best mean is found. */
  private interface Means {
    Best at(double tau, double from);
  }

  private UnknownTauOfCounts(StudyLikelihoods studies, LikelihoodFit.Estimate top, int points) {
    this.studies = studies;
    this.top = top;
    this.far = studies.furthest();
    this.means =
        studies.hasIntercepts() ? (tau, from) -> byQuadrature(tau, from, points) : bySearch(points);
  }

  /** Whether studies are enough for the likelihood of tau to have an integral. */
  static boolean isTold(StudyLikelihoods studies) {
    return atNoLimit(studies) >= FEWEST_AT_NO_LIMIT;
  }

  private static long atNoLimit(StudyLikelihoods studies) {
    return IntStream.range(0, studies.size())
        .filter(i -> studies.pull(i) == StudyLikelihoods.Pull.NONE)
        .count();
  }

  /**
   * The distribution; empty if studies are too few, or it would take too long.
   *
   * @param top of their likelihood
   * @param points of the quadrature
   */
  static Optional<UnknownSpread.Further> further(
      StudyLikelihoods studies, LikelihoodFit.Estimate top, int points) {
    return isTold(studies) && studies.size() <= MOST_STUDIES
        ? new UnknownTauOfCounts(studies, top, points).further()
        : Optional.empty();
  }

  private Optional<UnknownSpread.Further> further() {
    double information =
        IntStream.range(0, studies.size()).mapToDouble(studies::startInformation).sum();
    return UnknownSpread.ofOne(
            tau -> best(tau).log(), Math.sqrt(studies.size() / information), top.tau())
        .map(this::further);
  }

  private UnknownSpread.Further further(UnknownSpread spread) {
    List<Double> centres = new ArrayList<>();
    List<Double> deviations = new ArrayList<>();
    for (UnknownSpread.Point point : spread.points()) {
      Best best = best(point.first());
      centres.add(best.mean());
      deviations.add(Math.hypot(Math.sqrt(best.variance()), point.first()));
    }
    return spread.further(numbers(centres), numbers(deviations));
  }

  private static double[] numbers(List<Double> list) {
    return list.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /**
   * Far out a study at no limit has the density of the normal at its value, one at a limit the
   * normal's tail, so that the best mean goes with tau and the weight falls by a power of it.
   */
  private Best best(double tau) {
    if (tau <= far) {
      return searched(tau);
    }
    Best last = searched(far);
    double times = tau / far;
    return new Best(
        last.log() - (atNoLimit(studies) - 1) * Math.log(times),
        top.estimate() + (last.mean() - top.estimate()) * times,
        last.variance() * times * times);
  }

  private Best searched(double tau) {
    Best known = found.get(tau);
    if (known == null) {
      known = means.at(tau, start(tau));
      found.put(tau, known);
    }
    return known;
  }

  /** The best mean of the nearest tau above or below. */
  private double start(double tau) {
    return Stream.of(found.ceilingEntry(tau), found.floorEntry(tau))
        .filter(Objects::nonNull)
        .findFirst()
        .map(near -> near.getValue().mean())
        .orElse(top.estimate());
  }

  /** By lattices that stand still, or few points where few are asked for. */
  private Means bySearch(int points) {
    RegressionSearch search = new RegressionSearch(studies, points);
    LinearMeans.Turned turned = LinearMeans.Turned.of(DesignMatrix.ofOneMean(studies.size()));
    // How often the column of length 1 is taken for a mean of 1.
    double unit = Math.sqrt(studies.size());
    return (tau, from) -> {
      RegressionPlace place = search.at(turned.means(), new double[] {from * unit}, tau).place();
      return weighed(
          place.value, place.times[0] / unit, place.covarianceWithin()[0][0] / studies.size());
    };
  }

  /** By the points asked for, with the intercepts at their best. */
  private Best byQuadrature(double tau, double from, int points) {
    LikelihoodSurface place = LikelihoodSearch.held(studies, points, from, tau);
    return weighed(place.value, place.mean, -1 / place.meanMean);
  }

  private static Best weighed(double log, double mean, double variance) {
    return new Best(log + Math.log(variance) / 2, mean, variance);
  }
}
