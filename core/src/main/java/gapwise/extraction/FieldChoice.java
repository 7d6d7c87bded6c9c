package gapwise.extraction;

import com.fasterxml.jackson.annotation.JsonIgnore;
import gapwise.screening.Reader;
import java.time.Instant;
import java.util.List;
import java.util.Objects;

/**
 * What was settled of one difference. The next choice takes its place, and the first stays in the
 * history.
 *
 * @param study id of the study
 * @param difference key of the difference
 * @param field which field, for people
 * @param first what the first had read; empty text for nothing
 * @param second what the second had read
 * @param taken whose value holds
 * @param value what holds; empty text for nothing
 * @param why the reason; empty text where one of both alone had read something
 * @param who who settled it
 * @param when the moment
 */
public record FieldChoice(
    String study,
    String difference,
    Field field,
    String first,
    String second,
    Taken taken,
    String value,
    String why,
    Reader who,
    Instant when) {
  /** Longest reason. */
  public static final int LONGEST_WHY = 500;

  public FieldChoice {
    Objects.requireNonNull(study, "study");
    Objects.requireNonNull(difference, "difference");
    Objects.requireNonNull(field, "field");
    Objects.requireNonNull(taken, "taken");
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(when, "when");
    if (why.length() > LONGEST_WHY) {
      throw new IllegalArgumentException("a reason of " + why.length() + " letters");
    }
    if (taken == Taken.THIRD && why.isBlank()) {
      throw new IllegalArgumentException("who takes a third value says why");
    }
  }

  /** Whose value holds. */
  public enum Taken {
    /** What the first read. */
    FIRST,
    /** What the second read. */
    SECOND,
    /** Neither. */
    THIRD;

    /** Whose it is. */
    static Taken of(Side side) {
      return side == Side.FIRST ? FIRST : SECOND;
    }
  }

  /**
   * Which field it is about.
   *
   * @param sheet sheet of the template
   * @param row what tells the row from its neighbours
   * @param column name of the column; empty where the row as a whole was in question
   */
  public record Field(String sheet, List<String> row, String column) {
    public Field {
      row = List.copyOf(row);
    }
  }

  /** The key under which it is kept. */
  @JsonIgnore
  public String key() {
    return study + " " + difference;
  }

  /** A choice of a difference as it stands. */
  public static FieldChoice of(
      String study, Difference of, Taken taken, String third, String why, Reader who, Instant now) {
    String value =
        switch (taken) {
          case FIRST -> of.first().text();
          case SECOND -> of.second().text();
          case THIRD -> third;
        };
    return new FieldChoice(
        study,
        of.key(),
        new Field(
            of.pair().sheet(),
            of.pair().named(),
            of.column().map(column -> column.name()).orElse("")),
        of.first().text(),
        of.second().text(),
        taken,
        value,
        why,
        who,
        now);
  }
}
