package gapwise.server.page.result;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.PlanOutcome.Wrong;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.answer.Answer;
import gapwise.evidence.vocabulary.Method;
import gapwise.problem.Problem;
import gapwise.selection.LeftOut;
import gapwise.selection.Selection;
import gapwise.server.page.part.PlainWarnings;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a pooled result must say of itself beside its numbers. */
final class PooledNotes {
  /** A page names so many one by one (our choice). */
  private static final int MOST_NAMED = 50;

  private PooledNotes() {}

  /** Those of a list that a page names. */
  static <T> List<T> some(List<T> all) {
    return all.subList(0, Math.min(all.size(), MOST_NAMED));
  }

  /** How many more there are; empty where all are named. */
  static Optional<String> more(List<?> all) {
    return all.size() <= MOST_NAMED
        ? Optional.empty()
        : Optional.of(say("page.and-more", Map.of("more", all.size() - MOST_NAMED)));
  }

  /** What must be known beside the result. */
  static List<String> warnings(Answer answer) {
    if (answer.outcome().filter(Wrong.class::isInstance).isPresent()) {
      Wrong wrong = (Wrong) answer.outcome().get();
      return wrong.problems().stream().map(Problem::line).toList();
    }
    return answer.selection().notes().stream().map(Problem::message).toList();
  }

  /** What must be known of the pooled numbers. */
  static List<String> aboutNumbers(Result result) {
    return result.warnings().stream()
        .filter(warning -> warning.study().isEmpty())
        .map(warning -> PlainWarnings.sentence(warning, PooledNotes::methodName))
        .distinct()
        .toList();
  }

  /** Groups of a pooled page are methods. */
  private static String methodName(String level) {
    return Method.vocabulary().find(level).map(Method::shortLabel).orElse(level);
  }

  /** Notes about single studies. */
  static List<String> aboutStudies(Result result) {
    List<String> labels =
        SynthesisResult.of(result).studies().stream().map(Result.Study::label).toList();
    return result.warnings().stream()
        .filter(warning -> warning.study().filter(labels::contains).isPresent())
        .map(
            warning -> {
              String label = warning.study().orElseThrow();
              String said = PlainWarnings.sentence(warning, PooledNotes::methodName);
              return said.contains(label)
                  ? said
                  : say("page.note-on-series", Map.of("series", label, "note", said));
            })
        .distinct()
        .toList();
  }

  /** What was left out, by reason. */
  static List<PooledView.Reason> leftOut(Selection selection) {
    Map<String, List<LeftOut>> byReason =
        selection.leftOut().stream()
            .collect(
                Collectors.groupingBy(LeftOut::message, LinkedHashMap::new, Collectors.toList()));
    return byReason.entrySet().stream()
        .map(entry -> new PooledView.Reason(entry.getKey(), entry.getValue()))
        .toList();
  }
}
