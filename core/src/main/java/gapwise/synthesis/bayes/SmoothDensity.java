package gapwise.synthesis.bayes;

import gapwise.numeric.BracketedRoot;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A distribution whose density is known by its logarithm, smooth and with one hump, at the price of
 * some evaluations.
 *
 * <p>Idea: the logarithm of such a density is nearly a parabola, so the polynomial through 16
 * points holds it on the whole stretch that matters, and what is told of the distribution comes
 * from the polynomial at no further price. Where the polynomial does not hold it, which its last
 * coefficients tell, the stretch is halved; where it does not reach far enough down, one is added.
 */
final class SmoothDensity implements Continuous {
  /** Beyond a density of e^-19 of the highest some 1e-9 of the mass is left. */
  private static final double CUT = 19;

  /** A stretch that reaches so deep is not added to. */
  private static final double ENOUGH = 16;

  /** Doubt of a logarithm that is as good as none, where the density is highest. */
  private static final double HELD = 1e-5;

  /** Another number of stretches is tried where doubt is less by this factor. */
  private static final double FEWER = 300;

  /** A stretch is to reach deeper than it must by this. */
  private static final double SPARE = 3;

  /** However low the density, more doubt than this might hide a hump. */
  private static final double MOST_DOUBT = 0.02;

  /** A first stretch whose points fall deeper than this is drawn in. */
  private static final double TOO_DEEP = 60;

  /** Ten times what any data that we tried have. */
  private static final int MOST_MADE = 400;

  private final List<Stretch> stretches;
  private final double top;
  private final double[] massBefore;
  private final double mass;

  private SmoothDensity(List<Stretch> stretches) {
    this.stretches = List.copyOf(stretches);
    this.top = stretches.stream().mapToDouble(Stretch::top).max().orElseThrow();
    this.massBefore = new double[stretches.size()];
    double sum = 0;
    for (int i = 0; i < massBefore.length; i++) {
      massBefore[i] = sum;
      sum += stretches.get(i).massOver(top);
    }
    this.mass = sum;
  }

  /**
   * Finds where the density lies.
   *
   * @param log logarithm of the density up to a constant
   * @param edges of the stretches on which it is thought to lie, in the support, rising
   * @param lowest where the support starts; may be infinite
   * @param highest where it ends; may be infinite
   * @throws OutOfRangeException if arithmetic does not reach it
   */
  static SmoothDensity of(
      DoubleUnaryOperator log, List<Double> edges, double lowest, double highest) {
    return new Search(log, lowest, highest).density(edges);
  }

  /** The density lies nowhere within the range of numbers. */
  static final class OutOfRangeException extends RuntimeException {
    private static final long serialVersionUID = 1;
  }

  /** The search for the stretches that hold the mass. */
  private static final class Search {
    private final DoubleUnaryOperator log;
    private final double lowest;
    private final double highest;
    private final List<Stretch> kept = new ArrayList<>();
    private double top = Double.NEGATIVE_INFINITY;
    private int made;

    Search(DoubleUnaryOperator log, double lowest, double highest) {
      this.log = log;
      this.lowest = lowest;
      this.highest = highest;
    }

    SmoothDensity density(List<Double> edges) {
      List<Stretch> first = new ArrayList<>();
      for (int i = 1; i < edges.size(); i++) {
        first.add(make(edges.get(i - 1), edges.get(i)));
      }
      if (first.size() == 1) {
        first.set(0, drawnIn(climbed(first.get(0))));
      }
      first.forEach(this::resolve);
      Stretch left = first.get(0);
      Stretch right = first.get(first.size() - 1);
      outwards(left.from(), lowest, -left.width());
      outwards(right.to(), highest, right.width());
      List<Stretch> holding =
          kept.stream()
              .filter(stretch -> stretch.top() > top - CUT)
              .sorted(Comparator.comparingDouble(Stretch::from))
              .toList();
      if (holding.isEmpty() || !Double.isFinite(top)) {
        throw new OutOfRangeException();
      }
      return new SmoothDensity(holding);
    }

    private Stretch make(double from, double to) {
      Stretch stretch = new Stretch(log, from, to);
      made++;
      top = Math.max(top, stretch.top());
      return stretch;
    }

    /**
     * Goes uphill by ever wider stretches until the highest point lies inside. Where a step leads
     * back, it lies between the outermost points of the last two, which no wider one would show.
     */
    private Stretch climbed(Stretch start) {
      Stretch before = start;
      Stretch stretch = start;
      boolean leftwards = false;
      boolean first = true;
      while (made < MOST_MADE) {
        boolean left = stretch.first() == stretch.top() && stretch.from() > lowest;
        boolean right = stretch.last() == stretch.top() && stretch.to() < highest;
        if (!left && !right) {
          return stretch;
        }
        if (!first && left != leftwards) {
          return left ? between(before, stretch) : between(stretch, before);
        }
        before = stretch;
        leftwards = left;
        first = false;
        stretch = further(stretch, left);
      }
      return stretch;
    }

