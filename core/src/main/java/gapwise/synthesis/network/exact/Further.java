package gapwise.synthesis.network.exact;

import gapwise.numeric.CholeskyFactor;
import gapwise.synthesis.heterogeneity.UnknownSpread;
import gapwise.synthesis.network.NetworkPredictions;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * Where differences would lie in a further study, tau not being known: every tau is as likely as
 * any other beforehand and weighs by its likelihood, the effects integrated out by Laplace's method
 * (the likelihood at their best, over the root of the determinant of their information); at each
 * tau a difference is normal about its effect there, with the variances of the effect and between
 * studies added.
 *
 * <p>The network is fitted at some twenty values of tau, evenly spread in asinh(tau / scale), and
 * cubic splines join them: even about 0, and nearly straight at the far end, as natural ones are.
 */
final class Further {
  /**
   * Beyond this spread the likelihood is taken to fall by the power of tau to which it tends, and
   * effects and their errors to grow with tau.
   */
  private static final double FAR = Climb.WIDEST;

  /** Values of tau that the network is fitted at, 0 not counted. */
  private static final int FITS = 24;

  /** Weights of values of tau need no more digits than this. */
  private static final double FINE = 1e-5;

  private final int power;
  private final double scale;
  private final List<Given> known = new ArrayList<>();
  private final PolynomialSplineFunction log;

  private record Given(double[] point, double[][] covariance, double log) {}

  Further(ExactFit fit, int power) {
    this.power = power;
    double[] point = fit.top().point().clone();
    this.scale = 1 / Math.sqrt(fit.likelihood().precision(point));
    // At the widest spread the integrals are hardest.
    point[point.length - 1] = FAR;
    CountLikelihood likelihood = fit.likelihood().refinedAt(point, FINE).likelihood();
    double[] start = fit.top().point();
    for (int i = 0; i <= FITS; i++) {
      known.add(given(likelihood, start, tau(i)));
      start = known.get(i).point();
    }
    this.log = spline(Given::log);
  }

  /**
   * The differences; empty where the weights cannot be summed.
   *
   * @param power by which the likelihood falls as tau grows, 2 or more
   */
  static Optional<NetworkPredictions> of(ExactFit fit, Pieces pieces, int power, double level) {
    Further further = new Further(fit, power);
    return UnknownSpread.ofOne(further::log, further.scale, fit.top().tau())
        .map(spread -> further.predictions(spread, pieces, level));
  }

  private double end() {
    return asinh(FAR / scale);
  }

  private double tau(int place) {
    return place == FITS ? FAR : scale * Math.sinh(place * end() / FITS);
  }

  private static double asinh(double x) {
    return Math.log(x + Math.sqrt(x * x + 1));
  }

  private static Given given(CountLikelihood likelihood, double[] start, double tau) {
    Climb.Top top = new Climb(likelihood).withTau(start, tau);
    int p = likelihood.effects();
    CholeskyFactor information =
        CholeskyFactor.of(Climb.bends(Climb.unit(p + 1, p), top.local().bends));
    double log = top.value() - information.logDeterminant() / 2;
    return new Given(top.point(), information.inverse(), log);
  }

  private PolynomialSplineFunction spline(ToDoubleFunction<Given> of) {
    double[] places = new double[2 * FITS + 1];
    double[] values = new double[places.length];
    for (int i = -FITS; i <= FITS; i++) {
      places[FITS + i] = i * end() / FITS;
      values[FITS + i] = of.applyAsDouble(known.get(Math.abs(i)));
    }
    return new SplineInterpolator().interpolate(places, values);
  }

  private double at(PolynomialSplineFunction spline, double tau) {
    double[] places = spline.getKnots();
    return spline.value(Math.min(places[places.length - 1], asinh(tau / scale)));
  }

  /** The logarithm of what a tau weighs by, but for a constant. */
  double log(double tau) {
    return at(log, tau) - power * Math.log(Math.max(1, tau / FAR));
  }

  private NetworkPredictions predictions(UnknownSpread spread, Pieces pieces, double level) {
    List<UnknownSpread.Point> points = spread.points();
    return (one, other) -> {
      double[] sum = pieces.contrast(one, other);
      PolynomialSplineFunction mean = spline(given -> ExactFit.value(given.point(), sum));
      PolynomialSplineFunction error =
          spline(given -> Math.sqrt(ExactFit.variance(given.covariance(), sum)));
      double[] means = new double[points.size()];
      double[] deviations = new double[points.size()];
      for (int i = 0; i < means.length; i++) {
        double tau = points.get(i).first();
        double beyond = Math.max(1, tau / FAR);
        means[i] = beyond * at(mean, tau);
        deviations[i] = Math.hypot(beyond * at(error, tau), tau);
      }
      return spread.limits(means, deviations, level);
    };
  }
}
