package gapwise.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.problem.Problem;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Each rule of plausibility finds what it should at the cell where it stands, and lets the nearest
 * sound value pass. The limits are common practice without a source unless the rule names one.
 */
class ImpossibleAndDoubtfulTest {

  @Test
  void aSoundTemplateRaisesNothing() {
    assertEquals(List.of(), FilledTemplate.sound().found());
  }

  @ParameterizedTest(name = "{0} at {4}: {3}")
  @CsvSource(
      delimiter = '|',
      value = {
        // code | sheet | row | spoilt cells | column found | sound cells
        "defect-length-impossible | arms | 0 | defect_length_mean=460;defect_length_unit=mm | defect_length_mean | defect_length_mean=61;defect_length_unit=mm",
        "defect-length-of-zero | arms | 0 | defect_length_min=0;defect_length_unit=cm | defect_length_min | defect_length_min=1;defect_length_unit=cm",
        "defect-length-unusual | arms | 0 | defect_length_max=38;defect_length_unit=cm | defect_length_max | defect_length_max=20;defect_length_unit=cm",
        "defect-length-unusual | arms | 0 | defect_length_mean=15.5;defect_length_unit=cm | defect_length_mean | defect_length_mean=15;defect_length_unit=cm",
        "defect-length-unusual | arms | 0 | defect_length_min=0.6;defect_length_unit=cm | defect_length_min | defect_length_min=6;defect_length_unit=cm",
        "defect-length-unusual | patients | 0 | defect_length=380;defect_length_unit=mm | defect_length | defect_length=38;defect_length_unit=mm",
        "threshold-only | arms | 0 | defect_length_over_cm=4 | defect_length_over_cm | defect_length_over_cm=4;defect_length_median=6;defect_length_unit=cm",
        "sd-larger-than-mean | outcomes | 2 | sd=9.5 | sd | sd=4.5",
        "skewed | outcomes | 2 | sd=4.6 | sd | sd=4.4",
        "sd-larger-than-range-allows | outcomes | 2 | sd=3.5;min=6;max=12 | sd | sd=2.9;min=6;max=12",
        "sd-looks-like-se | outcomes | 2 | sd=0.5;n=20;min=6;max=14 | sd | sd=2.2;n=20;min=6;max=14",
        "sd-looks-like-se | outcomes | 2 | sd=0.5;n=20;ci_lower=8;ci_upper=10 | sd | sd=2.2;n=20;ci_lower=8;ci_upper=10",
        "mean-outside-interval | outcomes | 2 | ci_lower=9.5;ci_upper=11 | ci_lower | ci_lower=8;ci_upper=10",
        "interval-lopsided | outcomes | 2 | ci_lower=9;ci_upper=11 | ci_lower | ci_lower=8;ci_upper=10",
        "interval-against-sd | outcomes | 2 | n=20;ci_lower=5;ci_upper=13 | ci_lower | n=20;ci_lower=8.1;ci_upper=9.9",
        "negative | outcomes | 2 | mean=-9;sd= | mean | mean=9;sd=",
        "identical-sd | outcomes | 3 | sd=2 | sd | sd=2.1",
        "percent-contradicts-count | outcomes | 0 | percent=91 | percent | percent=90",
        // 2 of 3 is 66.66...: cut it is 66.6, rounded 66.7
        "percent-contradicts-count | outcomes | 0 | events=2;total=3;percent=66.5 | percent | events=2;total=3;percent=66.6",
        "percent-contradicts-count | outcomes | 0 | events=2;total=3;percent=66.8 | percent | events=2;total=3;percent=66.7",
        "percent-contradicts-count | outcomes | 0 | events=2;total=3;percent=65 | percent | events=2;total=3;percent=66",
        "percent-contradicts-count | outcomes | 0 | events=2;total=3;percent=68 | percent | events=2;total=3;percent=67",
        "percent-contradicts-count | outcomes | 0 | events=1;total=4;percent=24.9 | percent | events=1;total=4;percent=25",
        "percent-of-no-count | outcomes | 0 | events=;total=3;percent=65 | percent | events=;total=3;percent=66",
        "percent-of-no-count | outcomes | 0 | events=;percent=93 | percent | events=;percent=95",
        "more-than-the-arm | outcomes | 0 | total=21;unit_counted=limbs | total | total=20;unit_counted=limbs",
        "more-than-the-patients | outcomes | 0 | total=21 | total | total=20",
        "more-than-the-arm | arms | 0 | male=21 | male | male=15",
        "more-than-the-arm | arms | 0 | bones=tibia 15; femur 6 | bones | bones=tibia 14; femur 6",
        "more-than-the-arm | arms | 0 | gustilo_iiib=15;gustilo_iiia=6 | gustilo_iiib | gustilo_iiib=14;gustilo_iiia=6",
        "more-than-the-arm | arms | 0 | lost_to_follow_up=21 | lost_to_follow_up | lost_to_follow_up=4",
        "many-lost | arms | 0 | lost_to_follow_up=5 | lost_to_follow_up | lost_to_follow_up=4",
        "unusual-share | arms | 0 | male=9 | male | male=10",
        "unusual-share | arms | 0 | smokers=17 | smokers | smokers=16",
        "fewer-limbs-than-patients | arms | 0 | limbs=19 | limbs | limbs=20",
        "many-more-limbs-than-patients | arms | 0 | limbs=25 | limbs | limbs=24",
        "age-impossible | arms | 0 | age_max=350 | age_max | age_max=80",
        "age-unusual | arms | 0 | age_mean=12 | age_mean | age_mean=40",
        "age-unusual | patients | 0 | age=90 | age | age=50",
        "detail-impossible | arms | 0 | transport_rate_mm_per_day=10 | transport_rate_mm_per_day | transport_rate_mm_per_day=1",
        "detail-unusual | arms | 1 | weeks_between_stages=30 | weeks_between_stages | weeks_between_stages=7",
        "number-expected | arms | 1 | weeks_between_stages=6 to 8 | weeks_between_stages | weeks_between_stages=7",
        "unlisted-word | arms | 0 | fixation=rings | fixation | fixation=ring",
        "segment-unknown | arms | 0 | segments=52 | segments | segments=42",
        "segment-of-another-bone | arms | 0 | segments=32;bones=tibia | segments | segments=42;bones=tibia",
        "follow-up-short | arms | 0 | follow_up_mean=300;follow_up_unit=days | follow_up_mean | follow_up_mean=400;follow_up_unit=days",
        "union-after-follow-up | outcomes | 2 | mean=20 | mean | mean=9",
        "recruitment-after-publication | studies | 0 | recruitment_to=2016-01 | recruitment_to | recruitment_to=2014-01",
        "recruitment-ends-before-start | studies | 0 | recruitment_from=2012-05;recruitment_to=2012-04 | recruitment_to | recruitment_from=2012-04;recruitment_to=2012",
        "recruitment-long | studies | 0 | recruitment_from=1980;recruitment_to=2010 | recruitment_to | recruitment_from=1990;recruitment_to=2010",
        "doi-form | studies | 0 | doi=https://example.org/10/182 | doi | doi=https://doi.org/10.1000/182",
        "doi-form | studies | 0 | doi=10.1000 | doi | doi=DOI: 10.1000/182",
        "pmid-form | studies | 0 | pmid=PMC123 | pmid | pmid=123",
        "union-undefined | studies | 0 | union_definition= | union_definition | union_definition=NR",
        "clock-missing | outcomes | 2 | clock= | clock | clock=NR",
        "wrong-unit | outcomes | 2 | unit=cm | unit | unit=weeks;mean=39;sd=8",
        "form-of-another-outcome | outcomes | 2 | outcome=refracture | outcome | outcome=time-to-union",
        "phase-missing | outcomes | 2 | outcome=treatment-phase | phase | outcome=treatment-phase;phase=latency",
        "phase-of-another-outcome | outcomes | 2 | phase=latency | phase | phase=",
        "currency-missing | outcomes | 2 | outcome=cost;unit=currency;clock= | currency | outcome=cost;unit=currency;currency=EUR;price_year=2012",
        "price-year-missing | outcomes | 2 | outcome=cost;unit=currency;currency=EUR | price_year | outcome=cost;unit=currency;currency=EUR;price_year=NR",
        "frame-of-frameless-method | outcomes | 3 | outcome=external-fixation-time | outcome | outcome=hospital-days;unit=days",
        "frame-time-zero | outcomes | 2 | outcome=external-fixation-time;mean=0;sd= | mean | outcome=external-fixation-time;mean=8;sd=",
        "index-impossible | outcomes | 2 | outcome=external-fixation-index;mean=45;sd=9;unit=months/cm | mean | outcome=external-fixation-index;mean=45;sd=9;unit=days/cm",
        "index-unusual | outcomes | 2 | outcome=external-fixation-index;mean=3.4;sd=1;unit=months/cm | mean | outcome=external-fixation-index;mean=2.9;sd=1;unit=months/cm",
        "recurrence-without-infection | outcomes | 0 | outcome=infection-recurrence | outcome | outcome=deep-infection",
        "same-number-twice | outcomes | 1 | arm_id=A;total=20 | outcome | arm_id=A;total=20;standing=alternative",
        "beyond-the-scale | outcomes | 2 | outcome=lefs;mean=81;unit=points;clock= | mean | outcome=lefs;mean=79;unit=points;clock=",
        "leg-length-unusual | outcomes | 2 | outcome=limb-length-discrepancy;mean=61;sd=5;unit=mm | mean | outcome=limb-length-discrepancy;mean=16;sd=5;unit=mm",
        "leg-length-impossible | outcomes | 2 | outcome=limb-length-discrepancy;mean=25;sd=5;unit=cm | mean | outcome=limb-length-discrepancy;mean=1;sd=5;unit=cm",
        "negative | patients | 0 | time_to_union=-3 | time_to_union | time_to_union=3",
        "wrong-form | patients | 0 | time_to_union=3;time_to_union_unit=cm | time_to_union | time_to_union=3;time_to_union_unit=weeks",
        "weight-bearing-order | patients | 0 | time_to_partial_weight_bearing=4;time_to_full_weight_bearing=3 | time_to_full_weight_bearing | time_to_partial_weight_bearing=4;time_to_full_weight_bearing=5",
      })
  void aRuleFindsTheSpoiltCellAndLetsTheSoundOnePass(
      String code, String sheet, int row, String spoilt, String column, String sound) {
    List<Problem> found = spoil(sheet, row, spoilt).found();
    assertTrue(
        found.stream()
            .anyMatch(
                problem ->
                    problem.code().equals(code)
                        && problem.where().startsWith("sheet " + sheet + ", row " + (row + 2))
                        && problem.where().matches(".*[( ]" + column + "\\)")),
        found.toString());
    List<Problem> foundInSound = spoil(sheet, row, sound).found();
    assertTrue(
        foundInSound.stream().noneMatch(problem -> problem.code().equals(code)),
        foundInSound.toString());
  }

