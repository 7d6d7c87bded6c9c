package gapwise.selection;

import gapwise.cohort.CohortLinks;
import gapwise.cohort.Member;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Keeps patients from being counted twice: of studies that share a cohort, say that they are
 * records of the same study, or of which a person settled that patients are shared, the one stays
 * that the person named for the outcome; where none is named, the one with the most patients in its
 * rows; of equals the one with the longest follow-up, then the one whose id comes first.
 */
final class Cohorts {
  private final Map<String, String> parent = new HashMap<>();
  private final Map<String, Standing> standings = new HashMap<>();

  /** What studies of one cohort are compared by. */
  private record Standing(Study study, boolean named, int patients, double followUpMonths) {
    static final Comparator<Standing> BEST_FIRST =
        Comparator.comparing(Standing::named)
            .thenComparingInt(Standing::patients)
            .thenComparingDouble(Standing::followUpMonths)
            .reversed()
            .thenComparing(standing -> standing.study().id());
  }

  private final Set<String> named = new HashSet<>();

  private Cohorts() {}

  /**
   * Why a study must give way, by its id.
   *
   * @param counted pairs of which persons settled that they share patients
   */
  static Map<String, Reason> givingWay(List<SelectedRow> rows, List<CohortLinks.Link> counted) {
    Cohorts cohorts = new Cohorts();
    for (CohortLinks.Link link : counted) {
      if (!isOfGroups(link)) {
        cohorts.join(study(link.one().study()), study(link.two().study()));
        link.counted().ifPresent(one -> cohorts.named.add(one.study()));
      }
    }
    rows.forEach(cohorts::add);
    Map<String, Reason> reasons = new HashMap<>();
    cohorts
        .givingWay()
        .forEach(
            (id, stays) ->
                reasons.put(
                    id,
                    new Reason.OverlappingCohort(
                        stays.citation().label(), cohorts.named.contains(stays.id()))));
    return reasons;
  }

  /** The same where studies that are only suspected of sharing patients are taken to share them. */
  static Map<String, Reason> givingWayOnSuspicion(List<SelectedRow> rows, CohortLinks links) {
    Cohorts cohorts = new Cohorts();
    rows.forEach(cohorts::add);
    for (SelectedRow row : rows) {
      String own = study(row.study().id());
      Stream.concat(
              row.study().overlapSuspectedWith().stream(),
              links.suspectedWith(row.study().id()).stream())
          .filter(cohorts.standings::containsKey)
          .forEach(other -> cohorts.join(own, study(other)));
    }
    Map<String, Reason> reasons = new HashMap<>();
    cohorts
        .givingWay()
        .forEach(
            (id, stays) ->
                reasons.put(
                    id,
                    new Reason.OverlapSuspected(
                        stays.citation().label(), links.suspectedWith(id).contains(stays.id()))));
    return reasons;
  }

  /**
   * Why one group must give way to another of which a person settled that patients are shared: the
   * one named stays, else the one with more patients.
   */
  static Map<SelectedRow, Reason> groupsGivingWay(
      List<SelectedRow> rows, List<CohortLinks.Link> counted) {
    Map<SelectedRow, Reason> givingWay = new HashMap<>();
    for (CohortLinks.Link link : counted) {
      List<SelectedRow> first = of(link.one(), rows, givingWay);
      List<SelectedRow> second = of(link.two(), rows, givingWay);
      if (isOfGroups(link) && !first.isEmpty() && !second.isEmpty()) {
        boolean firstStays =
            link.counted()
                .map(named -> named.equals(link.one()))
                .orElse(patients(first) >= patients(second));
        String stays = (firstStays ? first : second).get(0).label();
        Reason reason = new Reason.OverlappingCohort(stays, link.counted().isPresent());
        (firstStays ? second : first).forEach(row -> givingWay.put(row, reason));
      }
    }
    return givingWay;
  }

  private static boolean isOfGroups(CohortLinks.Link link) {
    return link.one().arm().isPresent() || link.two().arm().isPresent();
  }

  private static List<SelectedRow> of(
      Member member, List<SelectedRow> rows, Map<SelectedRow, Reason> gone) {
    return rows.stream()
        .filter(row -> !gone.containsKey(row))
        .filter(row -> row.study().id().equals(member.study()))
        .filter(row -> member.arm().map(arm -> arm.equals(row.arm().id())).orElse(true))
        .toList();
  }

  private static int patients(List<SelectedRow> rows) {
    return rows.stream().mapToInt(row -> row.speaksOf().orElse(0)).sum();
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
        new Standing(
            study, named.contains(study.id()), row.speaksOf().orElse(0), followUpMonths(study)),
        (a, b) -> new Standing(study, a.named(), a.patients() + b.patients(), a.followUpMonths()));
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
