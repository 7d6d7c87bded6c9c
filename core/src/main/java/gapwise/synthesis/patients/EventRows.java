package gapwise.synthesis.patients;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.numbers.gamma.LogBeta;

/**
 * Events by study in the form in which they are summed: patients of a study with the same moderator
 * are one count. Slopes are fitted per unit of {@code withinUnit} and {@code acrossUnit}, standard
 * deviations of what they multiply, so that coefficients are of one size.
 */
final class EventRows {
  final int[] starts;
  final double[] events;
  final double[] totals;
  final double[] within;
  final double[] across;
  final double[] spreads;
  final double constant;
  final double withinUnit;
  final double acrossUnit;

  private record Count(
      double events, double total, double within, double across, double spread, double constant) {}

  private EventRows(List<List<Count>> studies) {
    int rows = studies.stream().mapToInt(List::size).sum();
    starts = new int[studies.size() + 1];
    events = new double[rows];
    totals = new double[rows];
    within = new double[rows];
    across = new double[rows];
    spreads = new double[rows];
    int at = 0;
    double constants = 0;
    for (int s = 0; s < studies.size(); s++) {
      for (Count count : studies.get(s)) {
        events[at] = count.events();
        totals[at] = count.total();
        within[at] = count.within();
        across[at] = count.across();
        spreads[at] = count.spread();
        constants += count.constant();
        at++;
      }
      starts[s + 1] = at;
    }
    constant = constants;
    withinUnit = unit(within);
    acrossUnit = unit(across);
    for (int i = 0; i < rows; i++) {
      within[i] /= withinUnit;
      spreads[i] /= withinUnit;
      across[i] /= acrossUnit;
    }
  }

  private double unit(double[] values) {
    double sum = 0;
    double weights = 0;
    for (int i = 0; i < values.length; i++) {
      sum += totals[i] * values[i] * values[i];
      weights += values[i] == 0 ? 0 : totals[i];
    }
    double unit = Math.sqrt(sum / weights);
    return unit > 0 && Double.isFinite(unit) ? unit : 1;
  }

  static EventRows of(List<StudyEvidence<CountArm>> studies, Slopes slopes) {
    List<List<Count>> all = new ArrayList<>();
    for (StudyEvidence<CountArm> study : studies) {
      List<Count> counts = new ArrayList<>();
      if (!study.patients().isEmpty()) {
        counts.addAll(ofPatients(study, slopes));
      }
      for (CountArm arm : study.arms()) {
        double n = arm.total();
        double x = arm.events();
        counts.add(
            new Count(
                x,
                n,
                0,
                arm.moderator() - slopes.middle(),
                slopes.within() ? arm.spread().orElse(0) : 0,
                -Math.log1p(n) - LogBeta.value(x + 1, n - x + 1)));
      }
      all.add(counts);
    }
    return new EventRows(all);
  }

  private static List<Count> ofPatients(StudyEvidence<CountArm> study, Slopes slopes) {
    Map<Double, double[]> byModerator = new LinkedHashMap<>();
    for (Patient patient : study.patients()) {
      double[] count = byModerator.computeIfAbsent(patient.moderator() + 0.0, x -> new double[2]);
      count[0] += patient.outcome();
      count[1]++;
    }
    double mean = study.mean(Patient::moderator);
    List<Count> counts = new ArrayList<>();
    byModerator.forEach(
        (moderator, count) ->
            counts.add(
                new Count(count[0], count[1], moderator - mean, mean - slopes.middle(), 0, 0)));
    return counts;
  }

  int studies() {
    return starts.length - 1;
  }
}
