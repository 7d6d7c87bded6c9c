package gapwise.store;

import java.util.List;
import java.util.Optional;

/** What became of a list of writes: all were done, or none was because some conflict. */
public sealed interface WriteAnswer {

  /** Where the writes stand in the change log; empty when they were not done. */
  Optional<Written> written();

  /** What stood against them, at most {@value VersionWriter#MOST_CONFLICTS}; empty when done. */
  List<Conflict> conflicts();

  /**
   * All were done and will survive a crash.
   *
   * @param lastChange change number of the last of them, or of the log's last when count is 0
   * @param count how many versions were written; they have consecutive change numbers
   */
  record Written(long lastChange, long count) implements WriteAnswer {
    public Written {
      if (count < 0 || lastChange < count) {
        throw new IllegalArgumentException(
            "count must be 0 to lastChange, was " + count + " of " + lastChange);
      }
    }

    /** Change number of the first of them; one more than the last when count is 0. */
    public long firstChange() {
      return lastChange - count + 1;
    }

    @Override
    public Optional<Written> written() {
      return Optional.of(this);
    }

    @Override
    public List<Conflict> conflicts() {
      return List.of();
    }
  }

  /**
   * None was done.
   *
   * @param conflicts at least one
   */
  record Conflicting(List<Conflict> conflicts) implements WriteAnswer {
    public Conflicting {
      conflicts = List.copyOf(conflicts);
      if (conflicts.isEmpty()) {
        throw new IllegalArgumentException("conflicts must not be empty");
      }
    }

    @Override
    public Optional<Written> written() {
      return Optional.empty();
    }
  }
}
