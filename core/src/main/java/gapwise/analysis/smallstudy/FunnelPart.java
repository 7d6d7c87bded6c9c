package gapwise.analysis.smallstudy;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.pooling.PoolingPlan;
import gapwise.analysis.pooling.Studies;
import gapwise.analysis.pooling.Synthesis;
import gapwise.analysis.result.Result;
import gapwise.effect.StudyData;
import gapwise.effect.StudyEffect;
import gapwise.numeric.ReferenceDistribution;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.smallstudy.AsymmetryFinding;
import gapwise.synthesis.smallstudy.SmallStudyData;
import gapwise.synthesis.smallstudy.SmallStudyTest;
import gapwise.synthesis.smallstudy.TrimAndFill;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What a funnel plot shows.
 *
 * @param contours levels about no effect, such as 0.95 for a p value of 0.05
 * @param tests of which trim and fill is drawn
 */
public record FunnelPart(List<Double> contours, SmallStudyPart tests) {
  /** Measures of one group, which have no value of no effect. */
  private static final Set<String> WITHOUT_NO_EFFECT =
      Set.of("proportion", "mean", "incidence-rate");

  public FunnelPart {
    contours = List.copyOf(contours);
  }

  /** What a checked plan asks; empty if it asks for no funnel. */
  public static Optional<FunnelPart> of(ObjectNode full) {
    if (!full.has("funnel")) {
      return Optional.empty();
    }
    List<Double> contours = new ArrayList<>();
    full.get("funnel").path("contours").forEach(level -> contours.add(level.asDouble()));
    return Optional.of(new FunnelPart(contours, SmallStudyPart.of(full)));
  }

  /** Whether a measure has a value of no effect, which is 0 on the analysis scale. */
  static boolean hasNoEffect(String measure) {
    return !WITHOUT_NO_EFFECT.contains(measure);
  }

  /**
   * Works it out; empty where no study has an effect.
   *
   * @param notes what must be known of the tests for small-study effects
   * @param warnings takes what a reader must know
   */
  public <D extends StudyData> Optional<FunnelResult> of(
      Synthesis<D> synthesis, SmallStudyNotes notes, List<Result.Warning> warnings) {
    List<Studies.Entry<D>> used = SmallStudyRows.withEffect(synthesis.studies().pooled());
    if (used.isEmpty()) {
      return Optional.empty();
    }
    PoolingPlan plan = synthesis.plan();
    List<FunnelResult.Point> points = used.stream().map(FunnelPart::point).toList();
    Optional<PooledMean> mean = synthesis.pooler().all().mean();
    boolean noEffect = hasNoEffect(plan.measure());
    if (!noEffect && !contours.isEmpty()) {
      warnings.add(
          Result.Warning.of(
              "setting-not-used", say("analysis.no-contours", Map.of("measure", plan.measure()))));
    }
    return Optional.of(
        new FunnelResult(
            points,
            mean.isPresent() ? OptionalDouble.of(mean.get().estimate()) : OptionalDouble.empty(),
            mean.map(centre -> limits(centre.estimate(), points, plan.level())),
            noEffect ? OptionalDouble.of(0) : OptionalDouble.empty(),
            noEffect ? contours.stream().map(FunnelPart::contour).toList() : List.of(),
            imagined(synthesis, used),
            notes));
  }

  private static FunnelResult.Contour contour(double level) {
    return new FunnelResult.Contour(level, ReferenceDistribution.normal().multiplier(level));
  }

  private static <D extends StudyData> FunnelResult.Point point(Studies.Entry<D> entry) {
    StudyEffect effect = entry.effect().orElseThrow();
    return new FunnelResult.Point(
        entry.label(),
        entry.row().studyId(),
        entry.row().armId(),
        effect.estimate().orElseThrow(),
        Math.sqrt(effect.variance().orElseThrow()));
  }

  private static FunnelResult.Limits limits(
      double centre, List<FunnelResult.Point> points, double level) {
    double largest = points.stream().mapToDouble(FunnelResult.Point::standardError).max().orElse(0);
    double multiplier = ReferenceDistribution.normal().multiplier(level);
    return new FunnelResult.Limits(
        level, multiplier, largest, centre - multiplier * largest, centre + multiplier * largest);
  }

  private <D extends StudyData> List<FunnelResult.Imagined> imagined(
      Synthesis<D> synthesis, List<Studies.Entry<D>> used) {
    List<FunnelResult.Imagined> imagined = new ArrayList<>();
    // What is left out of the tests is said where they are told.
    SmallStudyData data = SmallStudyRows.of(synthesis, new ArrayList<>());
    for (SmallStudyTest test : tests.tests()) {
      if (test instanceof TrimAndFill settings
          && settings.find(data) instanceof AsymmetryFinding.Filled filled) {
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
