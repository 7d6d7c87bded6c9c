package gapwise.selection;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.problem.Problem;
import gapwise.search.LooseWords;
import gapwise.selection.SelectedRow.Basis;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** Finds what a reader of the rows must know before the numbers are put together. */
final class Notes {
  private Notes() {}

  /** What the note is called that not all words of the search are found together. */
  private static final String LOOSE_WORDS = "not-all-words-found";

  static List<Problem> on(
      Question question,
      Optional<LooseWords> loose,
      Clocks clocks,
      CountForms forms,
      List<SelectedRow> rows) {
    List<Problem> notes = new ArrayList<>();
    loose.ifPresent(words -> notes.add(new Problem("", LOOSE_WORDS, words.sentence())));
    clocksNote(question, clocks, rows, notes);
    countFormsNote(forms, notes);
    definitionsNote(question, rows, notes);
    unitsNote(rows, notes);
    patientsNote(rows, notes);
    return notes;
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
    if (question.outcome().needsClock() && clocks.chosen().isEmpty() && !rows.isEmpty()) {
      notes.add(new Problem("", "clock-not-stated", say("selection.no-clock-stated")));
    }
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
    List<Selection.Present> definitions = Selection.definitions(question, rows);
    if (definitions.size() < 2) {
      return;
    }
    int silent = rows.size() - definitions.stream().mapToInt(Selection.Present::arms).sum();
    notes.add(
        new Problem(
            "",
            "definitions-mixed",
            silent == 0
                ? say("selection.definitions-mixed", Map.of("ways", definitions.size()))
                : say(
                    "selection.definitions-mixed-or-silent",
                    Map.of("ways", definitions.size(), "silent", silent, "series", rows.size()))));
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
