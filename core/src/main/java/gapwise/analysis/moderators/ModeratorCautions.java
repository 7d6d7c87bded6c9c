package gapwise.analysis.moderators;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.synthesis.regression.DesignMatrix;
import java.util.List;
import java.util.Map;

/** What a reader of any regression on studies must know. */
final class ModeratorCautions {
  /** Studies for each coefficient beside the intercept: common practice, no source. */
  private static final int ENOUGH = 10;

  private ModeratorCautions() {}

  static void add(DesignMatrix design, List<Result.Warning> warnings) {
    int terms = (int) design.terms().stream().filter(ModeratorCautions::isModerator).count();
    if (terms == 0) {
      return;
    }
    warnings.add(Result.Warning.of("ecological-bias", say("analysis.averages-of-studies")));
    if (design.rows() < ENOUGH * terms) {
      warnings.add(
          Result.Warning.of(
              "few-studies-for-moderators",
              say(
                  "analysis.few-studies-for-terms",
                  Map.of("studies", design.rows(), "terms", terms, "enough", ENOUGH * terms))));
    }
  }

  private static boolean isModerator(String term) {
    return !term.equals(DesignMatrix.INTERCEPT);
  }
}
