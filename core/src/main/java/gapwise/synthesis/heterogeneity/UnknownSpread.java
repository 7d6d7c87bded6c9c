package gapwise.synthesis.heterogeneity;

import gapwise.budget.Work;
import gapwise.effect.Interval;
import gapwise.numeric.NormalMixture;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;

/**
 * One or two standard deviations between true values that are not known: points, each with the
 * share that the restricted likelihood gives it where every value is taken as likely as any other
 * beforehand. Where studies are large beside their differences, a further value by one of them is
 * Student's t on two degrees of freedom less than there are studies (Gelman and others, Bayesian
 * Data Analysis, section 3.2, carried to a flat density of the standard deviation), the usual
 * reference; where the likelihood has its top at 0, the shares lie beside it.
 *
 * <p>Idea: with sigma = s exp(u - e^-u) the density of u falls off on both sides, so the trapezium
 * rule on a lattice of u is as exact as its step allows, and each halving of the step doubles the
 * digits (Takahasi and Mori, Publ RIMS 1974;9:721). Points are taken from the top outwards, always
 * the highest next, until only negligible ones are left, so that no region is named beforehand.
 */
public final class UnknownSpread {
  /** With more rows the likelihood takes too long at so many points. */
  public static final int MOST_ROWS = 5000;

  /** A share of e^-24 is lost against the digits that are told. */
  private static final double CUT = 24;

  private static final double FIRST_STEP = 0.5;

  private static final int MOST_HALVINGS = 8;

  private static final int MOST_POINTS = 60_000;

  /** Mass and mean of two steps agree so; the finer one then errs by about the square of it. */
  private static final double SETTLED = 1e-4;

  /** A top at 0 is looked for from here: 8e-5 of s. */
  private static final double LOWEST_START = -2;

  private final List<Point> points;

  private UnknownSpread(List<Point> points) {
    this.points = List.copyOf(points);
  }

  /**
   * Values of the standard deviations.
   *
   * @param share of all points, above 0
   * @param first at least 0
   * @param second at least 0; 0 where there is one only
   */
  public record Point(double share, double first, double second) {}

  /**
   * One standard deviation; empty if its density cannot be summed.
   *
   * @param log its restricted likelihood, which must fall faster than 1/sigma
   * @param scale about the size of standard errors, above 0
   * @param top where the likelihood is highest
   */
  public static Optional<UnknownSpread> ofOne(DoubleUnaryOperator log, double scale, double top) {
    return new Lattice((one, none) -> log.applyAsDouble(one), scale, false).settled(top, 0);
  }

  /**
   * Two of them; empty if their density cannot be summed.
   *
   * @param log their restricted likelihood, which must fall faster than 1/sigma along either
   * @param scale about the size of standard errors, above 0
   * @param first where the likelihood is highest
   * @param second the same
   */
  public static Optional<UnknownSpread> ofTwo(
      DoubleBinaryOperator log, double scale, double first, double second) {
    return new Lattice(log, scale, true).settled(first, second);
  }

  /** The points. */
  public List<Point> points() {
    return points;
  }

  /**
   * Equal-tailed limits of a value that is normal at each point.
   *
   * @param means at each point
   * @param deviations at each point, above 0
   */
  public Interval limits(double[] means, double[] deviations, double level) {
    return further(means, deviations).interval(level);
  }

  /**
   * A value that is normal at each point.
   *
   * @param means at each point
   * @param deviations at each point, above 0
   */
  public Further further(double[] means, double[] deviations) {
    double origin = means[0];
    return new Further(
        origin,
        new NormalMixture(
            points.stream().mapToDouble(Point::share).toArray(),
            DoubleStream.of(means).map(mean -> mean - origin).toArray(),
            deviations));
  }

  /**
   * The distribution of a value over all points.
   *
   * @param origin from where {@code about} is counted
   */
  public record Further(double origin, NormalMixture about) {
    /** Equal-tailed limits. */
    public Interval interval(double level) {
      return new Interval(
          origin + about.quantile((1 - level) / 2), origin + about.quantile((1 + level) / 2));
    }

    /** The probability of a value below another. */
    public double below(double value) {
      return about.below(value - origin);
    }
  }

  /** Points of u one step apart. */
  private record Lattice(DoubleBinaryOperator log, double scale, boolean two) {
    private record Place(int first, int second) {}

