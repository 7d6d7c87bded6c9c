package gapwise.analysis.smallstudy;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.synthesis.smallstudy.AsymmetryFinding;
import gapwise.synthesis.smallstudy.Refusal;
import gapwise.synthesis.smallstudy.SmallStudyTest;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Takes what tests found into the form of a result, and gathers why others were refused. */
final class SmallStudyFindings {
  private final Map<String, SmallStudyEffectsResult.Line> lines = new LinkedHashMap<>();
  private Optional<SmallStudyEffectsResult.RandomLine> eggerRandom = Optional.empty();
  private Optional<SmallStudyEffectsResult.Ranks> begg = Optional.empty();
  private final List<SmallStudyEffectsResult.Filled> filled = new ArrayList<>();
  private final List<Result.Warning> unsettled = new ArrayList<>();
  private final Map<Refusal, Set<String>> refused = new LinkedHashMap<>();

  /** Adds one. */
  void put(SmallStudyTest test, AsymmetryFinding finding) {
    if (finding instanceof AsymmetryFinding.Line line) {
      lines.put(
          test.name(),
          new SmallStudyEffectsResult.Line(
              line.intercept(),
              line.slope(),
              line.standardError(),
              line.statistic(),
              line.degreesOfFreedom(),
              line.pValue(),
              line.sentence()));
    } else if (finding instanceof AsymmetryFinding.RandomLine line) {
      eggerRandom =
          Optional.of(
              new SmallStudyEffectsResult.RandomLine(
                  line.slope(),
                  line.standardError(),
                  line.statistic(),
                  line.pValue(),
                  line.limit(),
                  line.tauSquared(),
                  line.sentence()));
    } else if (finding instanceof AsymmetryFinding.Ranks ranks) {
      begg =
          Optional.of(
              new SmallStudyEffectsResult.Ranks(
                  ranks.score(),
                  ranks.kendallTau(),
                  ranks.statistic(),
                  ranks.pValue(),
                  ranks.continuityStatistic(),
                  ranks.exactPValue(),
                  ranks.sentence()));
    } else if (finding instanceof AsymmetryFinding.Filled one) {
      put(one);
    } else if (finding instanceof AsymmetryFinding.Refused no) {
      refused.computeIfAbsent(no.refusal(), why -> new LinkedHashSet<>()).add(test.name());
    }
  }

  private void put(AsymmetryFinding.Filled one) {
    filled.add(
        new SmallStudyEffectsResult.Filled(
            one.settings().random() ? "random-effects" : "common-effect",
            one.settings().estimator().name(),
            one.settings().side().word(),
            one.filled().size(),
            one.mean().estimate(),
            one.mean().standardError(),
            one.mean().interval().lower(),
            one.mean().interval().upper(),
            one.tauSquared(),
            one.sentence()));
    if (!one.settled()) {
      unsettled.add(
          Result.Warning.of(
              "did-not-converge",
              say("analysis.fill-not-settled", Map.of("side", one.settings().side().word()))));
    }
  }

  /** Why tests were refused, those with one reason together; then what did not settle. */
  List<Result.Warning> refusals() {
    List<Result.Warning> warnings = new ArrayList<>();
    refused.forEach(
        (why, tests) ->
            warnings.add(
                Result.Warning.of(
                    why.problem().code(),
                    say(
                        "analysis.tests-left-out",
                        Map.of(
                            "tests", String.join(", ", tests), "why", why.problem().message())))));
    warnings.addAll(unsettled);
    return warnings;
  }

  /** The reasons for which tests were refused, each once. */
  List<Refusal> reasons() {
    return List.copyOf(refused.keySet());
  }

  SmallStudyEffectsResult result() {
    return new SmallStudyEffectsResult(
        Optional.ofNullable(lines.get("egger")),
        eggerRandom,
        begg,
        Optional.ofNullable(lines.get("peters")),
        Optional.ofNullable(lines.get("harbord")),
        filled);
  }
}
