package gapwise.supplement;

import gapwise.selection.Selection;
import java.util.Arrays;
import java.util.Optional;

/** In which way rows are asked for, so that a plan that is run again takes the same ones. */
public enum Asking {
  /** An outcome pooled, by method where there are several. */
  POOLED("pooled", true),
  /** An outcome over the length of missing bone. */
  BY_SIZE("by-size", false),
  /** Small series against large ones. */
  SMALL_AGAINST_LARGE("small-against-large", false),
  /** One outcome after one method, as methods stand side by side. */
  ONE_METHOD("one-method", true),
  /** A plan that somebody wrote. */
  PLAN("plan", false);

  private final String code;
  private final boolean byMethod;

  Asking(String code, boolean byMethod) {
    this.code = code;
    this.byMethod = byMethod;
  }

  /** Its word in a package. */
  public String code() {
    return code;
  }

  /** The rows that are taken of those that answer a question. */
  Selection taken(Selection selection) {
    return byMethod ? selection.byMethod() : selection;
  }

  static Optional<Asking> of(String code) {
    return Arrays.stream(values()).filter(one -> one.code.equals(code)).findFirst();
  }
}
