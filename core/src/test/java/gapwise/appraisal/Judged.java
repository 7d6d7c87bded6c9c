package gapwise.appraisal;

import gapwise.evidence.Appraisal;
import gapwise.evidence.Arm;
import gapwise.evidence.Citation;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Appraisals written as a published table prints them: letters in the order of the items. */
final class Judged {
  private Judged() {}

  /** Answers to the items of an instrument by their marks, a dot for none, with an overall mark. */
  static Appraisal by(String instrument, String marks, String overall) {
    return of(instrument, marks, overall, Optional.empty());
  }

  static Appraisal of(String instrument, String marks, String overall, Optional<String> outcome) {
    Instrument by = Instrument.of(instrument);
    String[] letters = marks.split(" ");
    List<Appraisal.Answer> answers = new ArrayList<>();
    for (int index = 0; index < letters.length; index++) {
      Instrument.Item item = by.items().get(index);
      if (!letters[index].equals(".")) {
        answers.add(
            new Appraisal.Answer(
                item.code(),
                code(by.allowed(item), letters[index]),
                Optional.empty(),
                Optional.empty()));
      }
    }
    return new Appraisal(
        by,
        by.version(),
        outcome.map(Outcome::of),
        Optional.empty(),
        answers,
        overall.isEmpty()
            ? Optional.empty()
            : Optional.of(
                new Appraisal.Overall(
                    code(by.overall(), overall), Optional.empty(), Optional.empty())),
        List.of("AB"),
        Optional.empty());
  }

  private static String code(List<Instrument.Judgement> allowed, String letter) {
    return allowed.stream()
        .filter(one -> one.letter().equals(letter))
        .findFirst()
        .orElseThrow()
        .code();
  }

  static Study study(Appraisal... appraisals) {
    return Study.with("judged", Citation.with("Invented").build())
        .arms(List.of(Arm.with("A", MethodUsed.of(Method.of("bone-transport"))).build()))
        .appraisals(List.of(appraisals))
        .build();
  }
}
