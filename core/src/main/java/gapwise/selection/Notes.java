package gapwise.selection;

import static gapwise.sentence.Sentences.say;

import gapwise.appraisal.StudyRisk;
import gapwise.cohort.CohortLinks;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.ReadAs;
import gapwise.evidence.vocabulary.Standing;
import gapwise.problem.Problem;
import gapwise.search.LooseWords;
import gapwise.selection.SelectedRow.Basis;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Finds what a reader of the rows must know before the numbers are put together. */
final class Notes {
  private Notes() {}

  /** So many definitions are quoted in a note; a page lists them all. */
  private static final int MOST_QUOTED = 3;

  /** What the note is called that not all words of the search are found together. */
  private static final String LOOSE_WORDS = "not-all-words-found";

  static List<Problem> on(
      Question question,
      Optional<LooseWords> loose,
      Clocks clocks,
      CountForms forms,
      CohortLinks links,
      List<SelectedRow> rows) {
    List<Problem> notes = new ArrayList<>();
    loose.ifPresent(words -> notes.add(new Problem("", LOOSE_WORDS, words.sentence())));
    clocksNote(question, clocks, rows, notes);
    countFormsNote(forms, notes);
    definitionsNote(question, rows, notes);
    oneOfSeveralNote(rows, notes);
    unitsNote(rows, notes);
    patientsNote(rows, notes);
    otherSideNote(question, rows, notes);
    Prices.of(question.outcome(), rows).map(Prices::note).ifPresent(notes::add);
    Set<String> here = rows.stream().map(row -> row.study().id()).collect(Collectors.toSet());
    recordsNote(
        "read-second-hand",
        "selection.second-hand",
        rows,
        study -> study.readAs().equals(Optional.of(ReadAs.SECOND_HAND)),
        notes);
    recordsNote(
        "overlap-suspected",
        "selection.overlap-suspected",
        rows,
        study -> study.overlapSuspectedWith().stream().anyMatch(here::contains),
        notes);
    recordsNote(
        "overlap-suspected",
        "selection.overlap-left-open",
        rows,
        study -> links.suspectedWith(study.id()).stream().anyMatch(here::contains),
        notes);
    if (!question.among().risks().isEmpty()) {
      recordsNote(
          "risk-not-rated",
          "selection.risk-not-rated",
          rows,
          study -> !StudyRisk.of(study, question.outcome()).isRated(),
          notes);
    }
    return notes;
  }

  /**
   * A paper that gives one outcome under several definitions at the same time may mean parts of one
   * whole, such as minor and major complications; one of them alone stands in the row.
   */
  private static void oneOfSeveralNote(List<SelectedRow> rows, List<Problem> notes) {
    List<SelectedRow> several = rows.stream().filter(Notes::isOneOfSeveral).toList();
    if (!several.isEmpty()) {
      String taken =
          several.stream()
              .flatMap(row -> row.report().flatMap(OutcomeReport::definition).stream())
              .distinct()
              .limit(MOST_QUOTED)
              .map(words -> say("wording.quoted", Map.of("words", words)))
              .collect(Collectors.joining(", "));
      notes.add(
          new Problem(
              "",
              "one-of-several-definitions",
              say(
                  "selection.one-of-several-definitions",
                  Map.of("found", several.size(), "groups", rows.size(), "taken", taken))));
    }
  }

  private static boolean isOneOfSeveral(SelectedRow row) {
    return row.report()
        .filter(taken -> taken.definition().isPresent())
        .filter(
            taken ->
                row.study().outcomes().stream()
                    .anyMatch(
                        other ->
                            other.outcome().equals(taken.outcome())
                                && other.scope().equals(taken.scope())
                                && other.timePoint().equals(taken.timePoint())
                                && other.subgroup().equals(taken.subgroup())
                                && other.standing() == Standing.COUNTS
                                && other.definition().isPresent()
                                && !other.definition().equals(taken.definition())))
        .isPresent();
  }

  private static void otherSideNote(
      Question question, List<SelectedRow> rows, List<Problem> notes) {
    long turned = rows.stream().filter(row -> row.otherSide().isPresent()).count();
    if (turned > 0) {
      notes.add(
          new Problem(
              "",
              "from-other-side",
              say(
                  "selection.other-side",
                  Map.of(
                      "turned",
                      turned,
                      "groups",
                      rows.size(),
                      "other",
                      question.outcome().otherSide().orElseThrow().label(),
                      "such",
                      question.outcome().event().orElseThrow().such()))));
    }
  }

