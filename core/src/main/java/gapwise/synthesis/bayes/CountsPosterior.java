package gapwise.synthesis.bayes;

import gapwise.numeric.Continuous;
import gapwise.synthesis.likelihood.MarginalLikelihood;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * The posterior of random effects of counts by their exact likelihood (binomial, Poisson, or two
 * groups given their margins): true values are normal on the analysis scale about a centre, with a
 * prior on the centre and one on tau. Worked out by quadrature, nothing is sampled: over tau by
 * rules of Gauss and Legendre, at each of their points over the centre likewise, and for each study
 * over its true value. The same data give the same bytes.
 *
 * <p>The model is that of Smith, Spiegelhalter and Thomas, Stat Med 1995;14:2685, and, for few
 * studies of rare events with these priors, of Günhan, Röver and Friede, Res Synth Methods
 * 2020;11:74 (both from memory).
 */
public final class CountsPosterior {
  /** What is less cannot be seen in any number that is told. */
  private static final double LEAST_SHARE = 1e-10;

  /** Ten digits, which is more than the quadrature has. */
  private static final double RELATIVE = 1e-10;

  private static final double ABSOLUTE = 1e-10;

  private static final int MOST_STEPS = 1000;

  private final Groups groups;
  private final SmoothDensity spread;
  private final List<Part> parts = new ArrayList<>();
  private final TauPrior tauPrior;

  /** What holds at one tau, with the share of the posterior that it stands for. */
  private record Part(double share, double tau, SmoothDensity centre) {}

  /** The studies, and those of other groups, with all that hangs on no prior of tau. */
  private record Groups(
      FirstLook look, SpreadScale scale, CentresByTau centres, List<CentresByTau> others) {
    /** The logarithm of the density of a place of tau. */
    double log(TauPrior prior, double place) {
      double tau = scale.tau(place);
      double sum = prior.logDensity(tau) + scale.logSlope(place);
      for (CentresByTau other : others) {
        sum += other.at(place, tau).logMass();
      }
      return sum + centres.at(place, tau).logMass();
    }

    void rest() {
      centres.rest();
      others.forEach(CentresByTau::rest);
    }
  }

  private CountsPosterior(Groups groups, SmoothDensity spread, TauPrior prior) {
    this.groups = groups;
    this.spread = spread;
    this.tauPrior = prior;
    spread.visit(
        (share, place) -> {
          if (share > LEAST_SHARE) {
            parts.add(new Part(share, groups.scale.tau(place), groups.centres.known(place)));
          }
        });
  }

  /**
   * Works it out.
   *
   * @param likelihood of at least one study
   * @param tau half-normal or uniform; others have tails in which the likelihood of counts no
   *     longer falls
   * @return empty if arithmetic does not reach it
   */
  public static Optional<CountsPosterior> of(
      MarginalLikelihood likelihood, CentrePrior centre, TauPrior tau) {
    return of(likelihood, List.of(), centre, tau);
  }

  /**
   * Works it out where other groups of studies, each about a centre of its own, share tau.
   *
   * @param others that tell of tau too
   */
  public static Optional<CountsPosterior> of(
      MarginalLikelihood likelihood,
      List<MarginalLikelihood> others,
      CentrePrior centre,
      TauPrior tau) {
    checkTaken(tau);
    FirstLook look = new FirstLook(likelihood);
    if (!look.isWithinArithmetic()) {
      return Optional.empty();
    }
    Groups groups =
        new Groups(
            look,
            new SpreadScale(look.typicalError()),
            new CentresByTau(likelihood, centre, look),
            others.stream().map(one -> new CentresByTau(one, centre, new FirstLook(one))).toList());
    return found(groups, tau, Optional.empty());
  }

  /**
   * The same under another prior of tau, for which most of what is known serves again. Not for
   * several threads at once.
   *
   * @return empty if arithmetic does not reach it
   */
  public Optional<CountsPosterior> under(TauPrior tau) {
    checkTaken(tau);
    boolean sameReach = tau.from() == tauPrior.from() && tau.to() == tauPrior.to();
    return found(groups, tau, sameReach ? Optional.of(spread) : Optional.empty());
  }

  private static Optional<CountsPosterior> found(
      Groups groups, TauPrior tau, Optional<SmoothDensity> similar) {
    try {
      return Optional.of(new CountsPosterior(groups, spread(groups, tau, similar), tau));
    } catch (SmoothDensity.OutOfRangeException outOfRange) {
      return Optional.empty();
    } finally {
      groups.rest();
    }
  }

  private static SmoothDensity spread(
      Groups groups, TauPrior tau, Optional<SmoothDensity> similar) {
    SpreadScale scale = groups.scale;
    Stretch.Range support = scale.places(new Stretch.Range(tau.from(), tau.to()));
    LogDensity log = LogDensity.ofEach(place -> groups.log(tau, place));
    List<Double> edges =
        similar
            .flatMap(one -> one.edgesFor(log))
            .orElseGet(
                () ->
                    SpreadSearch.edges(
                        place -> groups.log(tau, place),
                        scale.places(groups.look.tau(tau)),
                        scale.places(groups.look.possible(tau))));
    return SmoothDensity.of(log, edges, support.from(), support.to());
  }

