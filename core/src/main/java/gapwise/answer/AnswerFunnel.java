package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.analysis.smallstudy.FunnelResult;
import gapwise.analysis.smallstudy.SmallStudyEffectsResult;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.funnel.Funnel;
import gapwise.figure.funnel.FunnelScale;
import gapwise.figure.value.SeriesCount;
import gapwise.selection.Prices;
import gapwise.selection.RowsByArm;
import gapwise.selection.SelectedRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** The funnel plot of a result whose plan asked for one. */
public final class AnswerFunnel {
  /** What must stand beside every funnel. */
  public static final String CAUTION = say("funnel.caution");

  /** Said where series of several methods stand in one funnel. */
  public static final String SEVERAL_METHODS = say("funnel.several-methods");

  private static final int FEWEST = 10;

  private AnswerFunnel() {}

  /** The funnel of a question about the evidence base; empty if the result has none. */
  public static Optional<Funnel> of(Answer answer, Result result, Edition edition) {
    return large(answer, result, edition).map(Large::whole);
  }

  /** The same with what of it a page draws. */
  public static Optional<Large<Funnel>> large(Answer answer, Result result, Edition edition) {
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
                        FunnelPlan.title(answer.question()),
                        AnswerForest.axis(outcome, Told.measure(outcome, rows)),
                        Blocks.headlines(answer.selection()),
                        Stream.of(
                                Blocks.withoutZeros(answer, result),
                                Prices.of(outcome, rows).map(Prices::sentence),
                                Optional.of(SEVERAL_METHODS).filter(said -> methods > 1))
                            .flatMap(Optional::stream)
                            .toList(),
                        point ->
                            selected
                                .row(point.studyId(), point.armId())
                                .map(PatientsMeant::named)
                                .orElse(point.study())),
                    provenance(result, People.series(rows), People.of(rows), edition, invented)
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
    return large(result, title, axis, edition, invented).map(Large::whole);
  }

  /** The same with what of it a page draws. */
  static Optional<Large<Funnel>> large(
      Result result, String title, AxisWords axis, Edition edition, boolean invented) {
    Words words = new Words(title, axis, List.of(), List.of(), FunnelResult.Point::study);
    return SynthesisResult.of(result)
        .funnel()
        .map(
            funnel ->
                figure(
                    result,
                    funnel,
                    words,
                    provenance(result, points(result), "", edition, invented)));
  }

  /** What a figure is called, and what it must say beyond what every funnel says. */
  private record Words(
      String title,
      AxisWords axis,
      List<String> headlines,
      List<String> cautions,
      Function<FunnelResult.Point, String> label) {}

  private static Large<Funnel> figure(
      Result result, FunnelResult funnel, Words words, FigureProvenance provenance) {
    int all = funnel.points().size();
    Funnel whole = figure(result, funnel, words, provenance, all, Optional.empty());
    if (all <= Large.MOST_DRAWN) {
      return new Large<>(whole);
    }
    Optional<String> some =
        Optional.of(
            say("answer.drawn-of-all-sizes", Map.of("drawn", Large.MOST_DRAWN, "series", all)));
    return new Large<>(
        figure(result, funnel, words, provenance, Large.MOST_DRAWN, some), whole, some);
  }

  /** The figure with so many points; all else is of all. */
  private static Funnel figure(
      Result result,
      FunnelResult funnel,
      Words words,
      FigureProvenance provenance,
      int drawn,
      Optional<String> some) {
    return new Funnel(
        words.title(),
        Stream.of(words.headlines().stream(), sentences(result, funnel).stream(), some.stream())
            .flatMap(sentences -> sentences)
            .toList(),
        words.axis(),
        scale(result),
        Large.ofAllSizes(funnel.points(), drawn, FunnelResult.Point::standardError).stream()
            .map(p -> new Funnel.Point(words.label().apply(p), p.effect(), p.standardError()))
            .toList(),
        centre(funnel),
        contours(funnel),
        Large.ofAllSizes(imagined(funnel), drawn, Funnel.Point::standardError),
        Stream.of(words.cautions(), FunnelWords.against(funnel.notes()), cautions(funnel))
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
                                say("funnel.imagined-mirror", Map.of("series", p.mirrors())),
                                p.effect(),
                                p.standardError()))
                    .toList())
        .orElse(List.of());
  }

  private static List<String> sentences(Result result, FunnelResult funnel) {
    List<String> sentences = new ArrayList<>();
    if (funnel.points().size() < FEWEST) {
      sentences.add(say("funnel.few", Map.of("fewest", FEWEST)));
    }
    SynthesisResult.of(result)
        .smallStudyEffects()
        .filter(tests -> funnel.points().size() >= FEWEST)
        .flatMap(AnswerFunnel::told)
        .ifPresent(sentences::add);
    sentences.addAll(FunnelWords.refusals(funnel.notes()));
    if (funnel.noEffect().isEmpty()) {
      sentences.add(say("funnel.no-contours"));
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
      cautions.add(say("funnel.imagined"));
    }
    cautions.add(AnswerForest.CAUTIONS.get(0));
    return cautions;
  }

  private static SeriesCount points(Result result) {
    return SeriesCount.of(
        SynthesisResult.of(result).funnel().map(funnel -> funnel.points().size()).orElse(0));
  }

  private static FigureProvenance provenance(
      Result result, SeriesCount series, String people, Edition edition, boolean invented) {
    return new FigureProvenance(
        series,
        people,
        ModelWords.model(result.plan()),
        edition.words(result.data().sha256()),
        edition.date(),
        invented);
  }
}
