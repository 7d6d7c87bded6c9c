package gapwise.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.exchange.Template;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a synthesis would take of printed numbers, told at their fields. All studies are invented.
 */
class UsedBySynthesisTest {
  private static final String OUTCOME = "time-to-union";

  /** Cells as "column=text, column=text". */
  private static Map<String, String> cells(String text) {
    Map<String, String> cells = new HashMap<>();
    for (String one : text.split(", ")) {
      cells.put(one.substring(0, one.indexOf('=')), one.substring(one.indexOf('=') + 1));
    }
    return cells;
  }

  private static Draft with(Draft draft, String arm, String text) {
    Map<String, String> cells = cells(text);
    cells.put(Template.ARM, arm);
    cells.putIfAbsent(Template.OUTCOME, OUTCOME);
    cells.putIfAbsent("unit", "months");
    return draft.withRow(Template.OUTCOMES, cells);
  }

  private static Noted only(Draft draft) {
    List<Noted> told = UsedBySynthesis.of(draft);
    assertEquals(1, told.size(), "told: " + told);
    assertEquals(Noted.Weight.USED, told.get(0).weight());
    return told.get(0);
  }

  private static Noted only(String text) {
    return only(with(DraftTest.complete(), "A", text));
  }

  /**
   * First: the worked example of the Cochrane Handbook, 6.5.2 (25 patients, 30.0 to 34.2, SD 5.09).
   * Second: 1.5 times the root of 16. Third and fourth: 15/3.928 and 5/1.272, normal quantiles by
   * SciPy (core/src/test/reference/spread_conversions.py: 3.818316 and 3.930591). Fifth: the mean
   * of those two. Sixth: (10 + 22)/2 and 12 by the weights of Luo and others 2018, w = 0.7 +
   * 0.39/25 = 0.7156, so 0.7156 x 16 + 0.2844 x 12 = 14.862, SD 12/1.27207 = 9.433 by the same
   * quantile. The quartiles lie 8 of 12 to one side: |10 + 22 - 24|/12 = 0.67 is above 2.65/5 -
   * 6/625 = 0.52. Seventh: w = 4/(4 + 25^0.75) = 0.26349, 0.26349 x 11.5 + 0.73651 x 11 = 11.132,
   * and 3.818.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "mean=32.1, ci_lower=30.0, ci_upper=34.2, n=25 | ci_lower | 32.1 | 5.1 | 6.5.2",
        "mean=20, se=1.5, n=16 | se | 20.0 | 6.0 | 6.5.2",
        "mean=11, min=4, max=19, n=25 | min | 11.0 | 3.8 | Wan",
        "mean=9.5, q1=7, q3=12, n=25 | q1 | 9.5 | 3.9 | Wan",
        "mean=10, q1=7, q3=12, min=4, max=19, n=25 | q1 | 10.0 | 3.9 | Wan",
        "median=12, q1=10, q3=22, n=25 | median | 14.9 | 9.4 | Shi",
        "median=11, min=4, max=19, n=25 | median | 11.1 | 3.8 | Luo"
      })
  void whatIsWorkedOutIsToldWithItsMethod(
      String cells, String field, String mean, String sd, String method) {
    Noted told = only(cells);
    assertEquals(field, told.columns().get(0));
    assertTrue(
        told.message().contains("Mean " + mean + " and SD " + sd + " months"), told.message());
    assertTrue(told.message().contains(method), told.message());
  }

  /**
   * The worked example of the Cochrane Handbook, 6.5.2.3 (from memory): means 3.8 apart in 25 and
   * 22 patients, p 0.008, so t 2.78, standard error 1.37 and SD 4.69.
   */
  @Test
  void theExampleOfTheHandbookIsWorkedOutFromItsPValue() {
    Draft draft = twoGroups();
    draft = with(draft, "A", "mean=13.8, n=25, test_arm=B, test_p=0.008");
    draft = with(draft, "B", "mean=10, n=22");
    List<Noted> told = UsedBySynthesis.of(draft);
    assertEquals(2, told.size(), "told: " + told);
    assertEquals("test_p", told.get(0).columns().get(0));
    for (Noted one : told) {
      assertTrue(one.message().contains("SD 4.7 months"), one.message());
      assertTrue(one.message().contains("6.5.2.3"), one.message());
    }
  }

  private static Draft twoGroups() {
    return DraftTest.complete()
        .withRow(
            Template.ARMS,
            Map.of(Template.ARM, "B", "method", "induced-membrane", "patients", "22"));
  }

