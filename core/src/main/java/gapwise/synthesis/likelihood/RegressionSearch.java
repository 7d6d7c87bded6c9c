package gapwise.synthesis.likelihood;

import gapwise.numeric.CholeskyFactor;
import gapwise.numeric.GaussHermite;

/**
 * Finds the top of the likelihood over multiples of columns and tau, as {@link LikelihoodSearch}
 * does for one mean: once with tau at 0, where it is concave; then by Newton's method from above 0.
 * The higher of the tops is the answer, the one at 0 if level.
 */
final class RegressionSearch {
  private static final int MOST_STEPS = 200;
  private static final int MOST_HALVINGS = 40;

  /** Twice the rise a further Newton step promises, below which the search has settled. */
  private static final double SETTLED = 1e-10;

  /** Points of the search that comes first. */
  private static final int FEW_POINTS = 7;

  /** A spread that few points follow well enough to start by. */
  private static final double MODERATE = 2;

  /** Variance between studies over that within, below which a top near 0 is taken to be at 0. */
  private static final double NEGLIGIBLE = 1e-6;

  /** The longest step of any study's mean and of tau, on the logit or log scale, from near 0. */
  private static final double LONGEST = 5;

  private final StudyLikelihoods studies;
  private final TrueValueIntegral flatRule;
  private final TrueValueIntegral fewRule;
  private final TrueValueIntegral rule;

  /**
   * @param points of the adaptive quadrature, 1 to 200; from 25 on lattices that are refined until
   *     they stand still take their place
   */
  RegressionSearch(StudyLikelihoods studies, int points) {
    this.studies = studies;
    flatRule = new StudyIntegral(studies, GaussHermite.of(1));
    fewRule = new StudyIntegral(studies, GaussHermite.of(Math.min(FEW_POINTS, points)));
    rule =
        points < CountRegression.FEWEST_FOR_LATTICE
            ? new StudyIntegral(studies, GaussHermite.of(points))
            : new LatticeIntegral(studies);
  }

  /**
   * A top.
   *
   * @param settled whether the search did, within any spread that studies could show
   */
  record Top(RegressionPlace place, boolean settled) {
    double value() {
      return place.value;
    }
  }

  /** The top over all multiples and tau. */
  Top top(LinearMeans means) {
    Top flat = climb(flat(means, start(means)), flatRule, true);
    return higher(flat, withSpread(flat.place()));
  }

  /**
   * The same near a top known already.
   *
   * @param times multiples to start from
   * @param nearTau tau to start from
   */
  Top top(LinearMeans means, double[] times, double nearTau) {
    RegressionPlace flat = flat(means, times);
    if (nearTau > 0) {
      Top near = climb(flat.elsewhere(times, nearTau, studies, rule), rule, false);
      if (near.settled() && near.place().tau > nearTau / 10) {
        return near;
      }
    }
    Top lowest = climb(flat, flatRule, true);
    return higher(lowest, withSpread(lowest.place()));
  }

  /**
   * The top over all multiples at one tau.
   *
   * @param times multiples to start from
   */
  Top at(LinearMeans means, double[] times, double tau) {
    return climb(flat(means, times).elsewhere(times, tau, studies, rule), rule, true);
  }

  private RegressionPlace flat(LinearMeans means, double[] times) {
    return new RegressionPlace(means, flatRule, times, 0, new double[means.studies()]);
  }

  private static Top higher(Top flat, Top spread) {
    return spread.place().tau > 0 && spread.value() > flat.value() + level(flat.place())
        ? spread
        : flat;
  }

  private Top withSpread(RegressionPlace flat) {
    double nearFlat = Math.sqrt(NEGLIGIBLE * studies.size() * flat.varianceWithin());
    double[] moments = moments(flat);
    Top spread = climbFrom(flat, moments[0]);
    if (!stands(spread.place(), flat, nearFlat)) {
      spread = climbFrom(flat, moments[1]);
    }
    return spread.place().tau < nearFlat ? new Top(flat, true) : spread;
  }

