package gapwise.selection;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Keeps patients from being counted twice: of studies that share a cohort, or say that they are
 * records of the same study, the one with the most patients in its rows stays; of equals the one
 * with the longest follow-up, then the one whose id comes first.
 */
final class Cohorts {
  private final Map<String, String> parent = new HashMap<>();
  private final Map<String, Standing> standings = new HashMap<>();

  /** What studies of one cohort are compared by. */
  private record Standing(Study study, int patients, double followUpMonths) {
    static final Comparator<Standing> BEST_FIRST =
        Comparator.comparingInt(Standing::patients)
            .thenComparingDouble(Standing::followUpMonths)
            .reversed()
            .thenComparing(standing -> standing.study().id());
  }

  private Cohorts() {}

  /** For each study that must give way, the study that stays. */
  static Map<String, Study> givingWay(List<SelectedRow> rows) {
    Cohorts cohorts = new Cohorts();
    rows.forEach(cohorts::add);
    return cohorts.givingWay();
  }

  /** The same where studies that are only suspected of sharing patients are taken to share them. */
  static Map<String, Study> givingWayOnSuspicion(List<SelectedRow> rows) {
    Cohorts cohorts = new Cohorts();
    rows.forEach(cohorts::add);
    for (SelectedRow row : rows) {
      String own = study(row.study().id());
      row.study().overlapSuspectedWith().stream()
          .filter(cohorts.standings::containsKey)
          .forEach(other -> cohorts.join(own, study(other)));
    }
    return cohorts.givingWay();
  }

  private Map<String, Study> givingWay() {
    Map<String, List<Standing>> groups = new HashMap<>();
    for (Standing standing : standings.values()) {
      String root = root(study(standing.study().id()));
      groups.computeIfAbsent(root, key -> new ArrayList<>()).add(standing);
    }
    Map<String, Study> givingWay = new HashMap<>();
    for (List<Standing> group : groups.values()) {
      group.sort(Standing.BEST_FIRST);
      for (Standing other : group.subList(1, group.size())) {
        givingWay.put(other.study().id(), group.get(0).study());
      }
    }
    return givingWay;
  }

  private void add(SelectedRow row) {
    Study study = row.study();
    standings.merge(
        study.id(),
        new Standing(study, row.speaksOf().orElse(0), followUpMonths(study)),
        (a, b) -> new Standing(study, a.patients() + b.patients(), a.followUpMonths()));
    join(study(study.id()), study(study.id()));
    study.cohort().ifPresent(name -> join(study(study.id()), cohort(name)));
    study.sameStudyAs().forEach(other -> join(study(study.id()), study(other)));
  }

  private static String study(String id) {
    return "study " + id;
  }

  private static String cohort(String name) {
    return "cohort " + name.strip().toLowerCase(Locale.ROOT);
  }

  private void join(String a, String b) {
    parent.putIfAbsent(a, a);
    parent.putIfAbsent(b, b);
    parent.put(root(a), root(b));
  }

  private String root(String name) {
    String root = name;
    String above = parent.getOrDefault(root, root);
    while (!above.equals(root)) {
      root = above;
      above = parent.getOrDefault(root, root);
    }
    // Shortens the way for later look-ups, so that long chains cost no more than short ones.
    String step = name;
    while (!step.equals(root)) {
      String next = parent.getOrDefault(step, root);
      parent.put(step, root);
      step = next;
    }
    return root;
  }

  private static double followUpMonths(Study study) {
    List<QuantitySummary> followUps = new ArrayList<>();
    study.arms().forEach(arm -> arm.baseline().followUp().ifPresent(followUps::add));
    study.whole().followUp().ifPresent(followUps::add);
    return followUps.stream()
        .filter(summary -> summary.unit().dimension() == Unit.Dimension.TIME)
        .map(summary -> summary.in(Unit.MONTHS).centre())
        .filter(OptionalDouble::isPresent)
        .mapToDouble(OptionalDouble::getAsDouble)
        .max()
        .orElse(0);
  }
}