  @Test
  void aMeanWithItsOwnDeviationIsTakenAsItStandsAndNothingIsSaid() {
    assertEquals(
        List.of(),
        UsedBySynthesis.of(with(DraftTest.complete(), "A", "mean=9, sd=2, n=30, min=5, max=14")));
  }

  @Test
  void whatIsNotUsedSaysWhy() {
    assertTrue(only("median=11, n=25").message().contains("not pooled"));
    assertTrue(only("min=4, max=19, n=25").message().contains("neither a mean nor a median"));
    assertTrue(only("mean=11, n=25").message().contains("without weight"));
    assertTrue(
        only("mean=11, n=25, spread_unstated=± 7").message().contains("does not say whether"));
    assertTrue(only("mean=11, sd=2, n=1").message().contains("single patient"));
  }

  @Test
  void patientsOfTheGroupAreTakenAloudWhereTheValueNamesNone() {
    String message = only("mean=20, se=1.5").message();
    // 1.5 times the root of 32 is 8.485.
    assertTrue(message.contains("SD 8.5 months"), message);
    assertTrue(message.contains("the 32 patients of the group"), message);
  }

  @Test
  void aValueIsToldInTheUnitInWhichItsOutcomeIsCompared() {
    // 304.4 days over 30.44 are 10 months (365.25/12 is 30.4375); the SD is that of the range in
    // months: (608.8 - 152.2)/30.4375 = 15.00 over twice the quantile 1.9642 for 25.
    String message = only("mean=304.4, min=152.2, max=608.8, n=25, unit=days").message();
    assertTrue(message.contains("Mean 10.0 and SD 3.8 months"), message);
  }

  @Test
  void aValueOfAllGroupsIsToldLikeAnyOther() {
    Draft draft = with(twoGroups(), "ALL", "mean=20, se=1.5, n=16");
    assertTrue(only(draft).message().contains("SD 6.0 months"));
  }

  @Test
  void whatIsWrongElsewhereDoesNotSilenceARightRowAndAWrongRowIsSilent() {
    Draft draft = DraftTest.complete();
    int study = draft.rows(Template.STUDIES).get(0).number();
    draft = draft.withCell(study, "year", "soon", Optional.empty());
    draft = draft.withCell(study, "title", "", Optional.empty());
    draft = with(draft, "A", "mean=20, se=1.5, n=16");
    draft = with(draft, "A", "mean=x, se=1.5, n=16, time_point=12, time_point_unit=months");
    draft = with(draft, "A", "median=20, q1=30, q3=10, n=16");
    assertTrue(only(draft).message().contains("SD 6.0 months"));
  }

  /** log 2 = 0.693, (log 4 - log 1)/(2 x 1.96) = 0.354; by hand. */
  @Test
  void anEffectIsNotPooledAndSaysWhatAPlanWouldTake() {
    Draft draft =
        with(
            twoGroups(),
            "A",
            "against_arm=B, outcome=primary-union, effect_kind=odds ratio, effect_estimate=2,"
                + " effect_lower=1, effect_upper=4, unit=");
    String message = only(draft).message();
    assertTrue(message.contains("0.69"), message);
    assertTrue(message.contains("0.35"), message);
    assertTrue(message.contains("no pooled page"), message);
  }

  @Test
  void groupsStandByTheirNumbersAsPrinted() {
    Draft draft = DraftTest.complete();
    int arm = draft.rows(Template.ARMS).get(0).number();
    draft =
        draft
            .withCell(arm, "defect_length_median", "52", Optional.empty())
            .withCell(arm, "defect_length_min", "30", Optional.empty())
            .withCell(arm, "defect_length_max", "110", Optional.empty())
            .withCell(arm, "defect_length_unit", "mm", Optional.empty())
            .withCell(arm, "follow_up_min", "24", Optional.empty())
            .withCell(arm, "follow_up_max", "60", Optional.empty())
            .withCell(arm, "follow_up_unit", "months", Optional.empty());
    List<Noted> told = UsedBySynthesis.of(draft);
    assertEquals(2, told.size(), "told: " + told);
    assertEquals("defect_length_median", told.get(0).columns().get(0));
    assertTrue(told.get(0).message().contains("median as printed, 5.2 cm"));
    assertTrue(told.get(0).message().contains("from 3 to 11 cm"));
    assertEquals("follow_up_min", told.get(1).columns().get(0));
    assertTrue(told.get(1).message().contains("at least 24.0 months"));
  }

  @Test
  void nothingIsTypedAndNothingIsTold() {
    assertEquals(List.of(), UsedBySynthesis.of(Draft.of("example2031")));
    assertFalse(UsedBySynthesis.of(DraftTest.complete()).stream().findAny().isPresent());
  }
}