  private Top climbFrom(RegressionPlace flat, double tau) {
    RegressionPlace at = flat.elsewhere(flat.times, tau, studies, tau < MODERATE ? fewRule : rule);
    if (tau < MODERATE) {
      at = climb(at, fewRule, false).place().by(rule);
    }
    return at.tau == 0 ? new Top(flat, true) : climb(at, rule, false);
  }

  private static boolean stands(RegressionPlace spread, RegressionPlace flat, double nearFlat) {
    return spread.tau >= nearFlat && spread.value > flat.value + level(flat);
  }

  private static double level(RegressionPlace place) {
    return 1e-10 + 1e-12 * Math.abs(place.value);
  }

  /**
   * Two values of tau to start from: what the studies' own values differ beyond what their
   * information explains, and all they differ, each counted once.
   */
  private double[] moments(RegressionPlace flat) {
    double squares = 0;
    double expected = 0;
    double scale = 0;
    double information = 0;
    double all = 0;
    for (int i = 0; i < studies.size(); i++) {
      double w = studies.startInformation(i);
      double distance = studies.start(i) - flat.means.mean(i, flat.times);
      double shrunk = w / (1 + w);
      squares += shrunk * distance * distance;
      expected += shrunk / w;
      scale += shrunk;
      information += w;
      all += distance * distance / studies.size();
    }
    double moment = (squares - expected) / scale;
    return new double[] {
      Math.sqrt(Math.max(moment, studies.size() / information / 4)), Math.sqrt(all) + 0.1
    };
  }

  /** Weighted least squares of the studies' own values. */
  private double[] start(LinearMeans means) {
    int q = means.columns();
    double[][] squares = new double[q][q];
    double[] right = new double[q];
    double[] none = new double[q];
    for (int i = 0; i < studies.size(); i++) {
      double w = studies.startInformation(i);
      double own = studies.start(i) - means.mean(i, none);
      for (int a = 0; a < q; a++) {
        right[a] += w * means.value(i, a) * own;
        for (int b = 0; b <= a; b++) {
          squares[a][b] += w * means.value(i, a) * means.value(i, b);
        }
      }
    }
    return CholeskyFactor.of(squares).solve(right);
  }

  /** Beyond any spread that the studies' own values could show about their means. */
  private double furthest(RegressionPlace from) {
    double most = 0;
    for (int i = 0; i < studies.size(); i++) {
      most = Math.max(most, Math.abs(studies.start(i) - from.means.mean(i, from.times)));
    }
    return 50 + 5 * most;
  }

  private Top climb(RegressionPlace from, TrueValueIntegral integral, boolean held) {
    RegressionPlace at = from;
    double furthest = furthest(from);
    for (int i = 0; i < MOST_STEPS; i++) {
      RegressionPlace.Step step = at.step(held);
      double promised = at.promise(step);
      if (!Double.isFinite(promised)) {
        return new Top(at, false);
      }
      boolean last = promised < SETTLED;
      double longest =
          Math.max(at.means.farthest(step.times()), Math.abs(step.tau())) / (1 + at.tau / LONGEST);
      double share = longest > LONGEST ? LONGEST / longest : 1;
      double least = at.value - (last ? 1e-9 + level(at) : 0);
      RegressionPlace next = at.after(step, share, integral);
      for (int cut = 0; cut < MOST_HALVINGS && !(next.value >= least); cut++) {
        share /= 2;
        next = at.after(step, share, integral);
      }
      if (!(next.value >= least)) {
        return new Top(at, promised < 1e-6 && at.isHill(held));
      }
      at = next;
      if (last) {
        return new Top(at, at.isHill(held));
      }
      if (!held && at.tau > furthest) {
        return new Top(at, false);
      }
    }
    return new Top(at, false);
  }
}
