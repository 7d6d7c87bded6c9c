package gapwise.search.words;

import gapwise.evidence.unit.LengthRange;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalInt;

/** A part of what was typed whose meaning is known. */
public sealed interface Reading {
  /** The words as they were typed. */
  String typed();

  /** What a word of a vocabulary narrows by. */
  enum Kind {
    METHOD,
    OUTCOME,
    BONE,
    SEGMENT,
    INFECTED,
    DESIGN,
    DETAIL;

    /** The word for people and addresses. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * A word of a vocabulary.
   *
   * @param codes of the entries that are meant; several are alternatives
   */
  record Coded(Kind kind, List<String> codes, String typed) implements Reading {
    public Coded {
      Objects.requireNonNull(kind, "kind");
      codes = List.copyOf(codes);
      Objects.requireNonNull(typed, "typed");
    }
  }

  /** A missing length. */
  record Size(LengthRange range, String typed) implements Reading {
    public Size {
      Objects.requireNonNull(range, "range");
      Objects.requireNonNull(typed, "typed");
    }
  }

  /** How long patients were followed at least, in months. */
  record FollowUp(double months, String typed) implements Reading {
    public FollowUp {
      Objects.requireNonNull(typed, "typed");
      if (!(months >= 0)) {
        throw new IllegalArgumentException("follow-up must be 0 months or more, was " + months);
      }
    }
  }

  /** Years of publication, ends included; an open end is empty. */
  record Years(OptionalInt from, OptionalInt to, String typed) implements Reading {
    public Years {
      Objects.requireNonNull(typed, "typed");
      if (from.isEmpty() && to.isEmpty()) {
        throw new IllegalArgumentException("years without an end narrow nothing");
      }
    }
  }
}
