package gapwise.intake;

import gapwise.exchange.Import;
import gapwise.store.Conflict;
import java.util.List;
import java.util.Objects;

/** What came of taking in one study that was typed. Only {@link Stored} has changed anything. */
public sealed interface TakenTyped {
  /**
   * It is stored.
   *
   * @param version of the study
   */
  record Stored(int version) implements TakenTyped {}

  /** It stands there already with the same content. */
  record Same() implements TakenTyped {}

  /**
   * Something is wrong, or doubtful and not settled.
   *
   * @param typed what it is, and where
   */
  record NotTaken(Import.Typed typed) implements TakenTyped {
    public NotTaken {
      Objects.requireNonNull(typed, "typed");
    }
  }

  /**
   * The study is at another version than was expected.
   *
   * @param conflicts which
   */
  record Overtaken(List<Conflict> conflicts) implements TakenTyped {
    public Overtaken {
      conflicts = List.copyOf(conflicts);
    }
  }
}
