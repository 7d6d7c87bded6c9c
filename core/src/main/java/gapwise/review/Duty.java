package gapwise.review;

import java.util.Arrays;
import java.util.Optional;

/** What a person does in a review. */
public enum Duty {
  SCREENS("screens", "screens"),
  EXTRACTS("extracts", "extracts"),
  SETTLES("settles", "settles what others see differently"),
  READS("reads", "reads along");

  private final String code;
  private final String label;

  Duty(String code, String label) {
    this.code = code;
    this.label = label;
  }

  /** The word in forms. */
  public String code() {
    return code;
  }

  /** The words that people read, after a name. */
  public String label() {
    return label;
  }

  /** The duty of a word. */
  public static Optional<Duty> find(String code) {
    return Arrays.stream(values()).filter(one -> one.code.equals(code)).findFirst();
  }
}
