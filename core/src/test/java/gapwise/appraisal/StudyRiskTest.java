package gapwise.appraisal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Risk;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class StudyRiskTest {
  private static final Outcome UNION = Outcome.of("union");
  private static final Outcome INFECTION = Outcome.of("deep-infection");

  @Test
  void aStudyThatNobodyJudgedIsNotRated() {
    assertEquals(Risk.NOT_RATED, StudyRisk.of(Judged.study()));
    assertEquals(Risk.NOT_RATED, StudyRisk.of(Judged.study(), UNION));
  }

  @Test
  void whatIsJudgedOfTheResultCountsBeforeWhatIsJudgedOfTheStudy() {
    Study study =
        Judged.study(
            Judged.by("minors", "2 2 2 2 2 2 2 2", "S"),
            Judged.of("robins-i", "M L L L L M L", "", Optional.of("union")));
    assertEquals(Risk.SOME, StudyRisk.of(study, UNION));
    assertEquals(Risk.SERIOUS, StudyRisk.of(study, INFECTION));
    assertEquals(Risk.SERIOUS, StudyRisk.of(study));
  }

  @Test
  void whatIsJudgedOfAnotherOutcomeSaysNothing() {
    Study study =
        Judged.study(Judged.of("robins-i", "L L L L L L L", "", Optional.of("deep-infection")));
    assertEquals(Risk.LOW, StudyRisk.of(study, INFECTION));
    assertEquals(Risk.NOT_RATED, StudyRisk.of(study, UNION));
  }

  @Test
  void anAppraisalThatComesToNothingLeavesTheStudyAsItWas() {
    Study study =
        Judged.study(
            Judged.by("minors", "2 2 2 2 2 2 2 2", ""),
            Judged.by("jbi-case-series", "Y Y Y Y Y Y Y Y Y Y", "C"));
    assertEquals(Risk.CRITICAL, StudyRisk.of(study, UNION));
  }

  @Test
  void theWorseOfTwoStandsAndAnyRatingBeforeNone() {
    assertEquals(Risk.CRITICAL, Risk.SERIOUS.orWorse(Risk.CRITICAL));
    assertEquals(Risk.LOW, Risk.LOW.orWorse(Risk.NOT_RATED));
    assertEquals(Risk.LOW, Risk.NOT_RATED.orWorse(Risk.LOW));
    assertEquals(Risk.NOT_RATED, Risk.NOT_RATED.orWorse(Risk.NOT_RATED));
  }
}
