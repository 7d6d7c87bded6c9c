package gapwise.server.page;

/** The doors of the header, by what one comes for, in their order. */
public enum Door {
  COMPARE("Compare"),
  STUDIES("Studies"),
  GAPS("Gaps"),
  CASE_AND_CLAIM("Case and claim"),
  ADD("Add"),
  METHOD("Method");

  private final String label;

  Door(String label) {
    this.label = label;
  }

  /** Its name as the header has it. */
  public String label() {
    return label;
  }
}
