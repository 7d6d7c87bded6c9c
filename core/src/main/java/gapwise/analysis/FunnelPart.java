package gapwise.analysis;

import gapwise.effect.StudyData;
import gapwise.effect.StudyEffect;
import gapwise.numeric.ReferenceDistribution;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.smallstudy.Finding;
import gapwise.synthesis.smallstudy.SmallStudyData;
import gapwise.synthesis.smallstudy.SmallStudyTest;
import gapwise.synthesis.smallstudy.TrimAndFill;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** What a funnel plot shows. */
final class FunnelPart implements SynthesisPart {
  /** Measures of one group, which have no value of no effect. */
  private static final Set<String> WITHOUT_NO_EFFECT =
      Set.of("proportion", "mean", "incidence-rate");

  @Override
  public boolean asked(SynthesisPlan plan) {
    return plan.json().has("funnel");
  }

  /** Whether a measure has a value of no effect, which is 0 on the analysis scale. */
  static boolean hasNoEffect(String measure) {
    return !WITHOUT_NO_EFFECT.contains(measure);
  }

  @Override
  public <D extends StudyData> void add(
      Synthesis<D> synthesis, ResultBuilder result, List<Result.Warning> warnings) {
    List<Studies.Entry<D>> used = SmallStudyRows.withEffect(synthesis.studies().pooled());
    if (used.isEmpty()) {
      return;
    }
    SynthesisPlan plan = synthesis.plan();
    List<FunnelResult.Point> points = used.stream().map(FunnelPart::point).toList();
    Optional<PooledMean> mean = synthesis.pooler().all().mean();
    boolean noEffect = hasNoEffect(plan.measure());
    if (!noEffect && !plan.json().get("funnel").path("contours").isEmpty()) {
      warnings.add(
          Result.Warning.of(
              "setting-not-used",
              "contours are drawn about no effect, and '"
                  + plan.measure()
                  + "' has no such value; the funnel has none"));
    }
    result.funnel(
        new FunnelResult(
            points,
            mean.isPresent() ? OptionalDouble.of(mean.get().estimate()) : OptionalDouble.empty(),
            mean.map(centre -> limits(centre.estimate(), points, plan.settings().level())),
            noEffect ? OptionalDouble.of(0) : OptionalDouble.empty(),
            noEffect ? contours(plan) : List.of(),
            imagined(synthesis, used)));
  }

  private static <D extends StudyData> FunnelResult.Point point(Studies.Entry<D> entry) {
    StudyEffect effect = entry.effect().orElseThrow();
    return new FunnelResult.Point(
        entry.label(), effect.estimate().orElseThrow(), Math.sqrt(effect.variance().orElseThrow()));
  }

  private static FunnelResult.Limits limits(
      double centre, List<FunnelResult.Point> points, double level) {
    double largest = points.stream().mapToDouble(FunnelResult.Point::standardError).max().orElse(0);
    double multiplier = ReferenceDistribution.normal().multiplier(level);
    return new FunnelResult.Limits(
        level, multiplier, largest, centre - multiplier * largest, centre + multiplier * largest);
  }

  private static List<FunnelResult.Contour> contours(SynthesisPlan plan) {
    List<FunnelResult.Contour> contours = new ArrayList<>();
    plan.json()
        .get("funnel")
        .path("contours")
        .forEach(
            level ->
                contours.add(
                    new FunnelResult.Contour(
                        level.asDouble(),
                        ReferenceDistribution.normal().multiplier(level.asDouble()))));
    return contours;
  }

  private static <D extends StudyData> List<FunnelResult.Imagined> imagined(
      Synthesis<D> synthesis, List<Studies.Entry<D>> used) {
    List<FunnelResult.Imagined> imagined = new ArrayList<>();
    // What is left out of the tests is said where they are told.
    SmallStudyData data = SmallStudyRows.of(synthesis, new ArrayList<>());
    for (SmallStudyTest test :
        SmallStudyPart.tests(synthesis.plan().json().path("smallStudyEffects"))) {
      if (test instanceof TrimAndFill settings
          && settings.find(data) instanceof Finding.Filled filled) {
        imagined.add(
            new FunnelResult.Imagined(
                settings.random() ? "random-effects" : "common-effect",
                settings.estimator().name(),
                settings.side().word(),
                filled.filled().stream()
                    .map(
                        one ->
                            new FunnelResult.Mirrored(
                                used.get(one.mirrors()).label(),
                                one.effect(),
                                Math.sqrt(one.variance())))
                    .toList()));
      }
    }
    return imagined;
  }
}
