package gapwise.analysis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.effect.StudyData;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Rows of one study that are pooled as if they were of several. Groups that the evidence base tells
 * apart are of different patients and are not meant.
 */
public final class RepeatedStudies {
  private RepeatedStudies() {}

  /** A warning for each study that is given in several rows. */
  public static <D extends StudyData> List<Result.Warning> warnings(Studies<D> studies) {
    Map<String, List<D>> byStudy = new LinkedHashMap<>();
    for (Studies.Entry<D> entry : studies.pooled()) {
      if (entry.row().armId().isEmpty()) {
        byStudy
            .computeIfAbsent(entry.label(), label -> new ArrayList<>())
            .add(entry.data().orElseThrow());
      }
    }
    List<Result.Warning> warnings = new ArrayList<>();
    byStudy.forEach(
        (study, rows) -> {
          boolean same = rows.stream().distinct().count() < rows.size();
          Map<String, Object> told = Map.of("study", study, "rows", rows.size());
          if (same) {
            warnings.add(
                Result.Warning.of(
                    "study-given-twice", say("analysis.study-given-twice", told), study));
          } else if (rows.size() > 1) {
            warnings.add(
                Result.Warning.of(
                    "several-rows-of-one-study",
                    say("analysis.several-rows-of-one-study", told),
                    study));
          }
        });
    return warnings;
  }
}