  private static FilledTemplate spoil(String sheet, int row, String cells) {
    FilledTemplate template = FilledTemplate.sound();
    template
        .set("arms", 0, "infected_answer=no")
        .set("arms", 0, "follow_up_mean=18", "follow_up_unit=months")
        .set("patients", 0, "time_to_partial_weight_bearing=", "time_to_full_weight_bearing=");
    return template.set(sheet, row, cells(cells));
  }

  /** Cells separated by semicolons, a semicolon before a blank belonging to the cell. */
  private static String[] cells(String cells) {
    return Arrays.stream(cells.split(";(?! )")).map(String::strip).toArray(String[]::new);
  }

  @Test
  void fullWeightBearingBeforePartialOnOneClockIsDoubted() {
    FilledTemplate template =
        FilledTemplate.sound()
            .add(
                "outcomes",
                "study_id=s1",
                "arm_id=A",
                "outcome=time-to-partial-weight-bearing",
                "mean=20",
                "unit=weeks",
                "clock=injury")
            .add(
                "outcomes",
                "study_id=s1",
                "arm_id=A",
                "outcome=time-to-full-weight-bearing",
                "mean=3",
                "unit=months",
                "clock=injury")
            .add(
                "outcomes",
                "study_id=s1",
                "arm_id=A",
                "outcome=time-to-full-weight-bearing",
                "mean=1",
                "unit=months",
                "clock=frame-removal");
    List<Problem> found = template.found();
    assertEquals(1, found.size(), found.toString());
    assertEquals("weight-bearing-order", found.get(0).code());
    assertTrue(found.get(0).where().startsWith("sheet outcomes, row 7,"), found.toString());
  }

