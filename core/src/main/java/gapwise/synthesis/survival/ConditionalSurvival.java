package gapwise.synthesis.survival;

import gapwise.budget.Work;
import java.util.ArrayList;
import java.util.List;

/**
 * Of the patients of each study who were still followed at the start of an interval, the share who
 * passed through it without the event: the ratio of the study's Kaplan-Meier curve at its ends. A
 * study speaks of an interval if it had a patient at risk at its start and followed someone to its
 * end, or lost nobody unseen. Ends with the last interval of which two studies speak.
 */
final class ConditionalSurvival {
  private final List<Double> times = new ArrayList<>();
  private final List<double[]> shares = new ArrayList<>();
  private final List<double[]> sizes = new ArrayList<>();
  private final List<Integer> atRisk = new ArrayList<>();

  /**
   * Works it out.
   *
   * @param ends of the intervals, above 0, rising; the first interval starts at 0
   */
  ConditionalSurvival(List<PatientTimes> studies, List<Double> ends) {
    List<KaplanMeier> curves = studies.stream().map(KaplanMeier::of).toList();
    double start = 0;
    for (double end : ends) {
      Work.check();
      double[] share = new double[studies.size()];
      double[] size = new double[studies.size()];
      int followed = 0;
      int speaking = 0;
      for (int i = 0; i < studies.size(); i++) {
        int patients = start == 0 ? studies.get(i).size() : studies.get(i).followedBeyond(start);
        if (patients > 0 && curves.get(i).isKnownAt(end)) {
          double before = start == 0 ? 1 : curves.get(i).survival(start);
          share[i] = curves.get(i).survival(end) / before;
          size[i] = patients - studies.get(i).censoredBetween(start, end) / 2.0;
          followed += patients;
          speaking++;
        }
      }
      if (speaking < 2) {
        break;
      }
      times.add(end);
      shares.add(share);
      sizes.add(size);
      atRisk.add(followed);
      start = end;
    }
  }

  /** Number of intervals of which at least two studies speak, from the first without a gap. */
  int intervals() {
    return times.size();
  }

  double end(int interval) {
    return times.get(interval);
  }

  /** Patients at risk at the start, in all studies that speak. */
  int atRisk(int interval) {
    return atRisk.get(interval);
  }

  boolean speaks(int study, int interval) {
    return sizes.get(interval)[study] > 0;
  }

  double share(int study, int interval) {
    return shares.get(interval)[study];
  }

  /**
   * Patients that a share rests on: those at risk at the start less half of those lost on the way
   * (the actuarial number, Cutler and Ederer, J Chronic Dis 1958;8:699).
   */
  double size(int study, int interval) {
    return sizes.get(interval)[study];
  }

  int studies() {
    return shares.isEmpty() ? 0 : shares.get(0).length;
  }

  int studies(int interval) {
    int count = 0;
    for (double size : sizes.get(interval)) {
      count += size > 0 ? 1 : 0;
    }
    return count;
  }

  /** The share of all patients together. */
  double together(int interval) {
    double sum = 0;
    double all = 0;
    for (int i = 0; i < studies(); i++) {
      sum += size(i, interval) * share(i, interval);
      all += size(i, interval);
    }
    return sum / all;
  }
}
