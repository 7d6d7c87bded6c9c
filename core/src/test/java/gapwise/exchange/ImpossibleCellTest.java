package gapwise.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.problem.Problem;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What cannot be is told once, at its own column, in words for people. */
class ImpossibleCellTest {
  /** How the constructors of records speak, to developers. */
  private static final Pattern FOR_DEVELOPERS =
      Pattern.compile("must be|must not|, was |needs words|is not a unit|finite|person-time");

  @ParameterizedTest(name = "{0} {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        // sheet | row | cells | end of the place | code | words that the message must hold
        "arms | 0 | lost_to_follow_up=-3 | (lost_to_follow_up) | impossible | 0 or more",
        "arms | 0 | patients=0 | (patients) | impossible | 1 or more",
        "arms | 0 | patients=-1 | (patients) | impossible | 1 or more",
        "arms | 0 | limbs=0 | (limbs) | impossible | 1 or more",
        "arms | 0 | defects=-2 | (defects) | impossible | 1 or more",
        "arms | 0 | male=-1 | (male) | impossible | 0 or more",
        "arms | 0 | male=5;male_of=0 | (male_of) | impossible | 1 or more",
        "arms | 0 | male=5;male_of=4 | (male) | impossible | male 5 exceed male_of 4",
        "arms | 0 | smokers_of=20 | (smokers_of) | incomplete-count | smokers_percent",
        "arms | 0 | smokers_percent=101 | (smokers_percent) | impossible | 0 to 100",
        "arms | 0 | diabetics=-1;diabetics_of=9 | (diabetics) | impossible | 0 or more",
        "arms | 0 | infected_percent=-0.5 | (infected_percent) | impossible | 0 to 100",
        "arms | 0 | age_sd=-2 | (age_sd) | impossible | 0 or more",
        "arms | 0 | age_n=0 | (age_n) | impossible | 1 or more",
        "arms | 0 | age_min=60;age_max=20;age_mean=40 | (age_min) and G (age_max) | impossible | age_min 60, which is larger than age_max 20",
        "arms | 0 | age_q1=50;age_q3=30 | (age_q1) and G (age_q3) | impossible | larger",
        "arms | 0 | age_ci_lower=50;age_ci_upper=30 | (age_ci_lower) and G (age_ci_upper) | impossible | larger",
        "arms | 0 | follow_up_median=90;follow_up_max=60;follow_up_unit=months | (follow_up_median) and G (follow_up_max) | impossible | larger",
        "arms | 0 | follow_up_se=-1;follow_up_unit=months | (follow_up_se) | impossible | 0 or more",
        "arms | 0 | defect_length_over_cm=0 | (defect_length_over_cm) | impossible | above 0",
        "arms | 0 | defect_length_over_cm=-4 | (defect_length_over_cm) | impossible | above 0",
        "arms | 0 | defect_stage=after-debridement | (defect_stage) | length-missing | defect_length_words",
        "arms | 0 | shortening_included=yes | (shortening_included) | length-missing | defect_length_words",
        "arms | 0 | defect_length_bands_cm=6-4: 3 | (defect_length_bands_cm) | not-a-band | end before it starts",
        "arms | 0 | bones=tibia -5 | (bones) | unknown-code | tibia",
        "studies | 0 | year=20015 | (year) | impossible | 2015",
        "studies | 0 | year=-2015 | (year) | impossible | 2015",
        "outcomes | 0 | events=-1 | (events) | impossible | 0 or more",
        "outcomes | 0 | total=0 | (total) | impossible | 1 or more",
        "outcomes | 0 | percent=120 | (percent) | impossible | 0 to 100",
        "outcomes | 0 | events= | (total) | incomplete-count | percent",
        "outcomes | 0 | followed=-5 | (followed) | impossible | 0 or more",
        "outcomes | 0 | time_point=-6;time_point_unit=months | (time_point) | impossible | 0 or more",
        "outcomes | 0 | subgroup=long;defect_from_cm=8;defect_to_cm=6 | (defect_from_cm) and H (defect_to_cm) | impossible | defect_from_cm 8, which is larger than defect_to_cm 6",
        "outcomes | 0 | subgroup=long;defect_from_cm=-8 | (defect_from_cm) | impossible | 0 or more",
        "outcomes | 0 | against_arm=A | (against_arm) | impossible | Name the other arm",
        "outcomes | 0 | person_time=0;person_time_unit=years;total= | (person_time) | impossible | above 0",
        "outcomes | 0 | outcome=complications;events=-4 | (events) | impossible | 0 or more",
        "outcomes | 0 | price_year=12;currency=EUR | (price_year) | impossible | 2015",
        "outcomes | 0 | events=;total=;categories=; | (categories) | not-a-category | excellent 12",
        "outcomes | 0 | events=;total=;categories=good -3 | (categories) | not-a-category | excellent 12",
        "outcomes | 2 | sd=-2 | (sd) | impossible | 0 or more",
        "outcomes | 2 | n=0 | (n) | impossible | 1 or more",
        "outcomes | 2 | mean=;sd=;n=20 | (n) | no-value | statement",
        "outcomes | 2 | mean=;sd=;value_words=about nine | (value_words) | no-value | statement",
        "outcomes | 2 | max=7 | (mean) and J (max) | impossible | mean 9, which is larger than max 7",
        "outcomes | 2 | mean=;sd=;effect_kind=odds ratio;effect_estimate=2;effect_lower=3;effect_upper=1 | (effect_lower) and M (effect_upper) | impossible | larger",
        "outcomes | 2 | mean=;sd=;effect_kind=odds ratio;effect_estimate=2;effect_p=1.2 | (effect_p) | impossible | 0 to 1",
        "patients | 0 | age=140 | (age) | impossible | 0 to 110",
        "patients | 0 | age=-1 | (age) | impossible | 0 to 110",
        "patients | 0 | defect_length=-3;defect_length_unit=cm | (defect_length) | impossible | 0 or more",
        "patients | 0 | follow_up=-3;follow_up_unit=months | (follow_up) | impossible | 0 or more",
      })
  void whatCannotBeIsToldOnceAtItsOwnColumn(
      String sheet, int row, String cells, String place, String code, String words) {
    List<Problem> problems =
        problems(FilledTemplate.sound().set(sheet, row, cells.split(";(?=\\w)")));
    assertEquals(1, problems.size(), problems.toString());
    Problem problem = problems.get(0);
    String row0 = "sheet " + sheet + ", row " + (row + 2) + ", column";
    assertTrue(problem.where().startsWith(row0), problem.where());
    assertTrue(problem.where().endsWith(place), problem.where());
    assertEquals(code, problem.code(), problem.message());
    assertTrue(problem.message().contains(words), problem.message());
    assertFalse(FOR_DEVELOPERS.matcher(problem.message()).find(), problem.message());
    assertEquals("s1", problem.about(), "the study is named");
  }

  @Test
  void anIdThatIsNoNameIsToldAtItsColumnOnEverySheet() {
    String broken = "case\n1";
    String tooLong = "x".repeat(121);
    assertEquals(
        "sheet patients, row 2, column C (patient)",
        only(FilledTemplate.sound().set("patients", 0, "patient=" + broken)).where());
    assertEquals(
        "sheet patients, row 2, column C (patient)",
        only(FilledTemplate.sound().set("patients", 0, "patient=" + tooLong)).where());
    Problem arm = only(FilledTemplate.sound().set("arms", 1, "arm_id=" + tooLong).withoutB());
    assertEquals("sheet arms, row 3, column B (arm_id)", arm.where());
    assertEquals("id-form", arm.code());
    List<Problem> study =
        problems(FilledTemplate.sound().add("studies", "study_id=" + tooLong, "title=Invented"));
    assertEquals("sheet studies, row 3, column A (study_id)", study.get(0).where());
    assertEquals("id-form", study.get(0).code());
  }

  @Test
  void oneCellThatCannotBeReadIsToldOnceAndNothingIsSaidOfTheCellsBesideIt() {
    assertEquals(
        "sheet outcomes, row 4, column J (effect_p)",
        only(FilledTemplate.sound()
                .set("outcomes", 2, "mean=", "sd=", "effect_kind=odds ratio")
                .set("outcomes", 2, "effect_estimate=2", "effect_p=few"))
            .where()
            .replaceAll("column [A-Z]+", "column J"));
    assertEquals(
        "not-a-whole-number",
        only(FilledTemplate.sound().set("outcomes", 0, "events=1.5", "total=")).code());
  }

  @Test
  void aStudyWithoutTheSheetOfArmsIsNotWordedByItsConstructor() {
    List<Problem> problems =
        problems(FilledTemplate.sound().without("arms").without("outcomes").without("patients"));
    assertEquals(List.of("missing-sheet"), problems.stream().map(Problem::code).toList());
  }

  private static Problem only(FilledTemplate template) {
    List<Problem> problems = problems(template);
    assertEquals(1, problems.size(), problems.toString());
    assertFalse(FOR_DEVELOPERS.matcher(problems.get(0).message()).find(), problems.toString());
    return problems.get(0);
  }

  private static List<Problem> problems(FilledTemplate template) {
    Imported read = template.read();
    assertTrue(read instanceof Imported.Wrong, read.toString());
    return ((Imported.Wrong) read).problems();
  }
}
