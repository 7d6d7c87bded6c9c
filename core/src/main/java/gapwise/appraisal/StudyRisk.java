package gapwise.appraisal;

import gapwise.evidence.Appraisal;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Risk;
import java.util.List;
import java.util.function.Predicate;

/**
 * The risk of bias of a study, for one result of it or as a whole: the worst of what its appraisals
 * say, those without a judgement left aside. A study that nobody judged is {@link Risk#NOT_RATED},
 * never low.
 *
 * <p>Where a result has appraisals of its own that come to a judgement, they count and those of the
 * study as a whole do not; appraisals of other outcomes say nothing about it. Which answers stand
 * for which risk is said with each instrument in {@code instruments.json}, and on the page
 * docs/methods/appraisal.md.
 */
public final class StudyRisk {
  private StudyRisk() {}

  /** The risk of the result of a study for an outcome. */
  public static Risk of(Study study, Outcome outcome) {
    Risk ofOutcome = worst(study, one -> one.outcome().filter(outcome::equals).isPresent());
    return ofOutcome.isRated() ? ofOutcome : worst(study, one -> one.outcome().isEmpty());
  }

  /** The worst that was judged of any result of a study, or of the study as a whole. */
  public static Risk of(Study study) {
    return worst(study, one -> true);
  }

  private static Risk worst(Study study, Predicate<Appraisal> which) {
    return study.appraisals().stream()
        .filter(which)
        .map(one -> Conclusion.of(one).risk())
        .reduce(Risk.NOT_RATED, Risk::orWorse);
  }

  /** What follows from each appraisal of a study, in their order. */
  public static List<Conclusion> conclusions(Study study) {
    return study.appraisals().stream().map(Conclusion::of).toList();
  }
}
