package gapwise.synthesis.likelihood;

import gapwise.effect.StudyData;
import gapwise.effect.TwoByTwo;
import gapwise.problem.Problem;
import java.util.List;

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
      case SPREAD_RISES ->
          new Problem(
              "",
              "estimate-at-limit",
              "every study lies at one limit or the other, so the likelihood rises as the spread"
                  + " between studies grows and has no highest point; nothing is pooled; the model"
                  + " 'bayesian' with the likelihood 'exact' has an answer here too");
      case OUT_OF_RANGE ->
          new Problem(
              "",
              "did-not-converge",
              "the likelihood could not be worked out within the range of numbers; check the"
                  + " units");
    };
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
