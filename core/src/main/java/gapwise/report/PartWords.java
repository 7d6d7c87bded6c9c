package gapwise.report;

import gapwise.analysis.pooling.PoolingPlan;
import gapwise.analysis.result.Result;
import gapwise.analysis.subgroups.SubgroupsResult;
import gapwise.analysis.synthesis.SynthesisResult;
import java.util.Map;
import java.util.Optional;

/** What a synthesis told beside its pooled value. */
final class PartWords {
  private final Telling telling;
  private final Settings settings;
  private final Result result;
  private final SynthesisResult made;

  PartWords(Telling telling, Settings settings, Result result) {
    this.telling = telling;
    this.settings = settings;
    this.result = result;
    this.made = SynthesisResult.of(result);
  }

  void tell() {
    subgroups();
    if (settings.has("moderators")) {
      new RegressionWords(telling, settings, result).tell();
    }
    robust();
    places();
    new SmallStudyWords(telling, settings, made).tell();
    influence();
    if (settings.has("cumulativeBy")) {
      if (made.cumulative().isPresent()) {
        telling.say("cumulative", Map.of("column", settings.word("cumulativeBy")));
      } else {
        telling.say("cumulative.none");
      }
    }
  }

  private void subgroups() {
    if (!settings.has("subgroup")) {
      return;
    }
    telling.say("subgroups", Map.of("column", settings.word("subgroup")));
    boolean blanks =
        made.listOfGroups().stream()
            .anyMatch(group -> group.level().equals(PoolingPlan.Groups.NOT_STATED));
    if (blanks && settings.is("subgroupBlanks", "apart")) {
      telling.say("subgroups.apart");
    }
    if (settings.is("model", "random-effects")) {
      telling.say("subgroups." + settings.word("subgroupVariance"));
    }
    Optional<SubgroupsResult.Between> between =
        made.groups().map(SubgroupsResult::betweenSubgroups);
    telling.say("subgroups.test." + between.map(PartWords::test).orElse("none"));
  }

  private static String test(SubgroupsResult.Between between) {
    if (between.pValue().isEmpty()) {
      return "none";
    }
    if (between.fStatistic().isEmpty()) {
      return "chi-squared";
    }
    return between.tauSquared().isPresent() ? "f" : "welch";
  }

  private void robust() {
    if (!settings.has("robustVariance")) {
      return;
    }
    if (made.robust().isEmpty()) {
      telling.say("robust.none");
      return;
    }
    telling.say(
        "robust." + settings.word("robustVariance"), Map.of("cluster", settings.word("cluster")));
    if (made.robust().get().moderatorTest().isPresent()) {
      telling.say("robust.test");
    }
    if (result.warnings().stream().anyMatch(one -> one.code().equals("told-by-one-cluster"))) {
      telling.say("left.told-by-cluster");
    }
  }

  private void places() {
    if (settings.part("places").size() > 0) {
      telling.say("places.list", Map.of("list", Settings.numbers(settings.part("places"))));
    }
  }

  private void influence() {
    if (!settings.flag("influence")) {
      return;
    }
    boolean ofRegression =
        made.regression().filter(one -> one.leaveOneOut().isPresent()).isPresent();
    if (made.influence().filter(one -> !one.ofEachStudy().isEmpty()).isPresent()) {
      telling.say("influence.diagnostics");
    } else if (made.influence().isPresent() || ofRegression) {
      telling.say(settings.is("model", "three-level") ? "influence.rows" : "influence.repeated");
    } else {
      telling.say("influence.none");
    }
  }
}
