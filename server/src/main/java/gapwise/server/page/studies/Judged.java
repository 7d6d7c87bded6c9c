package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.appraisal.Conclusion;
import gapwise.appraisal.Points;
import gapwise.appraisal.StudyRisk;
import gapwise.evidence.Appraisal;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Risk;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What people judged of a study with one instrument.
 *
 * @param heading instrument, version and what was judged
 * @param mark of the judgement on the whole
 * @param whole the judgement on the whole, and whence it comes
 * @param notes points, items left open, who judged and when
 * @param citation where the instrument was published
 * @param lines its items in their order, those that were answered
 */
public record Judged(
    String heading,
    Mark mark,
    String whole,
    List<String> notes,
    String citation,
    List<Line> lines) {
  public Judged {
    notes = List.copyOf(notes);
    lines = List.copyOf(lines);
  }

  /**
   * A judgement as a mark.
   *
   * @param letter one or two letters
   * @param look code of the risk that it looks like
   */
  public record Mark(String letter, String look) {
    private static Mark of(Risk risk) {
      return new Mark(risk.letter(), risk.code());
    }

    /** An answer that is not about risk looks by its place between best and worst. */
    private static Mark of(Instrument instrument, Instrument.Item item, Instrument.Judgement one) {
      if (one.risk().isPresent()) {
        return new Mark(one.letter(), one.risk().get().code());
      }
      List<Instrument.Judgement> asked =
          instrument.allowed(item).stream().filter(other -> !other.notAsked()).toList();
      int place = asked.indexOf(one);
      Risk look =
          place < 0
              ? Risk.NOT_RATED
              : place == 0 ? Risk.LOW : place == asked.size() - 1 ? Risk.SERIOUS : Risk.SOME;
      return new Mark(one.letter(), look.code());
    }
  }

  /** One item with what was judged of it. */
  public record Line(String item, Mark mark, String judgement, String reason, String place) {}

  /** Everything that was judged of a study, in the order of the record. */
  static List<Judged> of(Study study) {
    return StudyRisk.conclusions(study).stream().map(Judged::of).toList();
  }

  private static Judged of(Conclusion conclusion) {
    Appraisal appraisal = conclusion.appraisal();
    Instrument instrument = appraisal.instrument();
    return new Judged(
        heading(appraisal),
        conclusion
            .whole()
            .judgement()
            .map(one -> new Mark(one.letter(), conclusion.risk().code()))
            .orElseGet(() -> Mark.of(Risk.NOT_RATED)),
        whole(conclusion.whole()),
        notes(conclusion),
        instrument.citation(),
        instrument.items().stream()
            .flatMap(item -> appraisal.answer(item).map(one -> line(appraisal, item, one)).stream())
            .toList());
  }

  private static String heading(Appraisal appraisal) {
    String judged =
        say(
            "studies.judged-by",
            Map.of("instrument", appraisal.instrument().label(), "version", appraisal.version()));
    String of =
        appraisal
            .outcome()
            .map(
                outcome ->
                    say("studies.judged-for", Map.of("judged", judged, "outcome", outcome.label())))
            .orElse(judged);
    return appraisal
        .comparison()
        .map(one -> say("studies.judged-comparison", Map.of("judged", of, "comparison", one)))
        .orElse(of);
  }

  private static String whole(Conclusion.Whole whole) {
    if (whole instanceof Conclusion.Whole.Settled settled) {
      return say("studies.judged-settled", Map.of("judgement", settled.said().label()));
    }
    if (whole instanceof Conclusion.Whole.ByRule rule) {
      return say("studies.judged-by-rule", Map.of("judgement", rule.worst().label()));
    }
    if (whole instanceof Conclusion.Whole.BetterThanRule better) {
      return say(
          "studies.judged-better",
          Map.of("said", better.said().label(), "worst", better.worst().label()));
    }
    return say("studies.judged-open");
  }

  private static List<String> notes(Conclusion conclusion) {
    List<String> notes = new ArrayList<>();
    conclusion.appraisal().overall().flatMap(Appraisal.Overall::reason).ifPresent(notes::add);
    conclusion.points().map(Judged::points).ifPresent(notes::add);
    if (!conclusion.unanswered().isEmpty()) {
      notes.add(
          say(
              "studies.judged-unanswered",
              Map.of(
                  "items",
                  String.join(
                      ", ",
                      conclusion.unanswered().stream().map(Instrument.Item::label).toList()))));
    }
    who(conclusion.appraisal()).ifPresent(notes::add);
    return notes;
  }

  private static String points(Points points) {
    return say(
        "studies.judged-points",
        Map.of("counted", points.counted(), "most", points.most(), "what", points.what()));
  }

  private static Optional<String> who(Appraisal appraisal) {
    String by = String.join(", ", appraisal.by());
    if (appraisal.on().isEmpty()) {
      return by.isEmpty()
          ? Optional.empty()
          : Optional.of(say("studies.judged-who", Map.of("by", by)));
    }
    String when = appraisal.on().get().toString();
    return Optional.of(
        by.isEmpty()
            ? say("studies.judged-when", Map.of("when", when))
            : say("studies.judged-who-when", Map.of("by", by, "when", when)));
  }

  private static Line line(Appraisal appraisal, Instrument.Item item, Appraisal.Answer answer) {
    Instrument.Judgement judgement = appraisal.judged(item).orElseThrow();
    return new Line(
        item.label(),
        Mark.of(appraisal.instrument(), item, judgement),
        judgement.label(),
        answer.reason().orElse(""),
        answer.place().orElse(""));
  }
}
