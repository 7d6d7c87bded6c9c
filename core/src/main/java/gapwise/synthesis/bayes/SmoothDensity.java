package gapwise.synthesis.bayes;

import gapwise.numeric.BracketedRoot;
import gapwise.numeric.Continuous;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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
  static final double CUT = 19;

  /** Doubt of a logarithm that is as good as none, where the density is highest. */
  static final double HELD = 1e-5;

  /** Another number of stretches is tried where doubt is less by this factor. */
  private static final double FEWER = 300;

  /** A stretch is to reach deeper than it must by this. */
  private static final double SPARE = 3;

  /** Of the stretches of another density so much is to be seen of one, at least. */
  private static final double MOST = 0.7;

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
   * @param log logarithm of the density
   * @param edges of the stretches on which it is thought to lie, in the support, rising
   * @param lowest where the support starts; may be infinite
   * @param highest where it ends; may be infinite
   * @throws OutOfRangeException if arithmetic does not reach it
   */
  static SmoothDensity of(LogDensity log, List<Double> edges, double lowest, double highest) {
    return new SmoothDensity(new StretchSearch(log, lowest, highest).holding(edges));
  }

  /** The density lies nowhere within the range of numbers. */
  static final class OutOfRangeException extends RuntimeException {
    private static final long serialVersionUID = 1;
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

  /**
   * Edges of the stretches of this one, if they are of use for another density: where that is seen
   * on most of them, so that their points are not too far apart for it.
   *
   * @param other logarithm of its density up to a constant
   */
  Optional<List<Double>> edgesFor(LogDensity other) {
    List<Stretch> same =
        stretches.stream().map(one -> new Stretch(other, one.from(), one.to())).toList();
    double highest = same.stream().mapToDouble(Stretch::top).max().orElseThrow();
    double seen = same.stream().mapToDouble(one -> one.widthAbove(highest - CUT - SPARE)).sum();
    if (!(seen >= MOST * (to() - from()))) {
      return Optional.empty();
    }
    List<Double> edges = new ArrayList<>();
    edges.add(from());
    stretches.forEach(one -> edges.add(one.to()));
    return Optional.of(edges);
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
