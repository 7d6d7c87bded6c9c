package gapwise.desk;

import java.time.Instant;
import java.util.Objects;

/**
 * A draft as it is kept.
 *
 * @param id its name among drafts
 * @param version how often it was kept
 * @param when when it was last kept
 * @param who who last kept it; empty text where nobody gave a name
 * @param draft what it holds
 */
public record KeptDraft(String id, int version, Instant when, String who, Draft draft) {
  public KeptDraft {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(when, "when");
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(draft, "draft");
  }
}