  @Test
  void anIndexThatMissesTheTimeInTheFrameByMoreThanFifteenPercentIsDoubted() {
    assertEquals(List.of(), index("1.7"));
    assertEquals(List.of("index-against-frame-time"), index("2.2"));
  }

  private static List<String> index(String monthsPerCentimetre) {
    return FilledTemplate.sound()
        .set("arms", 0, "defect_length_mean=60", "defect_length_unit=mm")
        .add(
            "outcomes",
            "study_id=s1",
            "arm_id=A",
            "outcome=external-fixation-time",
            "mean=10.5",
            "unit=months")
        .add(
            "outcomes",
            "study_id=s1",
            "arm_id=A",
            "outcome=external-fixation-index",
            "mean=" + monthsPerCentimetre,
            "unit=months/cm")
        .found()
        .stream()
        .map(Problem::code)
        .toList();
  }

  @Test
  void phasesThatDoNotAddUpToTheWholeTreatmentTimeAreDoubted() {
    assertEquals(List.of(), phases("8"));
    assertEquals(List.of("phases-do-not-add-up"), phases("14"));
  }

  private static List<String> phases(String consolidation) {
    return FilledTemplate.sound()
        .add(
            "outcomes",
            "study_id=s1",
            "arm_id=A",
            "outcome=total-treatment-time",
            "mean=12",
            "unit=months",
            "clock=injury")
        .add(
            "outcomes",
            "study_id=s1",
            "arm_id=A",
            "outcome=treatment-phase",
            "mean=4",
            "unit=months",
            "phase=distraction")
        .add(
            "outcomes",
            "study_id=s1",
            "arm_id=A",
            "outcome=treatment-phase",
            "mean=" + consolidation,
            "unit=months",
            "phase=consolidation")
        .add(
            "outcomes",
            "study_id=s1",
            "arm_id=A",
            "outcome=treatment-phase",
            "mean=11",
            "unit=months",
            "phase=in-frame")
        .found()
        .stream()
        .map(Problem::code)
        .toList();
  }

