package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Appraisal;
import gapwise.evidence.Arm;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Risk;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is told of the risk of bias behind a result. All series are invented. */
class MovedByRiskTest {
  @TempDir Path home;

  private static Study series(String method, int number, int united, int of, String risk) {
    Instrument by = Instrument.of("jbi-case-series");
    return Study.with(method + number, Citation.with("Invented " + method + number).build())
        .arms(List.of(Arm.with("A", MethodUsed.of(Method.of(method))).build()))
        .outcomes(
            List.of(
                OutcomeReport.with(
                        new Scope.OneArm("A"),
                        Outcome.of("union"),
                        new ReportedValue.Events(EventCount.of(united, of)))
                    .build()))
        .appraisals(
            risk.isEmpty()
                ? List.of()
                : List.of(
                    new Appraisal(
                        by,
                        by.version(),
                        Optional.empty(),
                        Optional.empty(),
                        List.of(),
                        Optional.of(
                            new Appraisal.Overall(risk, Optional.empty(), Optional.empty())),
                        List.of(),
                        Optional.empty())))
        .build();
  }

  private static Question union(Set<Risk> risks) {
    return Question.about(Outcome.of("union"), SearchRequest.EVERYTHING.withRisks(risks));
  }

  @Test
  void eachMethodOfWhichSeriesWereLeftOutTellsBothNumbers() {
    List<Study> studies =
        List.of(
            series("bone-transport", 1, 12, 14, "low"),
            series("bone-transport", 2, 23, 27, ""),
            series("bone-transport", 3, 9, 30, "critical"),
            series("autograft", 1, 18, 20, "serious"),
            series("induced-membrane", 1, 30, 41, "some"),
            series("induced-membrane", 2, 12, 14, "some"));
    try (InventedBase base = InventedBase.of(home, studies)) {
      Answer every = base.answers().ask(union(Set.of()));
      Answer without = base.answers().ask(union(Risk.neitherSeriousNorCritical()));
      List<String> told = MovedByRisk.told(every, without);
      assertEquals(2, told.size(), told.toString());
      assertTrue(
          told.get(0)
              .matches(
                  "Bone transport in an external frame: (no average|\\d+ \\(.*\\)) with all 3 series,"
                      + " \\d+ \\(.*\\) with 1 left out for its risk of bias\\."),
          told.get(0));
      assertTrue(
          told.get(1)
              .endsWith(
                  "with the one series; none is left without those left out for their risk of"
                      + " bias."),
          told.get(1));
      assertEquals(List.of(), MovedByRisk.told(every, every));
      RiskOfSeries risk = RiskOfSeries.of(every.selection());
      assertEquals(2, risk.high());
      assertEquals(
          "Risk of bias of the 6 series, as people judged it: 1 low, 2 some, 1 serious, 1 critical,"
              + " 1 not rated. Not rated is not the same as low.",
          risk.words());
      assertEquals(
          "Risk of bias of the one series, as people judged it: 1 low.",
          RiskOfSeries.of(base.answers().select(union(Set.of(Risk.LOW)))).words());
      assertEquals(
          "Nobody judged the risk of bias of the one series; that is not the same as low.",
          RiskOfSeries.of(base.answers().select(union(Set.of(Risk.NOT_RATED)))).words());
    }
  }
}
