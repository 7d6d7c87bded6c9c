package gapwise.exchange.form;

/**
 * A whole number.
 *
 * @param number how it is read as a number first
 */
public record CountForm(NumberForm number) implements CellForm<Integer> {
  public CountForm() {
    this(NumberForm.plain());
  }

  @Override
  public Integer read(String text) throws UnreadableException {
    double value = number.read(text);
    if (value != Math.rint(value) || Math.abs(value) > Integer.MAX_VALUE) {
      throw new UnreadableException("not-a-whole-number", "a whole number was expected.");
    }
    return (int) value;
  }

  @Override
  public String write(Integer value) {
    return Integer.toString(value);
  }

  @Override
  public Type type() {
    return Type.INTEGER;
  }
}
