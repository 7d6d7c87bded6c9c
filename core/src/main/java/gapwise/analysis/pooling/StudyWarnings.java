package gapwise.analysis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.effect.SpreadConversion.FromTest;
import gapwise.effect.StudyData;
import gapwise.effect.StudyEffect;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What a reader must know about rows, in words. */
public final class StudyWarnings {
  /** Reasons that, as codes of a whole result, mean that they hold for every study. */
  private static final Set<String> OF_THE_WHOLE = Set.of("no-events", "all-events");

  /** More than this are counted and not named: a sentence that people still read. */
  private static final int MOST_NAMED = 5;

  private StudyWarnings() {}

  public static Result.Warning leftOut(Problem why, String label) {
    String code = OF_THE_WHOLE.contains(why.code()) ? "study-left-out" : why.code();
    return Result.Warning.of(
        code, say("analysis.study-left-out", Map.of("study", label, "why", why.message())), label);
  }

  public static Result.Warning tooMany(int studies) {
    return Result.Warning.of(
        "too-many-studies",
        say(
            "analysis.too-many-studies",
            Map.of(
                "most", String.valueOf(Refit.MOST_STUDIES), "studies", String.valueOf(studies))));
  }

  /**
   * That limits of pooled values of some studies came to one value and are left out; empty if none
   * did.
   *
   * @param entries of which studies, for people
   */
  static Optional<Result.Warning> entriesWithoutWidth(List<String> entries) {
    return entries.isEmpty()
        ? Optional.empty()
        : withoutWidth(
            say(
                "analysis.entries-without-width",
                Map.of("entries", entries.size(), "names", names(entries))));
  }

  /** The same of the limits of rows. */
  public static Optional<Result.Warning> rowsWithoutWidth(List<Result.Study> rows) {
    List<String> labels =
        rows.stream()
            .filter(row -> row.standardError().isPresent() && row.lower().isEmpty())
            .map(Result.Study::label)
            .toList();
    return labels.isEmpty()
        ? Optional.empty()
        : withoutWidth(
            say(
                "analysis.rows-without-width",
                Map.of("entries", labels.size(), "names", names(labels))));
  }

  private static Optional<Result.Warning> withoutWidth(String message) {
    return Optional.of(Result.Warning.of("zero-width-interval", message));
  }

  private static String names(List<String> all) {
    return String.join(", ", all.subList(0, Math.min(MOST_NAMED, all.size())))
        + (all.size() > MOST_NAMED ? ", ..." : "");
  }

  public static Result.Warning fromMedian(String label) {
    return Result.Warning.of(
        "converted-from-median", say("analysis.from-median", Map.of("study", label)), label);
  }

  public static Result.Warning looksSkewed(String label) {
    return Result.Warning.of(
        "median-looks-skewed", say("analysis.looks-skewed", Map.of("study", label)), label);
  }

  public static Result.Warning limitsOffCentre(String label) {
    return Result.Warning.of(
        "limits-off-centre", say("analysis.limits-off-centre", Map.of("study", label)), label);
  }

  /** That a spread was worked out from a test; empty if it was not. */
  public static Optional<Result.Warning> fromTest(FromTest test, String label) {
    return switch (test) {
      case NONE, SILENT -> Optional.empty();
      case T_STATISTIC ->
          Optional.of(
              Result.Warning.of(
                  "converted-from-t-statistic",
                  say("analysis.from-t-statistic", Map.of("study", label)),
                  label));
      case P_VALUE ->
          Optional.of(
              Result.Warning.of(
                  "converted-from-p-value",
                  say("analysis.from-p-value", Map.of("study", label)),
                  label));
      case P_VALUE_OF_EFFECT ->
          Optional.of(
              Result.Warning.of(
                  "converted-from-p-value-of-effect",
                  say("analysis.from-p-value-of-effect", Map.of("study", label)),
                  label));
    };
  }

  public static Optional<Result.Warning> cellsAdded(List<StudyEffect> effects) {
    return cellsAdded(effects.stream().filter(StudyEffect::cellsAdded).count(), effects.size());
  }

  public static Optional<Result.Warning> cellsAdded(long added, int studies) {
    return added == 0
        ? Optional.empty()
        : Optional.of(
            Result.Warning.of(
                "zero-cells-corrected",
                say(
                    "analysis.cells-added",
                    Map.of("added", String.valueOf(added), "studies", String.valueOf(studies)))));
  }

  /** Why nothing is left to pool. */
  public static <D extends StudyData> Result.Warning nothingLeft(Studies<D> studies) {
    return nothingLeft(
        studies.all().stream()
            .flatMap(entry -> entry.effect().stream())
            .flatMap(effect -> effect.leftOut().stream())
            .toList());
  }

  /** The same from the reasons themselves. */
  public static Result.Warning nothingLeft(List<Problem> leftOut) {
    Set<String> reasons = leftOut.stream().map(Problem::code).collect(Collectors.toSet());
    if (reasons.equals(Set.of("no-events"))) {
      return Result.Warning.of("no-events", say("analysis.no-events"));
    }
    if (reasons.equals(Set.of("all-events"))) {
      return Result.Warning.of("all-events", say("analysis.all-events"));
    }
    return Result.Warning.of("no-studies", say("analysis.no-studies"));
  }
}
