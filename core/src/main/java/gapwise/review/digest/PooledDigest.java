package gapwise.review.digest;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.answer.Answer;
import gapwise.answer.Blocks;
import gapwise.answer.Edition;
import gapwise.answer.LengthAnswer;
import gapwise.answer.MethodTable;
import gapwise.answer.SizeBands;
import gapwise.answer.Told;
import gapwise.evidence.unit.LengthRange;
import gapwise.figure.bubble.Bubble;
import gapwise.figure.value.Shown;
import gapwise.review.kept.DigestNumber;
import gapwise.selection.SelectedRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** One outcome pooled, all lengths together or by length, in short. */
public final class PooledDigest {
  private PooledDigest() {}

  /** An outcome pooled, by method or by the words of a detail. */
  public static Digested of(Answer answer) {
    List<SelectedRow> rows = answer.selection().rows();
    List<DigestNumber> numbers = new ArrayList<>(Digested.together(rows));
    numbers.addAll(lines(answer));
    return new Digested(rows, numbers);
  }

  private static List<DigestNumber> lines(Answer answer) {
    return answer.result().map(result -> lines(answer, result)).orElse(List.of());
  }

  private static List<DigestNumber> lines(Answer answer, Result result) {
    MethodTable table =
        MethodTable.of(answer, result, Set.of())
            .orElseGet(() -> MethodTable.column(answer, Set.of()));
    List<DigestNumber> lines =
        table.lines().stream()
            .filter(line -> !line.rows().isEmpty())
            .map(line -> Digested.number(line.of().label(), line, table.measure(), ""))
            .toList();
    return lines.isEmpty()
        ? Blocks.told(answer, result).stream().map(PooledDigest::told).toList()
        : lines;
  }

  private static DigestNumber told(Told told) {
    String name = told.heading().isBlank() ? say("review.answer") : told.heading();
    return new DigestNumber(name, told.sentence(), "", told.rows().orElse(""));
  }

  /**
   * An outcome over the length of missing bone.
   *
   * @param bands the same in bands of length
   * @param edition the state, which the words of the figure need
   */
  public static Digested of(LengthAnswer asked, List<SizeBands.Band> bands, Edition edition) {
    List<SelectedRow> rows = asked.answer().selection().rows();
    List<DigestNumber> numbers = new ArrayList<>(Digested.together(rows));
    List<String> sentences = asked.figure(edition).map(Bubble::sentences).orElse(List.of());
    for (String sentence : sentences) {
      numbers.add(new DigestNumber(say("review.over-length"), sentence, "", ""));
    }
    for (SizeBands.Band band : bands) {
      for (DigestNumber line : lines(band.answer())) {
        numbers.add(
            new DigestNumber(
                label(band.lengths()) + ", " + line.name(),
                line.value(),
                line.counted(),
                line.rests()));
      }
    }
    return new Digested(rows, numbers);
  }

  private static String label(LengthRange lengths) {
    String from = Shown.centimetres(lengths.fromCentimetres());
    return Double.isInfinite(lengths.toCentimetres())
        ? say("review.lengths-from", Map.of("from", from))
        : say(
            "review.lengths",
            Map.of("from", from, "to", Shown.centimetres(lengths.toCentimetres())));
  }
}
