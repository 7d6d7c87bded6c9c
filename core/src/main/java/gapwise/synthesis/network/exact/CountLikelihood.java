package gapwise.synthesis.network.exact;

import gapwise.budget.Work;
import java.util.ArrayList;
import java.util.List;

/**
 * The log likelihood of all studies by the effects of treatments and the standard deviation between
 * studies, which is the last number of every array here.
 */
final class CountLikelihood {
  /**
   * No arm's log odds hang on a parameter: the treatment that others of its piece are set against.
   */
  static final int NONE = -1;

  private final List<StudyMarginal> studies;
  private final List<int[]> places;
  private final int effects;

  /**
   * @param studies that tell something
   * @param places of each study's arms among the effects, or {@link #NONE}
   * @param effects how many there are
   */
  CountLikelihood(List<StudyMarginal> studies, List<int[]> places, int effects) {
    this.studies = List.copyOf(studies);
    this.places = List.copyOf(places);
    this.effects = effects;
  }

  /** How many effects there are; tau has this place. */
  int effects() {
    return effects;
  }

  /** The log likelihood at some effects and, last, tau. */
  LocalLikelihood at(double[] point) {
    LocalLikelihood sum = new LocalLikelihood(effects + 1);
    for (int s = 0; s < studies.size(); s++) {
      Work.check();
      int[] place = places.get(s);
      add(studies.get(s).at(odds(s, point), Math.abs(point[effects])), place, sum);
    }
    return sum;
  }

  private double[] odds(int study, double[] point) {
    int[] place = places.get(study);
    double[] eta = new double[place.length];
    for (int j = 0; j < eta.length; j++) {
      eta[j] = place[j] == NONE ? 0 : point[place[j]];
    }
    return eta;
  }

  private void add(LocalLikelihood one, int[] place, LocalLikelihood sum) {
    sum.value += one.value;
    for (int i = 0; i <= place.length; i++) {
      int a = i == place.length ? effects : place[i];
      if (a != NONE) {
        sum.slopes[a] += one.slopes[i];
        for (int j = 0; j <= place.length; j++) {
          int b = j == place.length ? effects : place[j];
          if (b != NONE) {
            sum.bends[a][b] += one.bends[i][j];
          }
        }
      }
    }
  }

  /** What a contrast of one study is known by at these effects, on average over studies. */
  double precision(double[] point) {
    double sum = 0;
    for (int s = 0; s < studies.size(); s++) {
      sum += studies.get(s).precision(odds(s, point)) / studies.size();
    }
    return sum;
  }

  /** The likelihood with points enough for its value here, and whether that could be had. */
  record Refined(CountLikelihood likelihood, boolean changed, boolean fine) {}

  /** Points that one evaluation takes, over all studies. */
  int points() {
    return studies.stream().mapToInt(StudyMarginal::points).sum();
  }

  /**
   * Takes more points for each study until they change its log likelihood here by no more than so
   * much.
   */
  Refined refinedAt(double[] point, double most) {
    List<StudyMarginal> refined = new ArrayList<>();
    boolean changed = false;
    boolean fine = true;
    double tau = Math.abs(point[effects]);
    for (int s = 0; s < studies.size(); s++) {
      StudyMarginal one = studies.get(s);
      double[] eta = odds(s, point);
      double value = one.at(eta, tau).value;
      boolean settled = tau == 0;
      while (!settled && one.canBeFiner()) {
        Work.check();
        StudyMarginal next = one.finer();
        double better = next.at(eta, tau).value;
        settled = Math.abs(better - value) <= most;
        if (!settled) {
          one = next;
          value = better;
          changed = true;
        }
      }
      fine &= settled;
      refined.add(one);
    }
    return new Refined(new CountLikelihood(refined, places, effects), changed, fine);
  }
}