    /** The next stretch, twice as wide, on one side. */
    private Stretch further(Stretch stretch, boolean left) {
      double width = 2 * stretch.width();
      return left
          ? make(Math.max(lowest, stretch.from() - width), stretch.place(1))
          : make(stretch.place(GaussLegendre.POINTS - 2), Math.min(highest, stretch.to() + width));
    }

    private Stretch between(Stretch left, Stretch right) {
      return make(left.place(GaussLegendre.POINTS - 3), right.place(2));
    }

    private Stretch drawnIn(Stretch wide) {
      Stretch stretch = wide;
      while (stretch.deepest() > TOO_DEEP && made < MOST_MADE) {
        Stretch.Range about = stretch.within(CUT + 4);
        if (about.to() - about.from() > 0.7 * stretch.width()) {
          return stretch;
        }
        stretch = make(about.from(), about.to());
      }
      return stretch;
    }

    private void resolve(Stretch stretch) {
      if (stretch.top() < top - 2 * CUT) {
        return;
      }
      if (isHeld(stretch) || made >= MOST_MADE) {
        kept.add(stretch);
        return;
      }
      double middle = stretch.from() + stretch.width() / 2;
      Stretch left = make(stretch.from(), middle);
      Stretch right = make(middle, stretch.to());
      resolve(left);
      resolve(right);
    }

    /** Doubt counts for less where the density is low. */
    private boolean isHeld(Stretch stretch) {
      return stretch.doubt() <= Math.min(MOST_DOUBT, HELD * Math.exp(top - stretch.top()));
    }

    /** Adds stretches, each wider by half, until the last point lies deep enough. */
    private void outwards(double from, double limit, double width) {
      double near = from;
      double stride = width;
      while (near != limit && made < MOST_MADE && edge(near, stride < 0) > top - ENOUGH) {
        double far = stride < 0 ? Math.max(limit, near + stride) : Math.min(limit, near + stride);
        resolve(make(Math.min(near, far), Math.max(near, far)));
        near = far;
        stride *= 1.5;
      }
    }

    /** The logarithm at the point next to the end of what is kept. */
    private double edge(double near, boolean left) {
      return kept.stream()
          .filter(stretch -> (left ? stretch.from() : stretch.to()) == near)
          .mapToDouble(stretch -> left ? stretch.first() : stretch.last())
          .findFirst()
          .orElse(Double.NEGATIVE_INFINITY);
    }
  }

  /** Takes points of an integration over the distribution, whose shares sum to 1. */
  interface Visitor {
    void take(double share, double place);
  }

  void visit(Visitor visitor) {
    for (Stretch stretch : stretches) {
      for (int i = 0; i < GaussLegendre.POINTS; i++) {
        visitor.take(stretch.massOfPoint(i, top) / mass, stretch.place(i));
      }
    }
  }

  /** The stretches, from left to right. */
  List<Stretch> stretches() {
    return stretches;
  }

  /**
   * Edges on which to look for a density like this one: equal stretches over where it is not
   * negligible, as many as held it, or one fewer where these held it far better than is asked.
   */
  List<Double> edgesOfAnother() {
    double doubt = stretches.stream().mapToDouble(s -> s.doubt() * weight(s)).max().orElseThrow();
    int count = stretches.size() - (stretches.size() > 1 && doubt < HELD / FEWER ? 1 : 0);
    double left = stretches.get(0).edge(top - CUT - SPARE, true);
    double right = stretches.get(stretches.size() - 1).edge(top - CUT - SPARE, false);
    List<Double> edges = new ArrayList<>();
    for (int i = 0; i <= count; i++) {
      edges.add(left + (right - left) * i / count);
    }
    return edges;
  }

  private double weight(Stretch stretch) {
    return Math.exp(stretch.top() - top);
  }

  /** Where the first stretch starts. */
  double from() {
    return stretches.get(0).from();
  }

  /** Where the last one ends. */
  double to() {
    return stretches.get(stretches.size() - 1).to();
  }

  /** Logarithm of the integral of the density as it was given. */
  double logMass() {
    return top + Math.log(mass);
  }

  double mean() {
    double[] sum = new double[1];
    visit((share, place) -> sum[0] += share * place);
    return sum[0];
  }

  double variance() {
    double mean = mean();
    double[] sum = new double[1];
    visit((share, place) -> sum[0] += share * (place - mean) * (place - mean));
    return sum[0];
  }

  @Override
  public double below(double x) {
    for (int i = stretches.size() - 1; i >= 0; i--) {
      Stretch stretch = stretches.get(i);
      if (x >= stretch.to()) {
        return Math.min(1, (massBefore[i] + stretch.massOver(top)) / mass);
      }
      if (x > stretch.from()) {
        return Math.min(1, (massBefore[i] + stretch.massTo(x, top)) / mass);
      }
    }
    return 0;
  }

  @Override
  public double above(double x) {
    return 1 - below(x);
  }

  @Override
  public double quantile(double probability) {
    return BracketedRoot.find(x -> below(x) - probability, from(), to()).value();
  }

  @Override
  public double logDensity(double x) {
    for (Stretch stretch : stretches) {
      if (x >= stretch.from() && x <= stretch.to()) {
        return stretch.log(x);
      }
    }
    return Double.NEGATIVE_INFINITY;
  }
}
