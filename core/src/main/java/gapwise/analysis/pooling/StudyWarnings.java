package gapwise.analysis.pooling;

import gapwise.analysis.result.Result;
import gapwise.effect.StudyData;
import gapwise.effect.StudyEffect;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What a reader must know about rows, in words. */
public final class StudyWarnings {
  /** Reasons that, as codes of a whole result, mean that they hold for every study. */
  private static final Set<String> OF_THE_WHOLE = Set.of("no-events", "all-events");

  private StudyWarnings() {}

  public static Result.Warning leftOut(Problem why, String label) {
    String code = OF_THE_WHOLE.contains(why.code()) ? "study-left-out" : why.code();
    return Result.Warning.of(code, label + " is left out: " + why.message(), label);
  }

  public static Result.Warning tooMany(int studies) {
    return Result.Warning.of(
        "too-many-studies",
        "the cumulative order, and influence with profile likelihood limits, are told for up to "
            + Refit.MOST_STUDIES
            + " studies, here are "
            + studies);
  }

  public static Result.Warning fromMedian(String label) {
    return Result.Warning.of(
        "converted-from-median",
        label
            + " reports a median; its mean (Luo 2018) and standard deviation (Wan 2014 unless"
            + " reported) are worked out as if values were near normal, which times and lengths"
            + " often are not",
        label);
  }

  public static Result.Warning looksSkewed(String label) {
    return Result.Warning.of(
        "median-looks-skewed",
        label
            + " reports a median too far to one side of its range or quartiles for values near"
            + " normal (Shi 2023); a mean and standard deviation worked out from it mislead, so"
            + " see what changes without it, or compare medians",
        label);
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
                "something was added to the cells of "
                    + added
                    + " of "
                    + studies
                    + " studies because of zero cells; with many of them the pooled value hangs on"
                    + " what is added"));
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
      return Result.Warning.of(
          "no-events", "no event anywhere, so the data say nothing of a ratio; nothing is pooled");
    }
    if (reasons.equals(Set.of("all-events"))) {
      return Result.Warning.of(
          "all-events",
          "every patient everywhere had the event, so the data say nothing of a ratio; nothing is"
              + " pooled");
    }
    return Result.Warning.of("no-studies", "no study is left to be pooled");
  }
}
