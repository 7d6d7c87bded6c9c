package gapwise.synthesis.bayes;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The search for the stretches that hold the mass. */
final class StretchSearch {
  /** A stretch that reaches so deep is not added to. */
  private static final double ENOUGH = 16;

  /** However low the density, more doubt than this might hide a hump. */
  private static final double MOST_DOUBT = 0.02;

  /** More mass between the points, in shares of that of a stretch, would be missed in sums. */
  private static final double MOST_UNSEEN = 1e-3;

  /** Points of a stretch that fall no deeper lie near enough for that. */
  private static final double DEEP = 26;

  /** A first stretch whose points fall deeper than this is drawn in. */
  private static final double TOO_DEEP = 60;

  /** Ten times what any data that we tried have. */
  private static final int MOST_MADE = 400;

  private final LogDensity log;
  private final double lowest;
  private final double highest;
  private final List<Stretch> kept = new ArrayList<>();
  private double top = Double.NEGATIVE_INFINITY;
  private int made;

  StretchSearch(LogDensity log, double lowest, double highest) {
    this.log = log;
    this.lowest = lowest;
    this.highest = highest;
  }

  List<Stretch> holding(List<Double> edges) {
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
            .filter(stretch -> stretch.top() > top - SmoothDensity.CUT)
            .sorted(Comparator.comparingDouble(Stretch::from))
            .toList();
    if (holding.isEmpty() || !Double.isFinite(top)) {
      throw new SmoothDensity.OutOfRangeException();
    }
    return holding;
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
      Stretch.Range about = stretch.within(SmoothDensity.CUT + 4);
      if (about.to() - about.from() > 0.7 * stretch.width()) {
        return stretch;
      }
      stretch = make(about.from(), about.to());
    }
    return stretch;
  }

  private void resolve(Stretch stretch) {
    if (stretch.top() < top - 2 * SmoothDensity.CUT) {
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
    double low = Math.exp(top - stretch.top());
    return stretch.doubt() <= Math.min(MOST_DOUBT, SmoothDensity.HELD * low)
        && (stretch.deepest() <= DEEP || stretch.massUnseen() <= MOST_UNSEEN * low);
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
