package gapwise.exchange;

import gapwise.evidence.Study;
import gapwise.evidence.check.EvidenceCheck;
import gapwise.evidence.rule.Finding;
import gapwise.evidence.rule.Severity;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/**
 * The studies of one template beside those that stand in the evidence base. A study under the id of
 * a known one is its new version and is not compared with its old self; one of the same content
 * asks nothing, for it was asked about when it was stored. Of the known ones only those are held
 * that a rule can want, so that memory is that of the template however large the base is.
 */
final class FreshStudies {
  private final List<Study> studies;
  private final List<Study> near = new ArrayList<>();
  private final Set<String> unchanged = new HashSet<>();

  /** Passes once over what is known. */
  FreshStudies(List<Study> studies, KnownEvidence known) {
    this.studies = studies;
    Map<String, Study> byId = new HashMap<>();
    studies.forEach(study -> byId.put(study.id(), study));
    Predicate<Study> wanted = EvidenceCheck.near(studies);
    known.forEach(
        before -> {
          Study version = byId.get(before.id());
          if (version == null) {
            if (wanted.test(before)) {
              near.add(before);
            }
          } else if (version.equals(before)) {
            unchanged.add(before.id());
          }
        });
  }

  /** Whether there are studies and all of them stand in the evidence base as they are here. */
  boolean allStandThere() {
    return !studies.isEmpty() && unchanged.size() == studies.size();
  }

  /** What is impossible or doubtful, without the doubts about what stands there unchanged. */
  List<Finding> findings() {
    List<Finding> findings = new ArrayList<>();
    List<Study> judged = new ArrayList<>();
    for (Study study : studies) {
      boolean stands = unchanged.contains(study.id());
      EvidenceCheck.of(study).stream()
          .filter(finding -> !stands || finding.severity() == Severity.IMPOSSIBLE)
          .forEach(findings::add);
      (stands ? near : judged).add(study);
    }
    findings.addAll(EvidenceCheck.among(judged, near));
    return findings;
  }
}
