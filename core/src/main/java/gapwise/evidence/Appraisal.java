package gapwise.evidence;

import gapwise.evidence.unit.Day;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Outcome;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * What people judged of a study with one instrument, for one outcome where the instrument asks so.
 *
 * @param instrument by which
 * @param version of the instrument that was used; answers keep it when the instrument moves on
 * @param outcome the outcome that was judged; empty for the study as a whole
 * @param comparison the comparison that was judged, in words, such as "transport against membrane";
 *     empty where none
 * @param answers what was judged of each item, each item once, all of the instrument
 * @param overall as the people settled it, where they did
 * @param by initials of those who judged or settled it, each once
 * @param on the day on which it was settled
 */
public record Appraisal(
    Instrument instrument,
    String version,
    Optional<Outcome> outcome,
    Optional<String> comparison,
    List<Answer> answers,
    Optional<Overall> overall,
    List<String> by,
    Optional<Day> on) {

  /**
   * What was judged of one item.
   *
   * @param item code of the item in the instrument
   * @param judgement code of the answer
   * @param reason why
   * @param place where in the paper the reason stands, such as "p. 411"
   */
  public record Answer(
      String item, String judgement, Optional<String> reason, Optional<String> place) {
    public Answer {
      Objects.requireNonNull(item, "item");
      Objects.requireNonNull(judgement, "judgement");
      Objects.requireNonNull(reason, "reason");
      Objects.requireNonNull(place, "place");
    }
  }

  /**
   * The judgement on the whole, as people settled it.
   *
   * @param judgement code of an overall judgement of the instrument
   * @param reason why
   * @param place where in the paper the reason stands
   */
  public record Overall(String judgement, Optional<String> reason, Optional<String> place) {
    public Overall {
      Objects.requireNonNull(judgement, "judgement");
      Objects.requireNonNull(reason, "reason");
      Objects.requireNonNull(place, "place");
    }
  }

  public Appraisal {
    Objects.requireNonNull(instrument, "instrument");
    Objects.requireNonNull(version, "version");
    Objects.requireNonNull(outcome, "outcome");
    Objects.requireNonNull(comparison, "comparison");
    answers = List.copyOf(answers);
    Objects.requireNonNull(overall, "overall");
    by = by.stream().distinct().toList();
    Objects.requireNonNull(on, "on");
    if (version.isBlank()) {
      throw new IllegalArgumentException("an appraisal needs the version of its instrument");
    }
    if (answers.isEmpty() && overall.isEmpty()) {
      throw new IllegalArgumentException("an appraisal needs at least one judgement");
    }
    Set<String> seen = new HashSet<>();
    for (Answer answer : answers) {
      if (!seen.add(answer.item())) {
        throw new IllegalArgumentException(
            "an appraisal by " + instrument.label() + " has two answers to " + answer.item());
      }
      judgement(instrument, answer);
    }
    overall.ifPresent(one -> judgement(instrument, one));
  }

  private static Instrument.Judgement judgement(Instrument instrument, Answer answer) {
    Instrument.Item item =
        instrument
            .item(answer.item())
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        instrument.label() + " has no item '" + answer.item() + "'"));
    return instrument
        .judgement(item, answer.judgement())
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    instrument.label()
                        + " does not allow '"
                        + answer.judgement()
                        + "' for "
                        + answer.item()));
  }

  private static Instrument.Judgement judgement(Instrument instrument, Overall overall) {
    return instrument
        .overall(overall.judgement())
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    instrument.label()
                        + " does not allow '"
                        + overall.judgement()
                        + "' as a judgement on the whole"));
  }

  /** What was judged of an item, if anything. */
  public Optional<Answer> answer(Instrument.Item item) {
    return answers.stream().filter(one -> one.item().equals(item.code())).findFirst();
  }

  /** The answer of the instrument that was given to an item, if any was. */
  public Optional<Instrument.Judgement> judged(Instrument.Item item) {
    return answer(item).map(one -> judgement(instrument, one));
  }

  /** The judgement on the whole as people settled it, if they did. */
  public Optional<Instrument.Judgement> settled() {
    return overall.map(one -> judgement(instrument, one));
  }

  /** What tells it from the other appraisals of a study: one of each is kept. */
  public Matter matter() {
    return new Matter(instrument.code(), version, outcome.map(Outcome::code), comparison);
  }

  /**
   * What an appraisal is about.
   *
   * @param instrument code of the instrument
   * @param version of the instrument
   * @param outcome code of the outcome
   * @param comparison in words
   */
  public record Matter(
      String instrument, String version, Optional<String> outcome, Optional<String> comparison) {}
}
