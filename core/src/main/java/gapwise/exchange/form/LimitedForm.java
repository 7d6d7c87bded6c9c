package gapwise.exchange.form;

import java.util.List;

/**
 * A number that cannot lie outside limits, whatever a paper prints: a count below 0, a percentage
 * above 100.
 *
 * @param form how the number is read
 * @param least smallest that can be
 * @param most largest that can be
 * @param expected what can be, for people, such as "a whole number of 0 or more"
 */
public record LimitedForm<N extends Number>(
    CellForm<N> form, double least, double most, String expected) implements CellForm<N> {

  /** A number of people or events: 0 or more. */
  public static LimitedForm<Integer> count() {
    return new LimitedForm<>(
        new CountForm(), 0, Integer.MAX_VALUE, "a whole number of 0 or more was expected");
  }

  /** Of how many: 1 or more. */
  public static LimitedForm<Integer> several() {
    return new LimitedForm<>(
        new CountForm(), 1, Integer.MAX_VALUE, "a whole number of 1 or more was expected");
  }

  /** A year as records know it. */
  public static LimitedForm<Integer> year() {
    return new LimitedForm<>(new CountForm(), 1800, 2200, "a year such as 2015 was expected");
  }

  /** 0 or more. */
  public static LimitedForm<Double> notNegative(NumberForm form) {
    return new LimitedForm<>(form, 0, Double.MAX_VALUE, "a number of 0 or more was expected");
  }

  /** More than 0. */
  public static LimitedForm<Double> positive(NumberForm form) {
    return new LimitedForm<>(
        form, Double.MIN_VALUE, Double.MAX_VALUE, "a number above 0 was expected");
  }

  /** From one number to another, both included. */
  public static LimitedForm<Double> between(
      NumberForm form, double least, double most, String expected) {
    return new LimitedForm<>(form, least, most, expected);
  }

  @Override
  public N read(String text) throws UnreadableException {
    N value = form.read(text);
    if (!(value.doubleValue() >= least && value.doubleValue() <= most)) {
      throw new UnreadableException(
          "impossible", expected + ". Check it against the paper and correct it.");
    }
    return value;
  }

  @Override
  public String write(N value) {
    return form.write(value);
  }

  @Override
  public Type type() {
    return form.type();
  }

  @Override
  public List<String> allowed() {
    return form.allowed();
  }
}
