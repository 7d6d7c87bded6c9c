package gapwise.analysis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.effect.BackTransform;
import gapwise.effect.StudyData;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import gapwise.synthesis.pooling.Pooled;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The rows with their weights, the pooled value and how far results differ. */
public final class PooledPart {
  /**
   * With fewer studies I squared can be nearly anything by chance: von Hippel, BMC Med Res Methodol
   * 2015;15:35, from whose simulations no number follows; this one is common practice, no source.
   */
  private static final int FEWEST_FOR_I_SQUARED = 10;

  private PooledPart() {}

  /**
   * Works it out.
   *
   * @param warnings takes what a reader must know
   */
  public static <D extends StudyData> PooledResult of(
      Synthesis<D> synthesis, List<Result.Warning> warnings) {
    Studies<D> studies = synthesis.studies();
    Pooled pooled = synthesis.pooler().all();
    if (synthesis.pooler().size() == 0) {
      warnings.add(StudyWarnings.nothingLeft(studies));
    } else {
      pooled.warnings().forEach(one -> warnings.add(Result.Warning.of(one)));
    }
    BackTransform back = synthesis.measure().shown(studies.pooledData());
    if (back.n().isPresent() && pooled.mean().isPresent()) {
      warnings.add(
          Result.Warning.of(
              "back-transform-depends-on-n",
              say(
                  "analysis.back-transform",
                  Map.of("patients", String.valueOf(back.n().getAsDouble())))));
    }
    if (pooled.heterogeneity().iSquaredInterval().isPresent()
        && synthesis.pooler().size() < FEWEST_FOR_I_SQUARED) {
      warnings.add(
          Result.Warning.of(
              "i-squared-of-few-studies",
              say(
                  "analysis.i-squared-of-few-studies",
                  Map.of("studies", synthesis.pooler().size()))));
    }
    ShownBeside exact = new ShownBeside(synthesis.plan());
    Optional<Result.Summary> summary =
        exact.alone(
            exact.with(Summaries.summary(pooled, back), pooled, studies.pooledData()),
            synthesis.measure(),
            studies.pooledData());
    Summaries.withoutWidth(summary).ifPresent(one -> warnings.add(Result.Warning.of(one)));
    return new PooledResult(
        StudyTable.rows(studies, synthesis.measure(), pooled.weights(), synthesis.plan().level()),
        summary,
        exact.limit(pooled),
        pooled.heterogeneity().equals(Heterogeneity.UNKNOWN)
            ? Optional.empty()
            : Optional.of(Summaries.heterogeneity(pooled.heterogeneity())),
        Summaries.fit(pooled));
  }
}
