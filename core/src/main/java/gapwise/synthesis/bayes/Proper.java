package gapwise.synthesis.bayes;

import static gapwise.sentence.Sentences.say;

import gapwise.budget.Work;
import gapwise.numeric.NormalMixture;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The posterior of random effects: y_i ~ N(theta_i, v_i), theta_i ~ N(mean, tau^2), variances v_i
 * known. Given tau everything is normal in closed form; what is told of the mean, a further study
 * and the true effects is the mixture of these normal distributions over the posterior of tau
 * (Gelman and others, Bayesian Data Analysis, section 5.4; Higgins, Thompson and Spiegelhalter, J R
 * Stat Soc A 2009;172:137).
 */
public final class Proper implements Posterior {
  private final TauDensity density;
  private final TauPosterior tau;
  private final double[] shares;
  private final double[] taus;
  private final double[] means;
  private final double[] deviations;

  /**
   * A posterior.
   *
   * @param panels that hold the mass of the density
   */
  Proper(TauDensity density, List<Panel> panels) {
    this.density = density;
    tau = new TauPosterior(density, panels);
    shares = new double[tau.nodes()];
    taus = new double[shares.length];
    means = new double[shares.length];
    deviations = new double[shares.length];
    tau.visit(
        (node, share, value, at) -> {
          shares[node] = share;
          taus[node] = value;
          means[node] = at.mean();
          deviations[node] = at.sd();
        });
  }

  /** Of the mean of all true effects. */
  public Marginal mean() {
    int moments = priors().mean().isFlat() ? priors().highestMoment(density.size()) : 2;
    return Marginal.of(new NormalMixture(shares, means, deviations), density.origin(), moments);
  }

  /** Of tau; empty if it is the prior. */
  public Optional<Marginal> tau() {
    return isPrior()
        ? Optional.empty()
        : Optional.of(Marginal.of(tau, priors(), priors().highestMoment(density.size())));
  }

  /** Of the true effect of a further study; empty if tau is known from the prior alone. */
  public Optional<Marginal> predictive() {
    if (isPrior()) {
      return Optional.empty();
    }
    double[] wider = new double[deviations.length];
    for (int j = 0; j < wider.length; j++) {
      wider[j] = Math.hypot(deviations[j], taus[j]);
    }
    return Optional.of(
        Marginal.of(
            new NormalMixture(shares, means, wider),
            density.origin(),
            priors().highestMoment(density.size())));
  }

  /**
   * Of the logarithm of the mean over studies of their true values, where effects are logarithms:
   * the mean of a log-normal distribution, mean + tau^2/2 (Aitchison and Brown, The Lognormal
   * Distribution, 1957, equation 2.7, from memory).
   *
   * @return on the log scale
   */
  public Marginal logAverage() {
    double[] raised = new double[means.length];
    for (int j = 0; j < raised.length; j++) {
      raised[j] = means[j] + taus[j] * taus[j] / 2;
    }
    return Marginal.of(
        new NormalMixture(shares, raised, deviations),
        density.origin(),
        priors().highestMomentOfSquare(density.size()));
  }

  /** Of each study's true effect, in the order of the studies. */
  public List<TrueEffect> studies() {
    double[] precisions = new double[taus.length];
    for (int i = 0; i < density.size(); i++) {
      for (int j = 0; j < taus.length; j++) {
        precisions[j] += 1 / (density.variance(i) + taus[j] * taus[j]);
      }
    }
    List<TrueEffect> studies = new ArrayList<>();
    for (int i = 0; i < density.size(); i++) {
      Work.check();
      studies.add(study(i, precisions));
    }
    return studies;
  }

  /**
   * Given tau the true effect is normal about y + b (m - y), b = v/(v + tau^2), with variance (1 -
   * b) v + b^2 s^2, where the mean is normal about m with standard deviation s.
   */
  private TrueEffect study(int i, double[] precisions) {
    double v = density.variance(i);
    double y = density.distance(i);
    double weight = 0;
    double drawn = 0;
    double drawnSquared = 0;
    double variance = 0;
    for (int j = 0; j < taus.length; j++) {
      double square = taus[j] * taus[j];
      double b = v / (v + square);
      double off = b * (means[j] - y);
      double pulled = b * deviations[j];
      weight += shares[j] / (v + square) / precisions[j];
      drawn += shares[j] * off;
      drawnSquared += shares[j] * off * off;
      variance += shares[j] * (b * square + pulled * pulled);
    }
    double spread = Math.max(0, drawnSquared - drawn * drawn);
    return new TrueEffect(density.origin() + y + drawn, Math.sqrt(variance + spread), weight);
  }

  /** What a reader must know. */
  public List<Problem> warnings() {
    List<Problem> warnings = new ArrayList<>();
    if (isPrior()) {
      warnings.add(new Problem("", "posterior-is-prior", say("analysis.posterior-is-prior")));
    }
    int moments = priors().highestMoment(density.size());
    if (moments < 2) {
      warnings.add(
          new Problem(
              "",
              "infinite-moment",
              say(moments == 0 ? "analysis.no-means" : "analysis.no-deviations")));
    }
    return warnings;
  }

  private boolean isPrior() {
    return density.size() == 1 && priors().mean().isFlat();
  }

  private Priors priors() {
    return density.priors();
  }
}
