package gapwise.synthesis.bayes;

import gapwise.numeric.BracketedRoot;
import gapwise.numeric.Continuous;
import java.util.List;
import org.apache.commons.numbers.core.Sum;

/** The posterior distribution of tau. */
final class TauPosterior implements Continuous {
  private final TauDensity density;
  private final List<Panel> panels;
  private final double top;
  private final double[] massBefore;
  private final double mass;

  /**
   * Integrates.
   *
   * @param panels that hold the mass of the density, at least one
   */
  TauPosterior(TauDensity density, List<Panel> panels) {
    this.density = density;
    this.panels = List.copyOf(panels);
    this.top = panels.stream().mapToDouble(panel -> panel.top(0)).max().orElseThrow();
    this.massBefore = new double[panels.size()];
    Sum sum = Sum.create();
    for (int i = 0; i < massBefore.length; i++) {
      massBefore[i] = sum.getAsDouble();
      for (int j = 0; j < GaussLegendre.POINTS; j++) {
        sum.add(panels.get(i).mass(j, top));
      }
    }
    this.mass = sum.getAsDouble();
  }

  /** Takes the nodes of the integration, whose shares sum to 1. */
  interface Visitor {
    void take(int node, double share, double tau, TauDensity.At at);
  }

  void visit(Visitor visitor) {
    int node = 0;
    for (Panel panel : panels) {
      for (int j = 0; j < GaussLegendre.POINTS; j++) {
        visitor.take(node++, panel.mass(j, top) / mass, panel.tau(j), panel.at(j));
      }
    }
  }

  double mean() {
    double[] sum = new double[1];
    visit((node, share, tau, at) -> sum[0] += share * tau);
    return sum[0];
  }

  double standardDeviation() {
    double mean = mean();
    double[] sum = new double[1];
    visit((node, share, tau, at) -> sum[0] += share * (tau - mean) * (tau - mean));
    return Math.sqrt(sum[0]);
  }

  int nodes() {
    return panels.size() * GaussLegendre.POINTS;
  }

  @Override
  public double below(double tau) {
    if (tau <= 0) {
      return 0;
    }
    double log = Math.log(tau);
    for (int i = panels.size() - 1; i >= 0; i--) {
      Panel panel = panels.get(i);
      if (log > panel.from()) {
        double reach = Math.min(log, panel.to());
        return Math.min(1, (massBefore[i] + panel.massTo(reach, top)) / mass);
      }
    }
    return 0;
  }

  @Override
  public double above(double tau) {
    return 1 - below(tau);
  }

  @Override
  public double quantile(double probability) {
    double wanted = probability * mass;
    int i = panels.size() - 1;
    while (i > 0 && massBefore[i] > wanted) {
      i--;
    }
    Panel panel = panels.get(i);
    double inside = wanted - massBefore[i];
    if (inside <= 0) {
      return Math.exp(panel.from());
    }
    if (inside >= panel.massTo(panel.to(), top)) {
      return Math.exp(panel.to());
    }
    return Math.exp(
        BracketedRoot.find(x -> panel.massTo(x, top) - inside, panel.from(), panel.to()).value());
  }

  @Override
  public double logDensity(double tau) {
    return density.at(tau).logDensity();
  }
}
