package gapwise.analysis.multiverse;

import gapwise.analysis.moderators.NamedSum;
import gapwise.analysis.result.Result;
import gapwise.synthesis.multiverse.AnalysisFinding;
import gapwise.synthesis.multiverse.ChoiceMove;
import gapwise.synthesis.multiverse.Multiverse;
import gapwise.synthesis.multiverse.Settings;
import gapwise.synthesis.multiverse.SideShares;
import gapwise.synthesis.multiverse.Sides;
import gapwise.synthesis.multiverse.Spread;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;

/** A multiverse in the form of a result. */
record MultiverseSummary(
    Multiverse multiverse,
    MultiverseChoices choices,
    MultiversePlan plan,
    Optional<MultiverseResult.About> about) {
  private static final Set<String> OF_ONE_GROUP = Set.of("proportion", "mean", "incidence-rate");

  static MultiverseResult of(
      Multiverse multiverse,
      MultiverseChoices choices,
      MultiversePlan plan,
      Optional<NamedSum> sum) {
    return new MultiverseSummary(multiverse, choices, plan, sum.map(MultiverseSummary::about))
        .result();
  }

  private static MultiverseResult.About about(NamedSum sum) {
    return new MultiverseResult.About(
        sum.term(),
        sum.places().stream().findFirst(),
        sum.places().stream().skip(1).findFirst(),
        sum.isOutsideData() ? Optional.of(true) : Optional.empty());
  }

  /**
   * The test against 0 on the analysis scale. Of means it says something where 0 is no difference
   * between two groups.
   */
  private OptionalDouble pValue(AnalysisFinding.Estimated value) {
    boolean mean = about.isPresent() && about.get().isMean();
    return about.isEmpty() || (mean && OF_ONE_GROUP.contains(plan.base().measure()))
        ? OptionalDouble.empty()
        : value.pValue();
  }

  private MultiverseResult result() {
    int estimated = multiverse.estimated().size();
    Optional<Spread> shown = estimated == 0 ? Optional.empty() : Optional.of(multiverse.shown());
    boolean sided = estimated > 0 && plan.vary().threshold().isPresent();
    Optional<Sides> sides =
        sided
            ? Optional.of(multiverse.against(plan.vary().threshold().getAsDouble()))
            : Optional.empty();
    List<ChoiceMove> moves = multiverse.moves(plan.vary().threshold());
    List<MultiverseResult.StudyMoved> studies = studies();
    return new MultiverseResult(
        MultiverseSentence.of(
            multiverse, new MultiverseSentence.Told(about, shown, sides), moves, studies),
        new MultiverseResult.Counted(
            multiverse.analyses().size(),
            estimated,
            multiverse.different(),
            multiverse.notEstimated().entrySet().stream()
                .map(one -> new MultiverseResult.NotEstimated(one.getKey(), one.getValue()))
                .toList(),
            families()),
        scales(),
        shown.map(MultiverseSummary::spread),
        about,
        new MultiverseResult.Marked(marked(plan.own()), marked(plan.pages())),
        threshold(multiverse),
        multiverse.onlyShownCompares() ? "shown" : "analysis-scale",
        moves.stream().map(MultiverseSummary::moved).toList(),
        studies.isEmpty() ? Optional.empty() : Optional.of(studies),
        new MultiverseResult.Ends(
            estimated == 0 ? Optional.empty() : Optional.of(extreme(multiverse.lowest())),
            estimated == 0 ? Optional.empty() : Optional.of(extreme(multiverse.highest()))),
        plan.vary().list()
            ? Optional.of(multiverse.analyses().stream().map(this::row).toList())
            : Optional.empty());
  }

  private List<MultiverseResult.OnScale> scales() {
    List<MultiverseResult.OnScale> scales = new ArrayList<>();
    multiverse
        .byScale()
        .forEach(
            (scale, s) ->
                scales.add(
                    new MultiverseResult.OnScale(
                        scale,
                        s.count(),
                        s.minimum(),
                        s.lowerQuartile(),
                        s.median(),
                        s.upperQuartile(),
                        s.maximum())));
    return scales;
  }

  private static MultiverseResult.Spread spread(Spread s) {
    return new MultiverseResult.Spread(
        s.minimum(), s.lowerQuartile(), s.median(), s.upperQuartile(), s.maximum());
  }

  private List<MultiverseResult.Family> families() {
    int place = choices.place(MultiverseChoices.MODEL);
    List<String> models = choices.all().get(place).levels();
    return IntStream.range(0, models.size())
        .mapToObj(
            level -> {
              Multiverse family = multiverse.ofFamily(level);
              int estimated = family.estimated().size();
              return new MultiverseResult.Family(
                  models.get(level),
                  family.analyses().size(),
                  estimated,
                  estimated == 0 ? Optional.empty() : Optional.of(spread(family.shown())),
                  threshold(family));
            })
        .toList();
  }

  private Optional<MultiverseResult.Threshold> threshold(Multiverse some) {
    if (some.estimated().isEmpty() || plan.vary().threshold().isEmpty()) {
      return Optional.empty();
    }
    double value = plan.vary().threshold().getAsDouble();
    SideShares shares = some.sharesAgainst(value);
    return Optional.of(
        new MultiverseResult.Threshold(
            value,
            100 * shares.below(),
            100 * shares.above(),
            100 * shares.intervalsBelow(),
            100 * shares.intervalsIncluding(),
            100 * shares.intervalsAbove()));
  }

  private static MultiverseResult.ChoiceMoved moved(ChoiceMove move) {
    return new MultiverseResult.ChoiceMoved(
        move.choice().name(),
        move.range(),
        move.share().isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(100 * move.share().getAsDouble()),
        move.levels().stream()
            .map(
                level ->
                    new MultiverseResult.Level(
                        level.name(),
                        level.analyses(),
                        level.mean(),
                        level.meanWidth(),
                        level.includingShare().isEmpty()
                            ? OptionalDouble.empty()
                            : OptionalDouble.of(100 * level.includingShare().getAsDouble())))
            .toList());
  }

  private List<MultiverseResult.StudyMoved> studies() {
    int place = choices.place(MultiverseChoices.LEAVE_ONE_OUT);
    if (place < 0) {
      return List.of();
    }
    OptionalDouble all = multiverse.median(place, 0);
    List<String> levels = choices.all().get(place).levels();
    return IntStream.range(1, levels.size())
        .mapToObj(
            level -> {
              OptionalDouble without = multiverse.median(place, level);
              return new MultiverseResult.StudyMoved(
                  levels.get(level).substring("without ".length()),
                  without,
                  all.isEmpty() || without.isEmpty()
                      ? OptionalDouble.empty()
                      : OptionalDouble.of(without.getAsDouble() - all.getAsDouble()));
            })
        .toList();
  }

  private MultiverseResult.Extreme extreme(Multiverse.Analysis analysis) {
    AnalysisFinding.Estimated value = (AnalysisFinding.Estimated) analysis.finding();
    return new MultiverseResult.Extreme(
        choices.told(analysis.settings()),
        value.studies(),
        value.estimate(),
        value.lower(),
        value.upper(),
        shown(value),
        pValue(value));
  }

  private static Result.Estimate shown(AnalysisFinding.Estimated value) {
    return new Result.Estimate(value.shownEstimate(), value.shownLower(), value.shownUpper());
  }

  private Optional<MultiverseResult.Own> marked(OwnSettings one) {
    Settings own = one.among(choices);
    return multiverse.estimated().stream()
        .filter(analysis -> analysis.settings().equals(own))
        .findFirst()
        .map(analysis -> (AnalysisFinding.Estimated) analysis.finding())
        .map(
            value ->
                new MultiverseResult.Own(
                    value.estimate(),
                    value.lower(),
                    value.upper(),
                    shown(value),
                    pValue(value),
                    100 * multiverse.sharesAgainst(value.shownEstimate()).below()));
  }

  private MultiverseResult.Row row(Multiverse.Analysis analysis) {
    List<Integer> levels =
        IntStream.range(0, analysis.settings().size())
            .mapToObj(i -> analysis.settings().level(i))
            .toList();
    Optional<Boolean> pages =
        analysis.settings().equals(plan.pages().among(choices))
            ? Optional.of(true)
            : Optional.empty();
    if (analysis.finding() instanceof AnalysisFinding.Estimated value) {
      return new MultiverseResult.Row(
          levels,
          OptionalInt.of(value.studies()),
          OptionalDouble.of(value.estimate()),
          OptionalDouble.of(value.lower()),
          OptionalDouble.of(value.upper()),
          Optional.of(shown(value)),
          pValue(value),
          Optional.empty(),
          pages);
    }
    OptionalDouble none = OptionalDouble.empty();
    return new MultiverseResult.Row(
        levels,
        OptionalInt.empty(),
        none,
        none,
        none,
        Optional.empty(),
        none,
        Optional.of(((AnalysisFinding.NotEstimated) analysis.finding()).code()),
        pages);
  }
}
