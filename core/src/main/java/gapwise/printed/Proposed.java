package gapwise.printed;

import gapwise.evidence.unit.Unit;
import java.util.Objects;
import java.util.Optional;

/**
 * One value proposed for one column of the template.
 *
 * @param column the column's name
 * @param text the value as the template takes it: a number with a decimal point, a code, words;
 *     empty where only the question is there
 * @param unit the unit of a number that has one
 * @param state whether it may be taken, or must be asked, or is to be left
 * @param doubt the kind of the doubt; empty for what is taken without one
 * @param why what was found and what to do, as a sentence; empty with no doubt
 */
public record Proposed(
    String column,
    String text,
    Optional<Unit> unit,
    State state,
    Optional<Doubt> doubt,
    String why) {
  /** What becomes of a value. */
  public enum State {
    TAKEN,
    ASKED,
    LEFT
  }

  public Proposed {
    Objects.requireNonNull(column, "column");
    Objects.requireNonNull(text, "text");
    Objects.requireNonNull(why, "why");
    if (state == State.ASKED && doubt.isEmpty()) {
      throw new IllegalArgumentException("what is asked needs its doubt, column " + column);
    }
  }

  /** A value without doubt. */
  public static Proposed taken(String column, String text, Optional<Unit> unit) {
    return new Proposed(column, text, unit, State.TAKEN, Optional.empty(), "");
  }

  /** A value that a person must decide; the text may be empty. */
  public static Proposed asked(
      String column, String text, Optional<Unit> unit, Doubt doubt, String why) {
    return new Proposed(column, text, unit, State.ASKED, Optional.of(doubt), why);
  }

  /** A cell that says that nothing is there. */
  public static Proposed left(String column, String why) {
    return new Proposed(column, "", Optional.empty(), State.LEFT, Optional.of(Doubt.NOTHING), why);
  }

  /** The same asked, unless it is asked or left already. */
  public Proposed askedBecause(Doubt because, String reason) {
    return state == State.TAKEN
        ? new Proposed(column, text, unit, State.ASKED, Optional.of(because), reason)
        : this;
  }

  /** The same taken, with a doubt told beside it. */
  public Proposed told(Doubt because, String reason) {
    return state == State.TAKEN
        ? new Proposed(column, text, unit, State.TAKEN, Optional.of(because), reason)
        : this;
  }
}
