package gapwise.synthesis.likelihood;

import gapwise.numeric.GaussHermite;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Finds the top of the likelihood. First with tau at 0, where it is concave; then by Newton's
 * method from a tau above 0, with the sign of every curvature turned downhill, a step cut until the
 * likelihood rises, and tau taken without its sign (the likelihood is even in tau). The higher of
 * the two tops is the answer; where they are level, the one at 0.
 */
final class LikelihoodSearch {
  private static final int MOST_STEPS = 200;
  private static final int MOST_HALVINGS = 40;

  /** Twice the rise a further Newton step promises, below which the search has settled. */
  private static final double SETTLED = 1e-10;

  /** The same where another search follows. */
  private static final double NEARLY_SETTLED = 1e-4;

  /** So small a promise that nothing is worked out anew after the step, 1e-8 standard errors. */
  private static final double EXACT = 1e-16;

  /** Points of the search that comes first, so near the end that all points need few steps. */
  private static final int FEW_POINTS = 7;

  /** Variance between studies over that within, below which a top near 0 is taken to be at 0. */
  private static final double NEGLIGIBLE = 1e-6;

  /** The longest step of mean and intercepts, on the logit or log scale. */
  private static final double LONGEST = 5;

  /** Between two likelihoods that are told apart. */
  private static final double MARGIN = 1e-9;

  /** Relative rounding of a log likelihood. */
  private static final double ROUNDING = 1e-12;

  private final StudyLikelihoods studies;
  private final GaussHermite rule;
  private final double furthest;

  private LikelihoodSearch(StudyLikelihoods studies, GaussHermite rule) {
    this.studies = studies;
    this.rule = rule;
    furthest = studies.furthest();
  }

  /** The top of the likelihood of some studies. */
  static LikelihoodFit fit(StudyLikelihoods studies, int points) {
    if (studies.size() == 0) {
      return new LikelihoodFit.NoMaximum(LikelihoodFit.Reason.NO_INFORMATION);
    }
    Optional<LikelihoodFit.Reason> one = atOneLimit(studies);
    if (one.isPresent()) {
      return new LikelihoodFit.NoMaximum(one.get());
    }
    int down = count(studies, StudyLikelihoods.Pull.DOWN);
    int up = count(studies, StudyLikelihoods.Pull.UP);
    boolean limits = down + up == studies.size();
    return new LikelihoodSearch(studies, GaussHermite.of(points)).best(limits, down, up);
  }

  /** Why there is no top where all studies, of which there are some, push the mean one way. */
  static Optional<LikelihoodFit.Reason> atOneLimit(StudyLikelihoods studies) {
    if (count(studies, StudyLikelihoods.Pull.DOWN) == studies.size()) {
      return Optional.of(LikelihoodFit.Reason.MEAN_FALLS);
    }
    return count(studies, StudyLikelihoods.Pull.UP) == studies.size()
        ? Optional.of(LikelihoodFit.Reason.MEAN_RISES)
        : Optional.empty();
  }

  private static int count(StudyLikelihoods studies, StudyLikelihoods.Pull pull) {
    return (int) IntStream.range(0, studies.size()).filter(i -> studies.pull(i) == pull).count();
  }

  private LikelihoodFit best(boolean limits, int down, int up) {
    LikelihoodSurface flat = new LikelihoodSurface(studies, GaussHermite.of(1));
    flat.moveTo(studies.startMean(), 0);
    flat = climb(flat, true, SETTLED);
    LikelihoodSurface spread = withSpread(flat);
    boolean higher = spread.tau > 0 && spread.value > flat.value + level(flat);
    if (higher && spread.tau >= furthest) {
      return new LikelihoodFit.NoMaximum(LikelihoodFit.Reason.SPREAD_RISES);
    }
    LikelihoodSurface top = higher ? spread : flat;
    // With every study at a limit, the likelihood tends to this as tau and mean grow together.
    double beyond =
        limits
            ? down * Math.log((double) down / (down + up))
                + up * Math.log((double) up / (down + up))
            : Double.NEGATIVE_INFINITY;
    LikelihoodFit answer =
        LatticeFit.refined(studies, answer(top), new LatticeFit.Bounds(rule.points(), furthest));
    boolean settled = answer instanceof LikelihoodFit.Estimate found && found.converged();
    if ((limits && !settled) || (limits && !studies.hasIntercepts() && beyond > reached(top))) {
      return new LikelihoodFit.NoMaximum(LikelihoodFit.Reason.SPREAD_RISES);
    }
    return answer;
  }