  /** Whether a prior of tau can be had with counts. */
  public static boolean isTaken(TauPrior tau) {
    return tau instanceof TauPrior.HalfNormal || tau instanceof TauPrior.Uniform;
  }

  private static void checkTaken(TauPrior tau) {
    if (!isTaken(tau)) {
      throw new IllegalArgumentException("no prior of tau for counts: " + tau);
    }
  }

  /** Of the centre: the true value that half of all studies exceed. */
  public Marginal centre() {
    double mean = parts.stream().mapToDouble(p -> p.share * p.centre.mean()).sum();
    double square =
        parts.stream()
            .mapToDouble(p -> p.share * (p.centre.variance() + Math.pow(p.centre.mean() - mean, 2)))
            .sum();
    return Marginal.of(
        new Mixture(from(0), to(0), (i, x) -> part(i).centre.below(x)),
        OptionalDouble.of(mean),
        OptionalDouble.of(Math.sqrt(square)));
  }

  /** Of tau. */
  public Marginal tau() {
    double mean = parts.stream().mapToDouble(p -> p.share * p.tau).sum();
    double square = parts.stream().mapToDouble(p -> p.share * Math.pow(p.tau - mean, 2)).sum();
    return Marginal.of(
        groups.scale.of(spread),
        tauPrior.from(),
        tauPrior.to(),
        OptionalDouble.of(mean),
        OptionalDouble.of(Math.sqrt(square)));
  }

  /** Of the true value of a further study. */
  public Marginal predictive() {
    double mean = parts.stream().mapToDouble(p -> p.share * p.centre.mean()).sum();
    double square =
        parts.stream()
            .mapToDouble(
                p ->
                    p.share
                        * (p.tau * p.tau
                            + p.centre.variance()
                            + Math.pow(p.centre.mean() - mean, 2)))
            .sum();
    List<FurtherStudy> further =
        parts.stream().map(part -> new FurtherStudy(part.centre, part.tau)).toList();
    double reach = FirstLook.REACH * Math.sqrt(square);
    SmoothDensity density =
        SmoothDensity.of(
            LogDensity.ofEach(x -> Math.log(density(further, x))),
            List.of(mean - reach, mean, mean + reach),
            Double.NEGATIVE_INFINITY,
            Double.POSITIVE_INFINITY);
    return Marginal.of(density, OptionalDouble.of(mean), OptionalDouble.of(Math.sqrt(square)));
  }

  private double density(List<FurtherStudy> further, double x) {
    double sum = 0;
    for (int i = 0; i < further.size(); i++) {
      sum += part(i).share * further.get(i).density(x);
    }
    return sum;
  }

  /**
   * Of the mean over all studies of what their true values show, on the scale of the link.
   *
   * @param average that mean at a centre and a tau; rises with the centre
   */
  public Marginal average(AverageOver average) {
    List<CarriedCentre> carried =
        parts.stream().map(part -> new CarriedCentre(part.centre, part.tau, average)).toList();
    double from = carried.stream().mapToDouble(CarriedCentre::from).min().orElseThrow();
    double to = carried.stream().mapToDouble(CarriedCentre::to).max().orElseThrow();
    return Marginal.of(
        new Mixture(from, to, (i, x) -> part(i).centre.below(carried.get(i).back(x))),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  private Part part(int i) {
    return parts.get(i);
  }

  /** A mean over studies on the scale of the link, given centre and spread. */
  @FunctionalInterface
  public interface AverageOver {
    double of(double centre, double tau);
  }

  private double from(double taus) {
    return parts.stream().mapToDouble(p -> p.centre.from() - taus * p.tau).min().orElseThrow();
  }

  private double to(double taus) {
    return parts.stream().mapToDouble(p -> p.centre.to() + taus * p.tau).max().orElseThrow();
  }

  private interface Below {
    double at(int part, double x);
  }

  /** What holds at each tau, weighed by its posterior. */
  private final class Mixture implements Continuous {
    private final double from;
    private final double to;
    private final Below below;

    Mixture(double from, double to, Below below) {
      this.from = from;
      this.to = to;
      this.below = below;
    }

    @Override
    public double below(double x) {
      double sum = 0;
      for (int i = 0; i < parts.size(); i++) {
        sum += part(i).share * below.at(i, x);
      }
      return Math.max(0, Math.min(1, sum));
    }

    @Override
    public double above(double x) {
      return 1 - below(x);
    }

    @Override
    public double quantile(double probability) {
      return new BrentSolver(RELATIVE, ABSOLUTE)
          .solve(MOST_STEPS, x -> below(x) - probability, from, to);
    }

    @Override
    public double logDensity(double x) {
      double step = 1e-4 * (to - from);
      return Math.log(Math.max(0, below(x + step) - below(x - step)) / (2 * step));
    }
  }
}
