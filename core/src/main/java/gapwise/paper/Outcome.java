package gapwise.paper;

import java.util.Objects;

/** An answer about a paper, or why there is none, between the rooms that read. */
public sealed interface Outcome<T> permits Outcome.Done, Outcome.Undone {
  /** The answer. */
  record Done<T>(T value) implements Outcome<T> {
    public Done {
      Objects.requireNonNull(value, "value");
    }
  }

  /** Why there is none. */
  record Undone<T>(Refused refused) implements Outcome<T> {
    public Undone {
      Objects.requireNonNull(refused, "refused");
    }
  }
}
