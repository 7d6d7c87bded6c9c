package gapwise.synthesis.multilevel;

/** Columns of a design, weighted, say the same to all digits of a double. */
final class DependentColumnsException extends IllegalArgumentException {
  private static final long serialVersionUID = 1;

  DependentColumnsException() {
    super("columns of the design are linearly dependent");
  }
}