  /**
   * What the likelihood beyond all bounds must pass to leave this top none. Far from 0 no fixed
   * number of points holds the integrals, so there it is worked out on a lattice, which does.
   */
  private double reached(LikelihoodSurface top) {
    return top.tau > 0
        ? new MarginalLikelihood(studies).at(top.tau).log(top.mean) - MARGIN
        : top.value + MARGIN;
  }

  /**
   * The top with a tau above 0, found with few points and settled with all. Where one study has
   * nearly all the information, there can be a second top away from 0, so a search that ends at 0
   * is followed by one from the middle of the studies' own values, each counted once.
   */
  private LikelihoodSurface withSpread(LikelihoodSurface flat) {
    double nearFlat = flat.tauTau < 0 ? Math.sqrt(-NEGLIGIBLE * studies.size() / flat.meanMean) : 0;
    GaussHermite few = GaussHermite.of(Math.min(FEW_POINTS, rule.points()));
    LikelihoodSurface spread = climbFrom(flat, few, flat.mean, startTau(flat), false);
    for (double[] start : FurtherStarts.of(studies)) {
      if (spread.value > flat.value + level(flat) && spread.tau >= nearFlat) {
        break;
      }
      spread = climbFrom(flat, few, start[0], start[1], true);
    }
    if (few == rule || spread.tau < nearFlat) {
      return spread;
    }
    LikelihoodSurface all = flat.with(rule);
    all.copyPlace(spread);
    all.evaluate();
    return climb(all, false, SETTLED);
  }

  /**
   * Climbs from a place, first with tau held where that is asked, so that a start far from the best
   * mean and intercepts for its tau is not carried down to 0 on its way there.
   */
  private LikelihoodSurface climbFrom(
      LikelihoodSurface flat, GaussHermite few, double mean, double tau, boolean held) {
    LikelihoodSurface spread = flat.with(few);
    spread.copyPlace(flat);
    spread.mean = mean;
    spread.tau = tau;
    spread.guessModes();
    spread.evaluate();
    if (held) {
      spread = climb(spread, true, NEARLY_SETTLED);
      spread.evaluate();
    }
    return climb(spread, false, few == rule ? SETTLED : NEARLY_SETTLED);
  }

  /**
   * The top at one tau above 0.
   *
   * @param mean to start from
   */
  static LikelihoodSurface held(StudyLikelihoods studies, int points, double mean, double tau) {
    LikelihoodSearch search = new LikelihoodSearch(studies, GaussHermite.of(points));
    LikelihoodSurface at = new LikelihoodSurface(studies, search.rule);
    at.mean = mean;
    at.tau = tau;
    at.guessModes();
    at.evaluate();
    LikelihoodSurface top = search.climb(at, true, SETTLED);
    top.evaluate();
    return top;
  }

  private static LikelihoodFit answer(LikelihoodSurface top) {
    double information = -top.meanMean;
    boolean proper = true;
    if (top.tau > 0) {
      double determinant = top.meanMean * top.tauTau - top.meanTau * top.meanTau;
      proper = top.tauTau < 0 && determinant > 0;
      information = proper ? -determinant / top.tauTau : information;
    }
    double error = 1 / Math.sqrt(information);
    if (!Double.isFinite(top.value) || !(error > 0) || !Double.isFinite(error)) {
      return new LikelihoodFit.NoMaximum(LikelihoodFit.Reason.OUT_OF_RANGE);
    }
    return new LikelihoodFit.Estimate(
        top.mean, error, top.tau, top.value, top.settled && proper, LikelihoodFit.Points.ENOUGH);
  }

