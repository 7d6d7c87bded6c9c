package gapwise.answer;

import gapwise.evidence.unit.LengthRange;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A question asked apart for each band of mean or median missing bone. */
public final class SizeBands {
  private SizeBands() {}

  /**
   * One band.
   *
   * @param lengths from its shorter end, included, to its longer end, not included
   */
  public record Band(LengthRange lengths, Answer answer) {}

  /**
   * The bands between cuts, also below the first and from the last on, each answered by a plan of
   * its own. A range asked for narrows them; bands outside it are left out.
   *
   * @param cuts in centimetres, rising
   */
  public static List<Band> of(Answers answers, Question question, List<Double> cuts) {
    return lengths(question, cuts).stream().map(band -> of(answers, question, band)).toList();
  }

  /** The lengths of the same bands, of which nothing is answered yet. */
  public static List<LengthRange> lengths(Question question, List<Double> cuts) {
    List<LengthRange> bands = new ArrayList<>();
    for (int i = 0; i <= cuts.size(); i++) {
      double from = i == 0 ? 0 : cuts.get(i - 1);
      double to = i == cuts.size() ? Double.POSITIVE_INFINITY : cuts.get(i);
      within(question.among().defect(), new LengthRange(from, to)).ifPresent(bands::add);
    }
    return List.copyOf(bands);
  }

  /** One of these bands. */
  public static Band of(Answers answers, Question question, LengthRange lengths) {
    return new Band(lengths, ask(answers, question, lengths));
  }

  private static Optional<LengthRange> within(Optional<LengthRange> asked, LengthRange band) {
    if (asked.isEmpty()) {
      return Optional.of(band);
    }
    double from = Math.max(asked.get().fromCentimetres(), band.fromCentimetres());
    double to = Math.min(Math.nextUp(asked.get().toCentimetres()), band.toCentimetres());
    return from < to ? Optional.of(new LengthRange(from, to)) : Optional.empty();
  }

  /** The band with an end that belongs to it, as a plan says it. */
  private static LengthRange closed(Optional<LengthRange> asked, LengthRange band) {
    double to = band.toCentimetres();
    if (Double.isInfinite(to)) {
      return band;
    }
    return asked
        .map(LengthRange::toCentimetres)
        .filter(end -> Math.nextUp(end) == to)
        .map(end -> new LengthRange(band.fromCentimetres(), end))
        .orElseGet(() -> LengthRange.under(band.fromCentimetres(), to));
  }

  private static Answer ask(Answers answers, Question question, LengthRange lengths) {
    LengthRange closed = closed(question.among().defect(), lengths);
    SearchRequest among = question.among().withDefect(closed, SearchRequest.DefectMatch.CENTRE);
    return answers.ask(question.withAmong(among));
  }
}
