package gapwise.curation;

import gapwise.store.Conflict;
import java.util.List;
import java.util.Optional;

/** What became of a wish to save or remove a study. */
public sealed interface SaveAnswer {

  /** Where it was saved; empty when it was not. */
  Optional<Saved> saved();

  /**
   * Saved, and found by searches from now on.
   *
   * @param version version that the record now has
   * @param change number of the change
   */
  record Saved(int version, long change) implements SaveAnswer {
    @Override
    public Optional<Saved> saved() {
      return Optional.of(this);
    }
  }

  /**
   * Not saved, since someone else wrote in between.
   *
   * @param conflicts which record, which version was expected and which was found; at least one
   */
  record NotSaved(List<Conflict> conflicts) implements SaveAnswer {
    public NotSaved {
      conflicts = List.copyOf(conflicts);
      if (conflicts.isEmpty()) {
        throw new IllegalArgumentException("conflicts must not be empty");
      }
    }

    @Override
    public Optional<Saved> saved() {
      return Optional.empty();
    }
  }
}
