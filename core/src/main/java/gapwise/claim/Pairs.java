package gapwise.claim;

import gapwise.answer.Answers;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Claims about many pairs of methods among the same groups, for a table of options: what pairs have
 * in common is looked up once. For one thread, and let go when the pairs are told.
 */
public final class Pairs {
  private final Answers answers;
  private final Map<Question, Selection> alone = new HashMap<>();
  private final Map<Question, ArmTable> arms = new HashMap<>();

  public Pairs(Answers answers) {
    this.answers = answers;
  }

  /**
   * Only what studies that hold both methods say; the same numbers as of the claim examined whole.
   * Empty where the claim cannot be examined.
   */
  public Optional<Part> within(Claim claim) {
    if (!(ground(claim) instanceof ClaimRules.Ground.Shared shared)) {
      return Optional.empty();
    }
    Selection selection = answers.select(claim.both(shared.clock()));
    return Optional.of(
        new DirectPart(answers.runner(), claim, Effect.of(selection.settled()))
            .of(arms(claim, selection)));
  }

  /**
   * Only what a network of studies says, and what adjusting says; the same numbers as of the claim
   * examined whole.
   */
  public Through through(Claim claim) {
    if (!(ground(claim) instanceof ClaimRules.Ground.Shared shared)) {
      return Through.NOTHING;
    }
    Selection selection = answers.select(claim.both(shared.clock()));
    if (Claims.rows(selection, claim.a().method()).isEmpty()
        || Claims.rows(selection, claim.b().method()).isEmpty()) {
      return Through.NOTHING;
    }
    ArmTable table = arms(claim, selection);
    Optional<Part> indirect =
        table.joinsThroughOthers(claim.a().method(), claim.b().method())
            ? Optional.of(
                    new IndirectPart(answers.runner(), claim, Effect.of(selection.settled()))
                        .of(table))
                .filter(part -> part.compared().isPresent())
            : Optional.empty();
    AdjustedPart adjusted = new AdjustedPart(answers.runner(), claim, selection);
    return new Through(indirect, adjusted.fullest(), adjusted.patientsCompared());
  }

  private ClaimRules.Ground ground(Claim claim) {
    return ClaimRules.apart(claim)
        .<ClaimRules.Ground>map(ClaimRules.Ground.Not::new)
        .orElseGet(() -> new ClaimRules(this::alone, claim).ground());
  }

  private Selection alone(Question question) {
    return alone.computeIfAbsent(question, answers::select);
  }

  private ArmTable arms(Claim claim, Selection selection) {
    return arms.computeIfAbsent(
        claim.every(selection), every -> ArmTable.of(answers.select(every).byMethod()));
  }
}
