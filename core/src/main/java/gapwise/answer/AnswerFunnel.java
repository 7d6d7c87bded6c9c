package gapwise.answer;

import gapwise.analysis.result.Result;
import gapwise.analysis.smallstudy.FunnelResult;
import gapwise.analysis.smallstudy.SmallStudyEffectsResult;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.funnel.Funnel;
import gapwise.figure.funnel.FunnelScale;
import gapwise.selection.RowsByArm;
import gapwise.selection.SelectedRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** The funnel plot of a result whose plan asked for one. */
public final class AnswerFunnel {
  /** What must stand beside every funnel. */
  public static final String CAUTION =
      "An uneven funnel has many causes: unpublished results, weaker methods or other patients in"
          + " small series, the measure itself, chance. An even one does not show that nothing is"
          + " missing.";

  /** Said where series of several methods stand in one funnel. */
  public static final String SEVERAL_METHODS =
      "Series of several methods stand in one funnel: it may be uneven because methods differ. Take"
          + " one method alone to part them.";

  private static final int FEWEST = 10;

  /** Why the analysis made no test. */
  private static final Set<String> REFUSED =
      Set.of(
          "too-few-for-small-study-test",
          "events-too-rare-for-small-study-test",
          "small-study-test-not-for-measure",
          "no-variation");

  /** What the analysis says against a test that it made. */
  private static final Set<String> AGAINST =
      Set.of(
          "standard-error-follows-effect",
          "studies-of-similar-size",
          "small-study-test-with-heterogeneity");

  private AnswerFunnel() {}

  /** The funnel of a question about the evidence base; empty if the result has none. */
  public static Optional<Funnel> of(Answer answer, Result result, Edition edition) {
    Outcome outcome = answer.question().outcome();
    RowsByArm selected = RowsByArm.of(answer.selection());
    List<SelectedRow> rows =
        SynthesisResult.of(result).funnel().stream()
            .flatMap(funnel -> funnel.points().stream())
            .flatMap(point -> selected.row(point.studyId(), point.armId()).stream())
            .toList();
    long methods = rows.stream().map(row -> row.arm().method().principal()).distinct().count();
    boolean invented = rows.stream().anyMatch(row -> row.study().invented());
    return SynthesisResult.of(result)
        .funnel()
        .filter(funnel -> !funnel.points().isEmpty())
        .map(
            funnel ->
                figure(
                    result,
                    funnel,
                    new Words(
                        QuestionWords.of(answer.question()) + ", small against large series",
                        AnswerForest.axis(outcome, Told.measure(outcome)),
                        Stream.concat(
                                Blocks.withoutZeros(answer, result).stream(),
                                methods > 1 ? Stream.of(SEVERAL_METHODS) : Stream.empty())
                            .toList()),
                    provenance(result, Told.people(rows), edition, invented)
                        .citing(Cited.of(rows))));
  }

  /**
   * The figure of a result whose rows came from a table; empty if the result has no funnel.
   *
   * @param title what is shown
   * @param axis words at the axis of effects
   * @param edition state of program and data
   * @param invented whether the data are invented
   */
  public static Optional<Funnel> of(
      Result result, String title, AxisWords axis, Edition edition, boolean invented) {
    Words words = new Words(title, axis, List.of());
    return SynthesisResult.of(result)
        .funnel()
        .map(funnel -> figure(result, funnel, words, provenance(result, "", edition, invented)));
  }

  /** What a figure is called, and what it must say beyond what every funnel says. */
  private record Words(String title, AxisWords axis, List<String> cautions) {}

  private static Funnel figure(
      Result result, FunnelResult funnel, Words words, FigureProvenance provenance) {
    return new Funnel(
        words.title(),
        sentences(result, funnel),
        words.axis(),
        scale(result),
        funnel.points().stream()
            .map(p -> new Funnel.Point(p.study(), p.effect(), p.standardError()))
            .toList(),
        centre(funnel),
        contours(funnel),
        imagined(funnel),
        Stream.of(words.cautions(), told(result, AGAINST), cautions(funnel))
            .flatMap(List::stream)
            .toList(),
        provenance);
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

  private static List<String> told(Result result, Set<String> codes) {
    return result.warnings().stream()
        .filter(warning -> codes.contains(warning.code()))
        .map(Result.Warning::message)
        .map(message -> message.replaceFirst("^.* left out: ", "No test of unevenness: "))
        .map(Told::asSentence)
        .distinct()
        .toList();
  }

  private static List<String> sentences(Result result, FunnelResult funnel) {
    List<String> sentences = new ArrayList<>();
    if (funnel.points().size() < FEWEST) {
      sentences.add(
          "With fewer than "
              + FEWEST
              + " series chance alone makes a funnel uneven; do not read a pattern into it.");
    }
    SynthesisResult.of(result)
        .smallStudyEffects()
        .flatMap(AnswerFunnel::told)
        .ifPresent(sentences::add);
    told(result, REFUSED).forEach(sentences::add);
    if (funnel.noEffect().isEmpty()) {
      sentences.add(
          "No contours of p are drawn: within one group no value stands for “no effect”.");
    }
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

  private static FigureProvenance provenance(
      Result result, String people, Edition edition, boolean invented) {
    int series =
        SynthesisResult.of(result).funnel().map(funnel -> funnel.points().size()).orElse(0);
    return new FigureProvenance(
        series,
        people,
        ModelWords.model(result.plan()),
        edition.words(result.data().sha256()),
        edition.date(),
        invented);
  }
}
