package gapwise.answer;

import gapwise.analysis.FunnelResult;
import gapwise.analysis.Result;
import gapwise.analysis.SmallStudyEffectsResult;
import gapwise.figure.AxisWords;
import gapwise.figure.Funnel;
import gapwise.figure.FunnelScale;
import gapwise.figure.Provenance;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The funnel plot of a result whose plan asked for one. */
public final class AnswerFunnel {
  /** What must stand beside every funnel. */
  public static final String CAUTION =
      "An uneven funnel has many causes: unpublished results, weaker methods or other patients in"
          + " small series, the measure itself, chance. An even one does not show that nothing is"
          + " missing.";

  private static final int FEWEST = 10;

  private AnswerFunnel() {}

  /**
   * The figure; empty if the result has no funnel.
   *
   * @param title what is shown
   * @param axis words at the axis of effects
   * @param edition state of program and data
   * @param invented whether the data are invented
   */
  public static Optional<Funnel> of(
      Result result, String title, AxisWords axis, Edition edition, boolean invented) {
    return result
        .funnel()
        .map(
            funnel ->
                new Funnel(
                    title,
                    sentences(result, funnel),
                    axis,
                    scale(result),
                    funnel.points().stream()
                        .map(p -> new Funnel.Point(p.study(), p.effect(), p.standardError()))
                        .toList(),
                    centre(funnel),
                    contours(funnel),
                    imagined(funnel),
                    cautions(funnel),
                    provenance(result, funnel, edition, invented)));
  }

  private static FunnelScale scale(Result result) {
    String scale = result.plan().path("scale").asText();
    return switch (result.plan().path("measure").asText()) {
      case "odds-ratio", "risk-ratio", "ratio-of-means", "incidence-rate-ratio" ->
          FunnelScale.LOGARITHM;
      case "proportion" -> scale.equals("logit") ? FunnelScale.LOGIT : FunnelScale.AS_IS;
      case "mean", "incidence-rate" ->
          scale.equals("log") ? FunnelScale.LOGARITHM : FunnelScale.AS_IS;
      case "reported-effect" ->
          result.plan().path("reportedAs").asText().equals("ratio")
              ? FunnelScale.LOGARITHM
              : FunnelScale.AS_IS;
      default -> FunnelScale.AS_IS;
    };
  }

  private static Optional<Funnel.Centre> centre(FunnelResult funnel) {
    return funnel
        .limits()
        .map(
            limits ->
                new Funnel.Centre(
                    funnel.centre().orElseThrow(), limits.level(), limits.multiplier()));
  }

  private static Optional<Funnel.Contours> contours(FunnelResult funnel) {
    return funnel.noEffect().isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Funnel.Contours(
                funnel.noEffect().getAsDouble(),
                funnel.contours().stream()
                    .map(c -> new Funnel.Contour(c.level(), c.multiplier()))
                    .toList()));
  }

  /** The first setting of trim and fill that adds any: one figure shows one. */
  private static List<Funnel.Point> imagined(FunnelResult funnel) {
    return funnel.imagined().stream()
        .filter(one -> !one.points().isEmpty())
        .findFirst()
        .map(
            one ->
                one.points().stream()
                    .map(
                        p ->
                            new Funnel.Point(
                                "Imagined, mirror of " + p.mirrors(),
                                p.effect(),
                                p.standardError()))
                    .toList())
        .orElse(List.of());
  }

  private static List<String> sentences(Result result, FunnelResult funnel) {
    List<String> sentences = new ArrayList<>();
    if (funnel.points().size() < FEWEST) {
      sentences.add(
          "With fewer than "
              + FEWEST
              + " series chance alone makes a funnel uneven; do not read a pattern into it.");
    }
    result.smallStudyEffects().flatMap(AnswerFunnel::told).ifPresent(sentences::add);
    return sentences;
  }

  /** What one test says; the one made for the counts where there is one. */
  private static Optional<String> told(SmallStudyEffectsResult tests) {
    return tests
        .harbord()
        .or(tests::peters)
        .or(tests::egger)
        .map(SmallStudyEffectsResult.Line::sentence)
        .or(() -> tests.eggerRandom().map(SmallStudyEffectsResult.RandomLine::sentence))
        .or(() -> tests.begg().map(SmallStudyEffectsResult.Ranks::sentence));
  }

  private static List<String> cautions(FunnelResult funnel) {
    List<String> cautions = new ArrayList<>();
    cautions.add(CAUTION);
    if (!imagined(funnel).isEmpty()) {
      cautions.add("Imagined series are no data and their place rests on a rule.");
    }
    cautions.add(AnswerForest.CAUTIONS.get(0));
    return cautions;
  }

  private static Provenance provenance(
      Result result, FunnelResult funnel, Edition edition, boolean invented) {
    return new Provenance(
        funnel.points().size(),
        "",
        ModelWords.model(result.plan()),
        edition.words(result.data().sha256()),
        edition.date(),
        invented);
  }
}