  @Test
  void subgroupsThatAddUpToMoreThanTheWholeAreDoubtedAndThoseThatFitAreNot() {
    assertEquals(List.of(), subgroups("9", "10"));
    assertEquals(List.of("subgroups-exceed-total"), subgroups("9", "12"));
  }

  private static List<String> subgroups(String shorter, String longer) {
    return FilledTemplate.sound()
        .add(
            "outcomes",
            "study_id=s1",
            "arm_id=A",
            "outcome=union",
            "events=8",
            "total=" + shorter,
            "subgroup=up to 6 cm")
        .add(
            "outcomes",
            "study_id=s1",
            "arm_id=A",
            "outcome=union",
            "events=9",
            "total=" + longer,
            "subgroup=over 6 cm")
        .found()
        .stream()
        .map(Problem::code)
        .toList();
  }

  @Test
  void anEffectOutsideItsIntervalIsRefused() {
    List<Problem> found =
        FilledTemplate.sound()
            .add(
                "outcomes",
                "study_id=s1",
                "arm_id=A",
                "against_arm=B",
                "outcome=refracture",
                "effect_kind=odds ratio",
                "effect_estimate=2.4",
                "effect_lower=0.4",
                "effect_upper=2.1")
            .found();
    assertEquals("estimate-outside-interval", found.get(0).code());
  }

