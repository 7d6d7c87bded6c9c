package gapwise.decision.sheet;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.evidence.vocabulary.Outcome;
import java.util.Map;
import java.util.Objects;

/**
 * Something that can become of people, in plain words.
 *
 * @param head over the arrays
 * @param such what became of them, as in "88 of 100 joined"
 * @param other what became of the rest, as in "12 did not"
 */
public record PlainOutcome(String head, String such, String other) {
  private static final Map<String, PlainOutcome> ALL =
      Plain.read("outcomes.json", "outcome", PlainOutcome::read);

  public PlainOutcome {
    Objects.requireNonNull(head, "head");
    Objects.requireNonNull(such, "such");
    Objects.requireNonNull(other, "other");
  }

  private static PlainOutcome read(JsonNode node) {
    return new PlainOutcome(
        node.required("head").asText(),
        node.required("such").asText(),
        node.required("other").asText());
  }

  /**
   * The words for an outcome.
   *
   * @throws IllegalArgumentException when nobody wrote them
   */
  public static PlainOutcome of(Outcome outcome) {
    return Plain.get(ALL, outcome.code());
  }
}
