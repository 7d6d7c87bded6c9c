package gapwise.screening;

import java.util.Arrays;
import java.util.Optional;

/** What one person chose of one paper. */
public enum Choice {
  /** It goes on. */
  KEEP("keep", "Keep"),
  /** It may go on; at title and abstract that keeps it. */
  UNSURE("unsure", "Unsure"),
  /** It stays out. */
  EXCLUDE("exclude", "Leave out"),
  /** Its full text could not be had. */
  NOT_HAD("not-had", "Text not to be had");

  private final String code;
  private final String label;

  Choice(String code, String label) {
    this.code = code;
    this.label = label;
  }

  /** The word in addresses and records. */
  public String code() {
    return code;
  }

  /** The word that people read. */
  public String label() {
    return label;
  }

  /** Whether the paper goes on by this choice. */
  public boolean keeps() {
    return this == KEEP || this == UNSURE;
  }

  /** The choice of a word. */
  public static Optional<Choice> find(String code) {
    return Arrays.stream(values()).filter(choice -> choice.code.equals(code)).findFirst();
  }
}