  @Test
  void anEffectBelowTheOneLimitThatIsPrintedIsRefusedInWords() {
    List<Problem> found =
        FilledTemplate.sound()
            .add(
                "outcomes",
                "study_id=s1",
                "arm_id=A",
                "against_arm=B",
                "outcome=refracture",
                "effect_kind=odds ratio",
                "effect_estimate=0.3",
                "effect_lower=0.4")
            .found();
    assertEquals("estimate-outside-interval", found.get(0).code());
    assertTrue(found.get(0).message().contains("0.4 to (not given)"), found.get(0).message());
  }

  @Test
  void oneMissingTitleIsOneProblem() {
    List<Problem> found = FilledTemplate.sound().set("studies", 0, "title=").found();
    assertEquals(1, found.size(), "found: " + found);
    assertEquals("missing-value", found.get(0).code());
  }

  @Test
  void patientsThatContradictTheReportOfTheirArmAreDoubted() {
    FilledTemplate template =
        FilledTemplate.sound()
            .set("arms", 0, "patients=1", "limbs=1")
            .set("outcomes", 0, "events=0", "total=1")
            .set("outcomes", 2, "sd=");
    assertEquals(
        List.of("patients-contradict-report"),
        template.found().stream().map(Problem::code).toList());
    template.add("patients", "study_id=s1", "arm_id=A", "patient=case 2");
    assertEquals("more-patients-described", template.found().get(0).code());
  }

  @Test
  void onePaperUnderTwoIdsIsDoubtedHoweverItIsSpelt() {
    FilledTemplate template =
        second("title=INVENTED  series!", "first_author=Éxample", "year=2015");
    assertEquals(
        List.of("same-paper-twice"), template.found().stream().map(Problem::code).toList());
    assertEquals(List.of(), second("title=Invented series", "year=2016").found());
    template.set("studies", 1, "same_study_as=s1");
    assertEquals(List.of(), template.found());
    List<Problem> sameDoi =
        second("title=Other", "doi=10.1000/ABC").set("studies", 0, "doi=10.1000/abc").found();
    assertEquals(List.of("same-paper-twice"), sameDoi.stream().map(Problem::code).toList());
  }

  @Test
  void overlappingRecruitmentInOneHospitalByOneMethodIsDoubtedUnlessACohortIsNamed() {
    FilledTemplate template =
        second(
                "title=Other",
                "centres=Invented Hospital",
                "recruitment_from=2010",
                "recruitment_to=2012-03")
            .set(
                "studies",
                0,
                "centres=INVENTED hospital",
                "recruitment_from=2012-03",
                "recruitment_to=2014");
    assertEquals(
        List.of("overlapping-cohorts"), template.found().stream().map(Problem::code).toList());
    template.set("studies", 0, "cohort=c").set("studies", 1, "cohort=c");
    assertEquals(List.of(), template.found());
    template.set("studies", 0, "cohort=").set("studies", 1, "cohort=", "recruitment_to=2012-02");
    assertEquals(List.of(), template.found());
  }

  private static FilledTemplate second(String... cells) {
    return FilledTemplate.sound()
        .add("studies", "study_id=s2", "union_definition=NR")
        .set("studies", 1, cells)
        .add("arms", "study_id=s2", "arm_id=A", "method=bone-transport", "patients=12");
  }
}
