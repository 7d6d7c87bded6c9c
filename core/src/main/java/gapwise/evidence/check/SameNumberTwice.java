package gapwise.evidence.check;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.Subgroup;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.StudyRule;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.Phase;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Two reports that both count and answer the same question, so that one body of patients would be
 * counted twice.
 */
final class SameNumberTwice implements StudyRule {
  private record Question(
      Scope scope,
      String outcome,
      Optional<String> definition,
      Optional<CountedUnit> counted,
      Optional<Clock> clock,
      Optional<Duration> timePoint,
      Optional<Subgroup> subgroup,
      Optional<Phase> phase,
      Class<?> form) {
    static Question of(OutcomeReport report) {
      return new Question(
          report.scope(),
          report.outcome().code(),
          report.definition(),
          report.counted(),
          report.clock(),
          report.timePoint(),
          report.subgroup(),
          report.phase(),
          report.value().getClass());
    }
  }

  @Override
  public void check(Study study, Findings findings) {
    Map<Question, ReportAt> first = new HashMap<>();
    for (ReportAt at : ReportAt.counting(study)) {
      ReportAt before = first.putIfAbsent(Question.of(at.report()), at);
      if (before != null) {
        findings.doubtful(
            at.part("outcome"),
            "same-number-twice",
            "'"
                + at.report().outcome().label()
                + "' of the same arm, time point and definition is given twice. Mark one as"
                + " alternative in the column standing, or say in definition, subgroup or time"
                + " point how they differ.");
      }
    }
  }
}
