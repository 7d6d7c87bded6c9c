package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.unit.LengthRange;
import gapwise.figure.value.Shown;
import gapwise.selection.Question;
import gapwise.selection.SelectedRow;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * How well the missing bone of some series fits a question: how many of them have their mean or
 * median in the length that was asked for, or else over which means and medians they reach.
 */
final class MethodLengths {
  private MethodLengths() {}

  static String words(Question question, List<SelectedRow> rows) {
    return question.among().defect().map(range -> inside(range, rows)).orElseGet(() -> reach(rows));
  }

  /** A row summed up from patients of that length lies in it as a whole. */
  private static String inside(LengthRange range, List<SelectedRow> rows) {
    List<SelectedRow> inside =
        rows.stream()
            .filter(
                row ->
                    row.isOfPart()
                        || row.defect().filter(defect -> defect.centreLiesIn(range)).isPresent())
            .toList();
    return say(
        "answer.series-inside",
        Map.of(
            "inside",
            inside.size(),
            "series",
            rows.size(),
            "people",
            People.number(inside),
            "all",
            People.number(rows)));
  }

  private static String reach(List<SelectedRow> rows) {
    List<Double> centres =
        rows.stream()
            .map(MethodLengths::centre)
            .flatMap(centre -> centre.stream().boxed())
            .sorted()
            .toList();
    if (centres.isEmpty()) {
      return say("answer.lengths-not-reported");
    }
    String least = Shown.centimetres(centres.get(0));
    String most = Shown.centimetres(centres.get(centres.size() - 1));
    String words =
        least.equals(most)
            ? say("answer.lengths-alike", Map.of("length", least))
            : say("answer.lengths-from-to", Map.of("from", least, "to", most));
    int silent = rows.size() - centres.size();
    return silent == 0
        ? words
        : say("answer.lengths-some-silent", Map.of("lengths", words, "silent", silent));
  }

  private static OptionalDouble centre(SelectedRow row) {
    return row.defect()
        .map(defect -> defect.length().centreCentimetres())
        .orElse(OptionalDouble.empty());
  }
}
