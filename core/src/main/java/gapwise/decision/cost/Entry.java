package gapwise.decision.cost;

/** What must be entered before anything can be reckoned. None of it has a value of our own. */
public enum Entry {
  HORIZON_YEARS("horizon-years", "years to look ahead", Kind.NUMBER, 1, 80),
  DISCOUNT_COSTS(
      "discount-costs", "discount rate of costs a year (0.03 for 3 %)", Kind.NUMBER, 0, 1),
  DISCOUNT_EFFECTS(
      "discount-effects", "discount rate of effects a year (0.03 for 3 %)", Kind.NUMBER, 0, 1),
  DEATH_FIRST_YEAR(
      "death-first-year", "chance of dying within the first year, 0 to 1", Kind.NUMBER, 0, 1),
  DEATH_GROWTH(
      "death-growth",
      "factor by which the chance of dying grows from year to year (1 for none)",
      Kind.NUMBER,
      1,
      2),
  MONTH_IN_TREATMENT("month-in-treatment", "cost of a month in treatment", Kind.MONEY),
  REOPERATION("reoperation", "cost of an unplanned operation", Kind.MONEY),
  MONTHS_AWAITING(
      "months-awaiting", "months between the need of an operation and it", Kind.NUMBER, 1, 60),
  INFECTION("infection", "cost of an infection, operations for it included", Kind.MONEY),
  MONTHS_INFECTED("months-infected", "months that an infection lasts", Kind.NUMBER, 1, 60),
  AMPUTATION("amputation", "cost of an amputation after a reconstruction failed", Kind.MONEY),
  PROSTHESIS("prosthesis", "cost of one prosthesis", Kind.MONEY),
  PROSTHESIS_YEARS(
      "prosthesis-years", "years after which a prosthesis is renewed", Kind.NUMBER, 0.25, 80),
  MONTH_NOT_HEALED(
      "month-not-healed", "cost of a month not healed after treatment ended", Kind.MONEY),
  LOST_WORK_MONTH(
      "lost-work-month", "worth of a month of work lost (0 to leave it out)", Kind.MONEY),
  MONTHS_OFF_WORK_AFTER_AMPUTATION(
      "months-off-work-after-amputation",
      "months of work lost after an amputation that ends a reconstruction",
      Kind.NUMBER,
      0,
      480);

  /** What an entry is. */
  public enum Kind {
    /** An amount of money, 0 or more, which may have a standard deviation. */
    MONEY,
    /** Any other number, taken as known. */
    NUMBER
  }

  private final String code;
  private final String label;
  private final Kind kind;
  private final double least;
  private final double most;

  Entry(String code, String label, Kind kind) {
    this(code, label, kind, 0, 1e12);
  }

  Entry(String code, String label, Kind kind, double least, double most) {
    this.code = code;
    this.label = label;
    this.kind = kind;
    this.least = least;
    this.most = most;
  }

  /** Its name in addresses and problems. */
  public String code() {
    return code;
  }

  /** What it is, with its unit, for people. */
  public String label() {
    return label;
  }

  /** Whether it is money. */
  public Kind kind() {
    return kind;
  }

  /** The least it can be. */
  public double least() {
    return least;
  }

  /** The most it can be. */
  public double most() {
    return most;
  }
}
