package gapwise.analysis.multiverse;

import gapwise.analysis.result.Result;
import gapwise.synthesis.multiverse.AnalysisFinding;
import gapwise.synthesis.multiverse.ChoiceMove;
import gapwise.synthesis.multiverse.Multiverse;
import gapwise.synthesis.multiverse.Settings;
import gapwise.synthesis.multiverse.Sides;
import gapwise.synthesis.multiverse.Spread;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** A multiverse in the form of a result. */
record MultiverseSummary(Multiverse multiverse, MultiverseChoices choices, MultiversePlan plan) {
  static MultiverseResult of(
      Multiverse multiverse, MultiverseChoices choices, MultiversePlan plan) {
    return new MultiverseSummary(multiverse, choices, plan).result();
  }

  private MultiverseResult result() {
    int estimated = multiverse.estimated().size();
    Optional<Spread> shown = estimated == 0 ? Optional.empty() : Optional.of(multiverse.shown());
    Optional<Sides> sides =
        estimated == 0 || plan.vary().threshold().isEmpty()
            ? Optional.empty()
            : Optional.of(multiverse.against(plan.vary().threshold().getAsDouble()));
    List<ChoiceMove> moves = multiverse.moves(plan.vary().threshold());
    List<MultiverseResult.StudyMoved> studies = studies();
    return new MultiverseResult(
        MultiverseSentence.of(multiverse, shown, sides, moves, studies),
        new MultiverseResult.Counted(
            multiverse.analyses().size(),
            estimated,
            multiverse.different(),
            multiverse.notEstimated().entrySet().stream()
                .map(one -> new MultiverseResult.NotEstimated(one.getKey(), one.getValue()))
                .toList()),
        scales(),
        shown.map(
            s ->
                new MultiverseResult.Spread(
                    s.minimum(), s.lowerQuartile(), s.median(), s.upperQuartile(), s.maximum())),
        own(),
        sides.map(MultiverseSummary::threshold),
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

  private static MultiverseResult.Threshold threshold(Sides sides) {
    return new MultiverseResult.Threshold(
        sides.threshold(),
        percent(sides.below(), sides.analyses()),
        percent(sides.above(), sides.analyses()),
        percent(sides.intervalsBelow(), sides.analyses()),
        percent(sides.intervalsIncluding(), sides.analyses()),
        percent(sides.intervalsAbove(), sides.analyses()));
  }

  private static double percent(int part, int whole) {
    return 100.0 * part / whole;
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
                        level.including().isEmpty() || level.analyses() == 0
                            ? OptionalDouble.empty()
                            : OptionalDouble.of(
                                percent(level.including().getAsInt(), level.analyses()))))
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
        shown(value));
  }

  private static Result.Estimate shown(AnalysisFinding.Estimated value) {
    return new Result.Estimate(value.shownEstimate(), value.shownLower(), value.shownUpper());
  }

  private Optional<MultiverseResult.Own> own() {
    Settings own = plan.own().among(choices);
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
                    percent(
                        multiverse.against(value.shownEstimate()).below(),
                        multiverse.estimated().size())));
  }

  private MultiverseResult.Row row(Multiverse.Analysis analysis) {
    List<Integer> levels =
        IntStream.range(0, analysis.settings().size())
            .mapToObj(i -> analysis.settings().level(i))
            .toList();
    if (analysis.finding() instanceof AnalysisFinding.Estimated value) {
      return new MultiverseResult.Row(
          levels,
          OptionalInt.of(value.studies()),
          OptionalDouble.of(value.estimate()),
          OptionalDouble.of(value.lower()),
          OptionalDouble.of(value.upper()),
          Optional.of(shown(value)),
          Optional.empty());
    }
    OptionalDouble none = OptionalDouble.empty();
    return new MultiverseResult.Row(
        levels,
        OptionalInt.empty(),
        none,
        none,
        none,
        Optional.empty(),
        Optional.of(((AnalysisFinding.NotEstimated) analysis.finding()).code()));
  }
}
