package gapwise.evidence.check;

import gapwise.evidence.Study;
import gapwise.evidence.rule.CollectionRule;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.FoldedText;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.unit.PartialDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Studies of one hospital and one method whose recruitment overlaps, so that patients may be
 * counted twice. Studies that share a cohort or say they are the same are left alone.
 */
final class OverlappingCohorts implements CollectionRule {
  private record Place(String centre, String method) {}

  @Override
  public void check(List<Study> fresh, List<Study> known, Findings findings) {
    Map<Place, List<Study>> seen = new HashMap<>();
    known.forEach(study -> remember(study, seen));
    for (Study study : fresh) {
      Set<String> overlapping = new LinkedHashSet<>();
      for (Place place : places(study)) {
        seen.getOrDefault(place, List.of()).stream()
            .filter(other -> !other.id().equals(study.id()))
            .filter(other -> !SamePaperTwice.linked(other, study))
            .filter(other -> overlap(other, study))
            .forEach(other -> overlapping.add(other.id()));
      }
      if (!overlapping.isEmpty()) {
        findings.doubtful(
            new RecordPart.OfStudy(study.id(), "centres"),
            "overlapping-cohorts",
            "The same hospital treated patients by the same method in the same years in "
                + String.join(", ", overlapping)
                + ". If patients are in both, give both studies one name in cohort; if they may be,"
                + " name the other study in overlap_suspected_with.");
      }
      remember(study, seen);
    }
  }

  @Override
  public Predicate<Study> near(List<Study> fresh) {
    Set<Place> sought = new HashSet<>();
    fresh.forEach(study -> sought.addAll(places(study)));
    return known -> !Collections.disjoint(places(known), sought);
  }

  private static void remember(Study study, Map<Place, List<Study>> seen) {
    places(study)
        .forEach(place -> seen.computeIfAbsent(place, key -> new ArrayList<>()).add(study));
  }

  private static Set<Place> places(Study study) {
    Set<Place> places = new LinkedHashSet<>();
    if (study.recruitmentFrom().isPresent() && study.recruitmentTo().isPresent()) {
      for (String centre : study.centres()) {
        study
            .arms()
            .forEach(
                arm ->
                    places.add(new Place(FoldedText.of(centre), arm.method().principal().code())));
      }
    }
    return places;
  }

  private static boolean overlap(Study a, Study b) {
    return start(a) <= end(b) && start(b) <= end(a);
  }

  private static int start(Study study) {
    return study.recruitmentFrom().map(PartialDate::earliestMonth).orElseThrow();
  }

  private static int end(Study study) {
    return study.recruitmentTo().map(PartialDate::latestMonth).orElseThrow();
  }
}
