package gapwise.printed;

/** What a word beside a number says that the number is. */
public enum Statistic {
  MEAN("mean"),
  MEDIAN("median"),
  SD("SD"),
  SE("SE"),
  RANGE("range"),
  QUARTILES("quartiles"),
  CONFIDENCE("95 % interval"),
  MINIMUM("smallest"),
  MAXIMUM("largest"),
  FIRST_QUARTILE("first quartile"),
  THIRD_QUARTILE("third quartile"),
  COUNT("number with it"),
  TOTAL("of how many"),
  PERCENT("percent"),
  P_VALUE("p value");

  private final String label;

  Statistic(String label) {
    this.label = label;
  }

  /** For people. */
  public String label() {
    return label;
  }
}
