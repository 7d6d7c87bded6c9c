package gapwise.errorrate;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import gapwise.synthesis.heterogeneity.EffectSample;

/**
 * A world without differences: every study has the same mean, whatever its group, its moderator or
 * its team. Log odds of series of 5 to 60 patients near one half, so variances are 4/n; their true
 * values differ with standard deviation tau, by study or, in clusters, by team for half of the
 * variance.
 *
 * @param units studies, or teams of one to four studies
 * @param tau standard deviation between studies
 */
record World(int units, double tau) {
  private static final int[] UNITS = {3, 4, 5, 6, 10, 20};
  private static final double[] TAUS = {0, 0.3, 0.6, 1.0};
  private static final double LEAST_PATIENTS = 5;
  private static final double MOST_PATIENTS = 60;
  private static final int MOST_OF_A_TEAM = 4;

  /** All of them, by units and then by tau. */
  static List<World> all() {
    List<World> all = new ArrayList<>();
    for (int units : UNITS) {
      for (double tau : TAUS) {
        all.add(new World(units, tau));
      }
    }
    return all;
  }

  static List<Integer> numbersOfUnits() {
    List<Integer> all = new ArrayList<>();
    for (int units : UNITS) {
      all.add(units);
    }
    return all;
  }

  /**
   * What was drawn.
   *
   * @param moderators a number for each study, in clusters the same for a team
   * @param teams the team of each study
   */
  record Drawn(EffectSample sample, List<Double> moderators, List<String> teams) {}

  /** Studies each for itself. */
  Drawn studies(SplittableRandom random) {
    return draw(random, 1);
  }

  /** Studies of teams. */
  Drawn teams(SplittableRandom random) {
    return draw(random, MOST_OF_A_TEAM);
  }

  private Drawn draw(SplittableRandom random, int mostOfATeam) {
    List<Double> effects = new ArrayList<>();
    List<Double> variances = new ArrayList<>();
    List<Double> moderators = new ArrayList<>();
    List<String> teams = new ArrayList<>();
    double part = mostOfATeam == 1 ? 0 : Math.sqrt(0.5);
    for (int unit = 0; unit < units; unit++) {
      int size = 1 + (mostOfATeam == 1 ? 0 : random.nextInt(mostOfATeam));
      double shared = part * tau * random.nextGaussian();
      double moderator = random.nextDouble(2, 12);
      for (int i = 0; i < size; i++) {
        double logs = random.nextDouble(Math.log(LEAST_PATIENTS), Math.log(MOST_PATIENTS));
        double variance = 4 / (double) Math.round(Math.exp(logs));
        double own = Math.sqrt(1 - part * part) * tau * random.nextGaussian();
        effects.add(shared + own + Math.sqrt(variance) * random.nextGaussian());
        variances.add(variance);
        moderators.add(moderator);
        teams.add("team " + unit);
      }
    }
    return new Drawn(EffectSample.of(effects, variances), moderators, teams);
  }
}
