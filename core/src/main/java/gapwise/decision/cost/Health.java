package gapwise.decision.cost;

/** States of health that a utility is asked of; being dead is worth 0. */
public enum Health {
  IN_TREATMENT("in-treatment", "in treatment, or awaiting an operation"),
  INFECTED("infected", "infected"),
  HEALED("healed", "healed, on the own leg"),
  NOT_HEALED("not-healed", "not healed after treatment ended"),
  AMPUTATED("amputated", "amputated, with a prosthesis");

  private final String code;
  private final String label;

  Health(String code, String label) {
    this.code = code;
    this.label = label;
  }

  /** Its name in addresses and problems. */
  public String code() {
    return code;
  }

  /** What it is, for people. */
  public String label() {
    return label;
  }
}
