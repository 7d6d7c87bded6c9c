package gapwise.synthesis.likelihood;

import static gapwise.sentence.Sentences.say;

import gapwise.effect.ArmCounts;
import gapwise.effect.StudyData;
import gapwise.effect.TwoByTwo;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Map;

/** Why counts give no pooled value, in words. */
final class WhyNoTop {
  private WhyNoTop() {}

  /** A reason in words. */
  static Problem of(
      ExactLikelihood.Model model, LikelihoodFit.Reason reason, List<? extends StudyData> studies) {
    boolean two = model != ExactLikelihood.Model.PROPORTION && model != ExactLikelihood.Model.RATE;
    return switch (reason) {
      case NO_INFORMATION -> {
        boolean none = studies.stream().allMatch(s -> s.allEvents().orElse(0) == 0);
        boolean all =
            studies.stream()
                .allMatch(s -> s instanceof TwoByTwo table && table.nonEventTotal() == 0);
        yield studies.isEmpty()
            ? new Problem("", "no-studies", "no study is left to be pooled")
            : new Problem(
                "",
                none ? "no-events" : all ? "all-events" : "no-information",
                "no study says anything of the ratio; nothing is pooled");
      }
      case MEAN_FALLS -> two ? limit("0") : new Problem("", "no-events", OF_NONE);
      case MEAN_RISES -> two ? limit("infinite") : new Problem("", "all-events", OF_ALL);
      case SPREAD_RISES -> new Problem("", "estimate-at-limit", spreadRises(model, studies));
      case OUT_OF_RANGE ->
          new Problem(
              "",
              "did-not-converge",
              "the likelihood could not be worked out within the range of numbers; check the"
                  + " units");
    };
  }

  /**
   * With an endless spread a study is full or empty, full by the share p of the distribution above
   * the middle, and p^f (1 - p)^e of f full and e empty studies is highest at f/(f + e).
   */
  private static String spreadRises(
      ExactLikelihood.Model model, List<? extends StudyData> studies) {
    if (model != ExactLikelihood.Model.PROPORTION) {
      return say("analysis.spread-rises");
    }
    long full = studies.stream().filter(s -> ((ArmCounts) s).nonEvents() == 0).count();
    return say("analysis.spread-rises-to-share", Map.of("full", full, "studies", studies.size()));
  }

  private static final String OF_NONE =
      "no event anywhere, so the likelihood rises as the pooled value falls to 0 and has no highest"
          + " point; an interval on all counts together can be had by the task 'interval'";

  private static final String OF_ALL =
      "every patient had the event, so the likelihood rises as the proportion goes to 1 and has no"
          + " highest point; an interval on all counts together can be had by the task 'interval'";

  private static Problem limit(String ratio) {
    return new Problem(
        "",
        "estimate-at-limit",
        "one of the groups has no events, or only events, in every study, so the pooled ratio is "
            + ratio
            + " and has no interval");
  }
}
