package gapwise.desk;

import gapwise.store.Conflict;
import java.util.List;
import java.util.Objects;

/** What came of handing in a draft. Only {@link Stored} has changed anything. */
public sealed interface HandedInDraft {
  /**
   * It is evidence now.
   *
   * @param version of the study
   */
  record Stored(int version) implements HandedInDraft {}

  /** It says what the evidence base says already, so that nothing was written. */
  record Same() implements HandedInDraft {}

  /**
   * Something in it is wrong, or doubtful and not settled.
   *
   * @param check what it is
   */
  record NotYet(DraftCheck check) implements HandedInDraft {
    public NotYet {
      Objects.requireNonNull(check, "check");
    }
  }

  /**
   * The study has changed since the draft was begun.
   *
   * @param conflicts which versions stand against each other
   */
  record Overtaken(List<Conflict> conflicts) implements HandedInDraft {
    public Overtaken {
      conflicts = List.copyOf(conflicts);
    }
  }
}