    private record Height(Place place, double first, double second, double log) {}

    Optional<UnknownSpread> settled(double first, double second) {
      double step = FIRST_STEP;
      Sum before = new Sum(List.of(), Double.NaN, Double.NaN);
      for (int turn = 0; turn <= MOST_HALVINGS; turn++) {
        Sum sum = sum(start(first), start(second), step);
        if (sum.points().size() > MOST_POINTS || !Double.isFinite(sum.logMass())) {
          return Optional.empty();
        }
        if (sum.agrees(before)) {
          return Optional.of(new UnknownSpread(sum.points()));
        }
        before = sum;
        step /= 2;
      }
      return Optional.empty();
    }

    /** The u of a standard deviation: its root by Newton's rule. */
    private double start(double sigma) {
      double wanted = sigma > 0 ? Math.log(sigma / scale) : Double.NEGATIVE_INFINITY;
      if (wanted <= LOWEST_START - Math.exp(-LOWEST_START)) {
        return LOWEST_START;
      }
      double u = Math.max(LOWEST_START, wanted);
      for (int i = 0; i < 50; i++) {
        u -= (u - Math.exp(-u) - wanted) / (1 + Math.exp(-u));
      }
      return u;
    }

    private double sigma(double u) {
      return scale * Math.exp(u - Math.exp(-u));
    }

    /** Logarithm of d sigma / du. */
    private double logSlope(double u) {
      return Math.log(scale) + u - Math.exp(-u) + Math.log1p(Math.exp(-u));
    }

    private Height height(Place place, double firstStart, double secondStart, double step) {
      Work.check();
      double u = firstStart + place.first() * step;
      double first = sigma(u);
      if (!two) {
        return new Height(place, first, 0, log.applyAsDouble(first, 0) + logSlope(u));
      }
      double v = secondStart + place.second() * step;
      double second = sigma(v);
      return new Height(
          place, first, second, log.applyAsDouble(first, second) + logSlope(u) + logSlope(v));
    }

    private Sum sum(double firstStart, double secondStart, double step) {
      PriorityQueue<Height> open =
          new PriorityQueue<>(Comparator.comparingDouble((Height one) -> -one.log()));
      Set<Place> seen = new HashSet<>();
      List<Height> taken = new ArrayList<>();
      Place start = new Place(0, 0);
      open.add(height(start, firstStart, secondStart, step));
      seen.add(start);
      double top = Double.NEGATIVE_INFINITY;
      while (!open.isEmpty() && taken.size() <= MOST_POINTS) {
        Height highest = open.remove();
        // A comparison that is false for what is no number, too.
        if (!(highest.log() > top - CUT)) {
          break;
        }
        top = Math.max(top, highest.log());
        taken.add(highest);
        for (Place next : neighbours(highest.place())) {
          if (seen.add(next)) {
            open.add(height(next, firstStart, secondStart, step));
          }
        }
      }
      return Sum.of(taken, top, scale, two ? 2 * Math.log(step) : Math.log(step));
    }

    private List<Place> neighbours(Place at) {
      List<Place> next = new ArrayList<>();
      for (int move : new int[] {-1, 1}) {
        next.add(new Place(at.first() + move, at.second()));
        if (two) {
          next.add(new Place(at.first(), at.second() + move));
        }
      }
      return next;
    }

    /** What one lattice gives. */
    private record Sum(List<Point> points, double logMass, double mean) {
      static Sum of(List<Height> taken, double top, double scale, double logCell) {
        double mass = 0;
        for (Height one : taken) {
          mass += Math.exp(one.log() - top);
        }
        List<Point> points = new ArrayList<>();
        double mean = 0;
        for (Height one : taken) {
          double share = Math.exp(one.log() - top) / mass;
          points.add(new Point(share, one.first(), one.second()));
          // Bounded, since the mean of sigma itself may be infinite.
          double sigma = Math.hypot(one.first(), one.second());
          mean += share * sigma / (sigma + scale);
        }
        return new Sum(points, top + Math.log(mass) + logCell, mean);
      }

      boolean agrees(Sum other) {
        return Math.abs(logMass - other.logMass) < SETTLED && Math.abs(mean - other.mean) < SETTLED;
      }
    }
  }
}