  /** How many groups are of studies of which something must be known. */
  private static void recordsNote(
      String code,
      String sentence,
      List<SelectedRow> rows,
      Predicate<Study> which,
      List<Problem> notes) {
    long groups = rows.stream().filter(row -> which.test(row.study())).count();
    if (groups > 0) {
      notes.add(
          new Problem("", code, say(sentence, Map.of("found", groups, "groups", rows.size()))));
    }
  }

  private static void clocksNote(
      Question question, Clocks clocks, List<SelectedRow> rows, List<Problem> notes) {
    boolean chosenHere = question.clock().isEmpty() && clocks.chosen().isPresent();
    if (chosenHere && clocks.present().size() > 1) {
      notes.add(
          new Problem(
              "",
              "clock-chosen",
              say("selection.clock-chosen", Map.of("clock", clocks.chosen().get().label()))));
    }
    int silent = Clocks.silent(question, rows);
    if (silent == 0) {
      return;
    }
    Map<String, Object> values = new HashMap<>(Map.of("silent", silent, "groups", rows.size()));
    if (clocks.present().isEmpty()) {
      notes.add(new Problem("", "clock-not-stated", say("selection.no-clock-stated")));
      return;
    }
    values.put("clock", clocks.chosen().orElseThrow().label());
    notes.add(new Problem("", "clock-not-stated-by-all", say("selection.clock-silent", values)));
  }

  private static void countFormsNote(CountForms forms, List<Problem> notes) {
    if (forms.arms().size() > 1) {
      notes.add(
          new Problem(
              "",
              "counted-two-ways",
              say(
                  forms.chosen().equals(Optional.of(CountedAs.EVENTS))
                      ? "selection.two-ways-events-taken"
                      : "selection.two-ways-means-taken",
                  Map.of(
                      "events",
                      forms.arms(CountedAs.EVENTS),
                      "means",
                      forms.arms(CountedAs.MEANS)))));
    }
    if (forms.chosen().equals(Optional.of(CountedAs.EVENTS))) {
      notes.add(new Problem("", "rate-for-each-patient", say("selection.rate-for-each-patient")));
    }
  }

  private static void definitionsNote(
      Question question, List<SelectedRow> rows, List<Problem> notes) {
    if (question.definition().isPresent() || Selection.alikeDefined(question, rows)) {
      return;
    }
    List<String> counts =
        Selection.definitions(question, rows).stream()
            .map(
                one ->
                    say(
                        "selection.definition-counted",
                        Map.of("definition", one.label(), "series", one.arms())))
            .toList();
    notes.add(
        new Problem(
            "",
            "definitions-mixed",
            say(
                "selection.definitions-mixed",
                Map.of("series", rows.size(), "counts", String.join("; ", counts)))));
  }

  private static void unitsNote(List<SelectedRow> rows, List<Problem> notes) {
    long ofPatients = counting(rows, CountedUnit.PATIENTS);
    long ofOthers = counting(rows, CountedUnit.LIMBS) + counting(rows, CountedUnit.DEFECTS);
    if (ofPatients > 0 && ofOthers > 0) {
      notes.add(
          new Problem(
              "",
              "limbs-and-patients-mixed",
              say(
                  "selection.limbs-and-patients",
                  Map.of("ofPatients", ofPatients, "ofOthers", ofOthers))));
    }
  }

  private static long counting(List<SelectedRow> rows, CountedUnit unit) {
    return rows.stream()
        .filter(row -> row.report().flatMap(report -> report.counted()).equals(Optional.of(unit)))
        .count();
  }

  private static void patientsNote(List<SelectedRow> rows, List<Problem> notes) {
    List<String> inPart =
        rows.stream().filter(Notes::isDescribedInPart).map(SelectedRow::label).toList();
    if (!inPart.isEmpty()) {
      notes.add(
          new Problem(
              "",
              "patients-described-in-part",
              say("selection.described-in-part", Map.of("arms", String.join("; ", inPart)))));
    }
  }

  private static boolean isDescribedInPart(SelectedRow row) {
    OptionalInt treated = row.arm().baseline().patients();
    return row.basis() == Basis.FROM_PATIENTS
        && treated.isPresent()
        && row.speaksOf().orElse(0) < treated.getAsInt();
  }
}
