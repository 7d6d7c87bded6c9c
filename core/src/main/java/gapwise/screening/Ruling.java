package gapwise.screening;

import com.fasterxml.jackson.annotation.JsonIgnore;
import gapwise.reference.kept.KeptReference;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * What was settled where two people chose differently.
 *
 * @param reference id of the kept reference
 * @param stage where
 * @param choice what holds; never {@link Choice#UNSURE}
 * @param reason why it stays out, by the word of the plan
 * @param who who settled it, who may be one of both
 * @param why in their words
 * @param when the moment
 */
public record Ruling(
    String reference,
    Stage stage,
    Choice choice,
    Optional<String> reason,
    Reader who,
    String why,
    Instant when) {
  public Ruling {
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(when, "when");
    if (!KeptReference.isId(reference)) {
      throw new IllegalArgumentException("not the id of a kept reference: '" + reference + "'");
    }
    if (choice == Choice.UNSURE || !stage.offers(choice)) {
      throw new IllegalArgumentException(choice + " settles nothing at " + stage);
    }
    boolean asked = choice == Choice.EXCLUDE && stage.asksReason();
    if (asked && reason.isEmpty() || choice != Choice.EXCLUDE && reason.isPresent()) {
      throw new IllegalArgumentException("a reason belongs to what stays out, and to it always");
    }
    if (why.isBlank()) {
      throw new IllegalArgumentException("who settles says why");
    }
  }

  /** The key under which it is kept. */
  @JsonIgnore
  public String key() {
    return stage.code() + " " + reference;
  }
}
