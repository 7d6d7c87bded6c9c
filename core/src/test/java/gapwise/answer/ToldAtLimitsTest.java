package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Arm;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is said where everybody or nobody had an event. All series are invented. */
class ToldAtLimitsTest {
  private static final String EVERYBODY = "bone-transport";
  private static final String NOBODY = "induced-membrane";
  private static final String MIXED = "autograft";

  /** Who, and what they did, for every outcome that is counted as events. */
  private static final Map<String, String> BECAME =
      Map.ofEntries(
          Map.entry("primary-union", "limbs reached primary union"),
          Map.entry("union-without-further-grafting", "limbs united without more grafting"),
          Map.entry("union", "limbs united"),
          Map.entry("nonunion", "limbs failed to unite"),
          Map.entry("final-union", "limbs united in the end"),
          Map.entry("consolidated-regenerate", "limbs had solid new bone"),
          Map.entry("docking-nonunion", "docking sites failed to unite"),
          Map.entry("docking-procedure", "limbs were operated on at docking"),
          Map.entry("full-weight-bearing-reached", "patients reached full weight"),
          Map.entry("deep-infection", "limbs were newly infected"),
          Map.entry("infection-recurrence", "limbs were infected again"),
          Map.entry("postoperative-deep-infection", "limbs had a deep infection"),
          Map.entry("infection-after-first-stage", "limbs were infected after the first stage"),
          Map.entry("infection-eradication", "limbs were free of infection"),
          Map.entry("pin-site-infection", "patients had a pin-site infection"),
          Map.entry("refracture", "limbs broke again"),
          Map.entry("unplanned-reoperation", "patients had an unplanned operation"),
          Map.entry("any-complication", "patients had a complication"),
          Map.entry("major-adverse-event", "patients had a major adverse event"),
          Map.entry("secondary-amputation", "limbs were removed later"),
          Map.entry("death", "patients died"),
          Map.entry("malalignment", "limbs were out of line"),
          Map.entry("limb-length-discrepancy-over-threshold", "limbs were too short or long"),
          Map.entry("joint-stiffness", "limbs had a stiff joint"),
          Map.entry("donor-site-morbidity", "patients had donor-site trouble"),
          Map.entry("flap-loss", "flaps were lost"),
          Map.entry("flap-survival", "flaps survived"),
          Map.entry("implant-failure", "implants failed"),
          Map.entry("dislocation", "implants came out of place"),
          Map.entry("satisfied", "patients were satisfied"),
          Map.entry("would-choose-again", "patients would choose it again"),
          Map.entry("return-to-work", "patients went back to work"));

  @TempDir private static Path home;
  private static InventedBase base;
  private static Answers answers;

  @BeforeAll
  static void open() {
    List<Study> studies =
        List.of(
            study("a", EVERYBODY, CountedUnit.LIMBS, 10, 10),
            study("b", EVERYBODY, CountedUnit.LIMBS, 12, 12),
            study("c", NOBODY, CountedUnit.PATIENTS, 0, 11),
            study("d", NOBODY, CountedUnit.PATIENTS, 0, 9),
            study("e", MIXED, CountedUnit.PATIENTS, 0, 8),
            study("f", MIXED, CountedUnit.LIMBS, 0, 7));
    base = InventedBase.of(home, studies);
    answers = base.answers();
  }

  @AfterAll
  static void close() {
    base.close();
  }

  private static Stream<Outcome> events() {
    return Outcome.vocabulary().all().stream().filter(Outcome::isEvent);
  }

  private static Study study(String id, String method, CountedUnit unit, int events, int total) {
    return Study.with(id, Citation.with("Invented series " + id).firstAuthor(id).year(2020).build())
        .invented(true)
        .arms(List.of(Arm.with("A", MethodUsed.of(Method.of(method))).build()))
        .outcomes(
            events()
                .map(
                    outcome ->
                        OutcomeReport.with(
                                new Scope.OneArm("A"),
                                outcome,
                                new ReportedValue.Events(EventCount.of(events, total)))
                            .counted(unit)
                            .build())
                .toList())
        .build();
  }

  private static Told told(Outcome outcome, String method) {
    Answer answer =
        answers.ask(Question.about(outcome, SearchRequest.EVERYTHING.withMethods(Set.of(method))));
    return Blocks.told(answer, answer.result().orElseThrow()).get(0);
  }

  @Test
  void everyEventOutcomeIsAmongThem() {
    assertEquals(
        events().map(Outcome::code).collect(Collectors.toCollection(TreeSet::new)),
        new TreeSet<>(BECAME.keySet()));
  }

  @Test
  void everyEventSaysWhoIsCountedAndNothingElseDoes() {
    assertEquals(
        events().toList(),
        Outcome.vocabulary().all().stream()
            .filter(outcome -> outcome.event().isPresent())
            .toList());
  }

  @ParameterizedTest
  @MethodSource("events")
  void everybodyAndNobodyReadAsASentence(Outcome outcome) {
    String became = BECAME.get(outcome.code());
    assertEquals(
        "Bone transport in an external frame: all 22 "
            + became
            + ", in 2 series; on average over centres 95 of 100 (95 % interval 64 to 99.8).",
        told(outcome, EVERYBODY).sentence());
    assertEquals(
        "Induced membrane, two stages: none of 20 "
            + became
            + ", in 2 series; on average over centres 5 of 100 (95 % interval 0.2 to 37).",
        told(outcome, NOBODY).sentence());
  }

  @ParameterizedTest
  @MethodSource("events")
  void whatTheSeriesCountIsSaidWhereItIsNotWhatTheOutcomeCounts(Outcome outcome) {
    String counted = outcome.event().orElseThrow().counted();
    List<String> limbs = told(outcome, EVERYBODY).then();
    assertEquals(!counted.equals("limbs"), limbs.get(0).startsWith("From "), limbs::toString);
    List<String> patients = told(outcome, NOBODY).then();
    assertEquals(
        !counted.equals("patients"), patients.get(0).startsWith("From "), patients::toString);
    assertEquals("From 2 series with 15 patients or limbs.", told(outcome, MIXED).then().get(0));
  }

  @Test
  void whatTheAverageRestsOnIsSaidWhereNothingElseWasSeen() {
    List<String> then = told(Outcome.of("union"), EVERYBODY).then();
    assertTrue(then.get(0).startsWith("Nothing else was seen; "), then::toString);
    assertTrue(
        then.get(1)
            .startsWith("The average rests in part on how far centres are assumed to differ"),
        then::toString);
    assertTrue(then.get(2).startsWith("A new centre could expect "), then::toString);
  }

  @Test
  void ofDockingSitesCountedByPatientsBothAreSaid() {
    List<String> then = told(Outcome.of("docking-nonunion"), NOBODY).then();
    assertEquals("From 2 series with 20 patients.", then.get(0));
  }
}
