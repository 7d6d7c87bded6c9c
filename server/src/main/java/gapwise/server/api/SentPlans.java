package gapwise.server.api;

import gapwise.analysis.PlanOutcome;
import gapwise.answer.Answers;
import gapwise.server.home.Remembered;
import java.util.Optional;

/**
 * Runs the plans that somebody sends, and keeps what came of the latest that ask the evidence base,
 * in one state of it, so that a result, its methods in words and its figures are one run.
 */
final class SentPlans {
  private static final int MOST = 16;

  /** Groups in the data of what is kept together; of each a result takes half a kilobyte. */
  private static final int MOST_GROUPS = 60_000;

  /** Longer ones bring tables of their own. */
  private static final int LONGEST = 100_000;

  /** Where a plan says which rows of the evidence base it takes. */
  private static final String EVIDENCE = "\"evidence\"";

  private final Answers answers;
  private final Remembered<String, Answers.Ran> latest;

  SentPlans(Answers answers) {
    this.answers = answers;
    this.latest = new Remembered<>(MOST, MOST_GROUPS, SentPlans::groups, this::runAnew);
  }

  /** What came of a plan. */
  Answers.Ran run(String plan) {
    return plan.contains(EVIDENCE) && plan.length() <= LONGEST ? latest.of(plan) : runAnew(plan);
  }

  private Answers.Ran runAnew(String plan) {
    return answers.run(plan, Optional.empty());
  }

  private static int groups(Answers.Ran ran) {
    return ran.outcome() instanceof PlanOutcome.Done done ? done.result().data().arms() : 0;
  }
}
