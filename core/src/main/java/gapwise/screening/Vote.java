package gapwise.screening;

import com.fasterxml.jackson.annotation.JsonIgnore;
import gapwise.reference.kept.KeptReference;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * What one person chose of one reference at one stage. The next vote of the same person takes its
 * place, and the first stays in the history.
 *
 * @param reference id of the kept reference
 * @param stage what was read
 * @param reader who
 * @param choice what
 * @param reason why it stays out, by the word of the plan; always there where the stage asks it
 * @param when the moment
 */
public record Vote(
    String reference,
    Stage stage,
    Reader reader,
    Choice choice,
    Optional<String> reason,
    Instant when) {
  public Vote {
    Objects.requireNonNull(reader, "reader");
    Objects.requireNonNull(reason, "reason");
    Objects.requireNonNull(when, "when");
    if (!KeptReference.isId(reference)) {
      throw new IllegalArgumentException("not the id of a kept reference: '" + reference + "'");
    }
    if (!stage.offers(choice)) {
      throw new IllegalArgumentException(stage + " does not offer " + choice);
    }
    if (choice != Choice.EXCLUDE && reason.isPresent()) {
      throw new IllegalArgumentException("only what stays out has a reason");
    }
    if (choice == Choice.EXCLUDE && stage.asksReason() && reason.isEmpty()) {
      throw new IllegalArgumentException("who leaves a full text out says why");
    }
  }

  /** The key under which it is kept. */
  @JsonIgnore
  public String key() {
    return stage.code() + " " + reference + " " + reader.key();
  }
}
