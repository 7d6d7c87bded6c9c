package gapwise.claim;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;

/**
 * What study would settle a claim.
 *
 * @param sentence how many patients, or why that cannot be said
 * @param difference the difference that would matter, as the form shows it: of 100, or percent of
 *     the mean
 * @param usual whether that is the default
 * @param ofHundred whether it is of 100 patients; else percent of the mean
 * @param plan the plan; empty where there is nothing to ask
 */
public record Settling(
    String sentence,
    double difference,
    boolean usual,
    boolean ofHundred,
    Optional<ObjectNode> plan) {
  /** The plan as text; empty where there is none. */
  public String planText() {
    return plan.map(ObjectNode::toPrettyString).orElse("");
  }
}
