package gapwise.effect;

import java.util.Locale;

/**
 * What is done about cells without events, or with only events, before a ratio or logit is taken.
 *
 * @param amount what is added to the cells, above 0; 0.5 by convention (Haldane, Ann Hum Genet
 *     1956;20:309; Anscombe, Biometrika 1956;43:461)
 * @param tables of which studies it is added to the cells
 * @param uninformative what becomes of studies that say nothing of a ratio
 */
public record EmptyCells(double amount, Tables tables, UninformativeStudies uninformative) {
  /** 0.5 to tables with an empty cell; studies without information left out. */
  public static final EmptyCells USUAL =
      new EmptyCells(0.5, Tables.WITH_AN_EMPTY_CELL, UninformativeStudies.LEAVE_OUT);

  public EmptyCells {
    if (!(amount > 0 && Double.isFinite(amount))) {
      throw new IllegalArgumentException("amount must be above 0, was " + amount);
    }
  }

  /** The same rule for studies that say nothing, with nothing added to any. */
  public EmptyCells withoutAdding() {
    return new EmptyCells(amount, Tables.NONE, uninformative);
  }

  /** The tables of counts that something is added to. */
  public enum Tables {
    /** Those with a cell of 0. */
    WITH_AN_EMPTY_CELL,
    /** Every one, if any study has a cell of 0. */
    EVERY_IF_ONE_IS_EMPTY,
    /** Every one. */
    EVERY,
    /** None: studies whose effect is then infinite are left out. */
    NONE;

    /** The word in a plan. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** What becomes of studies with no event, or only events, in all their groups. */
  public enum UninformativeStudies {
    /** Left out before any study is counted. */
    LEAVE_OUT,
    /** Kept, with the addition that other studies with an empty cell get. */
    KEEP;

    /** The word in a plan. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * What to add to one study.
   *
   * @param hasEmpty whether it has a cell of 0
   * @param anyHasEmpty whether any study that stays has one
   * @return 0 or {@link #amount}
   */
  public double addedTo(boolean hasEmpty, boolean anyHasEmpty) {
    return switch (tables) {
      case WITH_AN_EMPTY_CELL -> hasEmpty ? amount : 0;
      case EVERY_IF_ONE_IS_EMPTY -> anyHasEmpty ? amount : 0;
      case EVERY -> amount;
      case NONE -> 0;
    };
  }
}
