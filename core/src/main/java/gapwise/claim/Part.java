package gapwise.claim;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.result.Result;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * One kind of evidence on a claim.
 *
 * @param heading what kind
 * @param sentences what it says, or why it says nothing; at least one
 * @param compared its numbers; empty where it has none
 * @param plan the plan that gives them; empty where there was nothing to run
 * @param result of the plan
 */
public record Part(
    String heading,
    List<String> sentences,
    Optional<Compared> compared,
    Optional<ObjectNode> plan,
    Optional<Result> result) {
  public Part {
    Objects.requireNonNull(heading, "heading");
    sentences = List.copyOf(sentences);
    Objects.requireNonNull(compared, "compared");
    Objects.requireNonNull(plan, "plan");
    Objects.requireNonNull(result, "result");
  }

  /** A kind of evidence that there is not. */
  static Part none(String heading, String why) {
    return new Part(heading, List.of(why), Optional.empty(), Optional.empty(), Optional.empty());
  }

  /** The plan as text; empty where there is none. */
  public String planText() {
    return plan.map(ObjectNode::toPrettyString).orElse("");
  }
}