  private static double level(LikelihoodSurface surface) {
    return 1e-10 + ROUNDING * Math.abs(surface.value);
  }

  /** From the variance of the studies' own values over what their information explains. */
  private double startTau(LikelihoodSurface flat) {
    double squares = 0;
    double expected = 0;
    double scale = 0;
    double information = 0;
    for (int i = 0; i < studies.size(); i++) {
      double w = studies.startInformation(i);
      double distance = studies.start(i) - flat.mean;
      double shrunk = w / (1 + w);
      squares += shrunk * distance * distance;
      expected += shrunk / w;
      scale += shrunk;
      information += w;
    }
    double moment = (squares - expected) / scale;
    return Math.sqrt(Math.max(moment, studies.size() / information / 4));
  }

  /** Climbs to a top and says there whether it settled. */
  private LikelihoodSurface climb(LikelihoodSurface from, boolean flat, double enough) {
    LikelihoodSurface at = from;
    LikelihoodSurface next = from.another();
    for (int i = 0; i < MOST_STEPS; i++) {
      double[] step = flat ? flatStep(at) : step(at);
      double promised = at.slopeMean * step[0] + at.slopeTau * step[1] + at.interceptDecrement();
      boolean last = promised < enough;
      if (last && enough > SETTLED || promised < EXACT) {
        at.shift(step);
        at.settled = true;
        return at;
      }
      double share = share(at, step);
      double least = at.value - (last ? 1e-9 + level(at) : 0);
      boolean risen = false;
      for (int cut = 0; cut < MOST_HALVINGS && !risen; cut++, share /= 2) {
        next.stepFrom(at, step, share);
        risen = next.value >= least;
      }
      if (!risen) {
        at.settled = promised < 1e-6;
        return at;
      }
      LikelihoodSurface reached = next;
      next = at;
      at = reached;
      if (last) {
        at.settled = true;
        return at;
      }
      if (!flat && at.tau > furthest) {
        return at;
      }
    }
    return at;
  }

  private static double[] flatStep(LikelihoodSurface at) {
    return new double[] {-at.slopeMean / Math.min(at.meanMean, -1e-300), 0};
  }

  /** Newton's step with both curvatures made negative. */
  private static double[] step(LikelihoodSurface at) {
    double a = at.meanMean;
    double b = at.meanTau;
    double c = at.tauTau;
    double middle = (a + c) / 2;
    double radius = Math.hypot((a - c) / 2, b);
    if (middle + radius < 0) {
      double determinant = a * c - b * b;
      return new double[] {
        -(c * at.slopeMean - b * at.slopeTau) / determinant,
        -(a * at.slopeTau - b * at.slopeMean) / determinant
      };
    }
    // directions of curvature: (cos, sin) belongs to middle + radius
    double angle = Math.atan2(2 * b, a - c) / 2;
    double cos = Math.cos(angle);
    double sin = Math.sin(angle);
    double floor = 1e-8 * (Math.abs(middle) + radius) + 1e-300;
    double along = cos * at.slopeMean + sin * at.slopeTau;
    double across = -sin * at.slopeMean + cos * at.slopeTau;
    along /= Math.max(Math.abs(middle + radius), floor);
    across /= Math.max(Math.abs(middle - radius), floor);
    return new double[] {cos * along - sin * across, sin * along + cos * across};
  }

  /** How much of a step can be made without going out of reach. */
  private static double share(LikelihoodSurface at, double[] step) {
    double longest = Math.max(Math.abs(step[0]), Math.abs(step[1]) / (1 + at.tau / LONGEST));
    for (int s = 0; s < at.intercept.length; s++) {
      longest = Math.max(longest, Math.abs(at.interceptStep(s, step[0], step[1])));
    }
    return longest > LONGEST ? LONGEST / longest : 1;
  }
}
