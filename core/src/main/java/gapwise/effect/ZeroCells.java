package gapwise.effect;

import java.util.Locale;

/**
 * What is done about cells without events, or with only events, before a ratio or logit is taken.
 *
 * @param add what is added to the cells, above 0; 0.5 by convention (Haldane, Ann Hum Genet
 *     1956;20:309; Anscombe, Biometrika 1956;43:461)
 * @param to which studies it is added to
 * @param noEvents what becomes of studies that say nothing of a ratio
 */
public record ZeroCells(double add, To to, NoEvents noEvents) {
  /** 0.5 to studies with a zero; studies without information left out. */
  public static final ZeroCells USUAL =
      new ZeroCells(0.5, To.STUDIES_WITH_A_ZERO, NoEvents.LEAVE_OUT);

  /** The same rule for studies that say nothing, with nothing added to any. */
  ZeroCells withoutAdding() {
    return new ZeroCells(add, To.NONE, noEvents);
  }

  public ZeroCells {
    if (!(add > 0 && Double.isFinite(add))) {
      throw new IllegalArgumentException("add must be above 0, was " + add);
    }
  }

  /** Which studies something is added to. */
  public enum To {
    /** Those with a cell of 0. */
    STUDIES_WITH_A_ZERO,
    /** All, if any study has a cell of 0. */
    ALL_IF_ANY_ZERO,
    /** All. */
    ALL,
    /** None: studies whose effect is then infinite are left out. */
    NONE;

    /** The word in a plan. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** What becomes of studies with no event, or only events, in all their groups. */
  public enum NoEvents {
    /** Left out before any study is counted. */
    LEAVE_OUT,
    /** Kept, with the addition that other studies with a zero get. */
    KEEP;

    /** The word in a plan. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * What to add to one study.
   *
   * @param hasZero whether it has a cell of 0
   * @param anyHasZero whether any study that stays has one
   * @return 0 or {@link #add}
   */
  double addedTo(boolean hasZero, boolean anyHasZero) {
    return switch (to) {
      case STUDIES_WITH_A_ZERO -> hasZero ? add : 0;
      case ALL_IF_ANY_ZERO -> anyHasZero ? add : 0;
      case ALL -> add;
      case NONE -> 0;
    };
  }
}
