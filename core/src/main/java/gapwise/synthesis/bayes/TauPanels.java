package gapwise.synthesis.bayes;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The posterior of tau cut into panels of log tau, on each of which the density is smooth enough
 * for one Gauss-Legendre rule.
 *
 * <p>Idea: in log tau the density has tails that fall at least like an exponential on both sides
 * (like tau on the left, like tau^-(a - 1) on the right), so a finite stretch holds all but a share
 * of e^-40, whatever the scale of the data; and the logarithm of the density bends only about the
 * standard errors, the distances between effects and the scale of the prior. Panels start there,
 * are halved where the logarithm ranges widely, and are added outwards until both ends are empty. A
 * panel is called empty only if nothing between its points can reach the cut, so that a peak
 * between two points is not missed. The number of panels does not grow with the number of studies.
 */
final class TauPanels {
  /** A share of e^-40, some 4e-18, is lost in rounding anyhow. */
  private static final double CUT = 40;

  /** With 16 points e^x over a range of 4, and a normal curve, are exact to some 1e-13. */
  private static final double WIDEST_RANGE = 4;

  /** The logarithm's nearest complex singularity lies pi/2 off, the half-normal's bend pi/4. */
  private static final double WIDEST = 1.5;

  /** Where halving ends though the range is wide; no smooth density gets there. */
  private static final double NARROWEST = 1e-9;

  /** Above this size a logarithm has lost nine digits to rounding, and the density as many. */
  private static final double LARGEST_LOG = 1e9;

  /** Ten times what any data that we tried have; more are made only where rounding looks rough. */
  private static final int MOST_MADE = 20_000;

  private final TauDensity density;
  private final int order;
  private final List<Panel> kept = new ArrayList<>();
  private double top = Double.NEGATIVE_INFINITY;
  private double topOfMoment = Double.NEGATIVE_INFINITY;
  private int made;

  private TauPanels(TauDensity density) {
    this.density = density;
    this.order = density.priors().highestMoment(density.size());
  }

  /**
   * The panels that hold the mass, from left to right. The posterior must be proper.
   *
   * @return empty if the density is too rough to be integrated, or nowhere within the range of
   *     numbers
   */
  static Optional<List<Panel>> of(TauDensity density) {
    TauPanels panels = new TauPanels(density);
    double end = Math.log(density.priors().tau().to());
    double start = Math.log(density.priors().tau().from());
    double to = Math.min(end, density.highest() + 1);
    double from = Math.max(start, Math.min(density.lowest() - 1, to - 1));
    int count = (int) Math.max(1, Math.ceil((to - from) / WIDEST));
    List<Panel> first = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      first.add(
          panels.at(
              from + (to - from) * i / count,
              i == count - 1 ? to : from + (to - from) * (i + 1) / count));
    }
    first.forEach(panels::resolve);
    panels.outwards(from, start, -WIDEST);
    panels.outwards(to, end, WIDEST);
    List<Panel> holding =
        panels.kept.stream()
            .filter(panel -> !panels.isEmpty(panel))
            .sorted(Comparator.comparingDouble(Panel::from))
            .toList();
    boolean sound =
        panels.made <= MOST_MADE && Math.abs(panels.top) < LARGEST_LOG && !holding.isEmpty();
    return sound ? Optional.of(holding) : Optional.empty();
  }

  private Panel at(double from, double to) {
    Panel panel = new Panel(density, from, to);
    made++;
    top = Math.max(top, panel.top(0));
    topOfMoment = Math.max(topOfMoment, panel.top(order));
    return panel;
  }

  private void outwards(double from, double limit, double step) {
    double near = from;
    while (near != limit && made <= MOST_MADE) {
      double far = step < 0 ? Math.max(limit, near + step) : Math.min(limit, near + step);
      Panel panel = at(Math.min(near, far), Math.max(near, far));
      if (isEmpty(panel)) {
        return;
      }
      resolve(panel);
      near = far;
    }
  }

  private void resolve(Panel panel) {
    if (isEmpty(panel) || made > MOST_MADE) {
      return;
    }
    if (panel.range() <= WIDEST_RANGE || panel.width() < NARROWEST) {
      kept.add(panel);
      return;
    }
    double middle = panel.from() + panel.width() / 2;
    Panel left = at(panel.from(), middle);
    Panel right = at(middle, panel.to());
    resolve(left);
    resolve(right);
  }

  private boolean isEmpty(Panel panel) {
    return panel.bound(0) < top - CUT && panel.bound(order) < topOfMoment - CUT;
  }
}
