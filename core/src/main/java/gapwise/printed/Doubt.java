package gapwise.printed;

/** Kinds of doubt, by which questions are grouped. */
public enum Doubt {
  NOTHING("Nothing is reported"),
  CENTRE("Mean or median"),
  SPREAD("What a spread is"),
  UNIT("Which unit"),
  PERCENT("Count or percentage"),
  DENOMINATOR("Of how many"),
  DATE("A date that was something else"),
  NUMBER("How a number is meant"),
  WORD("A word that is not in the list"),
  CONTRADICTION("Numbers that contradict each other"),
  REMARK("A remark beside the value"),
  COLUMN("What a column holds"),
  CARRIED("A value carried from another cell"),
  CONVERTED("A value carried into another unit");

  private final String label;

  Doubt(String label) {
    this.label = label;
  }

  /** The kind in words. */
  public String label() {
    return label;
  }
}
