package gapwise.exchange.form;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A number with a decimal point or a decimal comma. Text in which several numbers stand is never
 * taken apart by guess; the message says which columns are meant for them.
 *
 * @param siblings start of the names of the columns of the same quantity, such as {@code age_};
 *     empty when the number stands alone
 * @param percent whether a percent sign may follow
 */
public record NumberForm(Optional<String> siblings, boolean percent) implements CellForm<Double> {
  private static final Pattern PLAIN = Pattern.compile("[+-]?(\\d+([.,]\\d*)?|[.,]\\d+)");
  private static final Pattern EXPONENT = Pattern.compile("[+-]?\\d+(\\.\\d+)?[eE][+-]?\\d{1,3}");

  /** One to three digits, a comma, three digits: twelve hundred or one and a fifth? */
  private static final Pattern AMBIGUOUS = Pattern.compile("[+-]?[1-9]\\d{0,2},\\d{3}");

  private static final Pattern RANGE = Pattern.compile("[\\d.,]+\\s*(-|–|—|to)\\s*[\\d.,]+");
  private static final Pattern OVER = Pattern.compile("([<>≤≥]|over|under|more|less).*");

  private static final String ALONE =
      "one number was expected. Write the rest of what the paper prints into words or note.";

  public static NumberForm plain() {
    return new NumberForm(Optional.empty(), false);
  }

  public static NumberForm share() {
    return new NumberForm(Optional.empty(), true);
  }

  @Override
  public Double read(String text) throws UnreadableException {
    String number = text.replace('−', '-');
    if (percent && number.endsWith("%")) {
      number = number.substring(0, number.length() - 1).strip();
    }
    if (AMBIGUOUS.matcher(number).matches()) {
      throw new UnreadableException(
          "ambiguous-comma",
          "the comma can separate thousands or decimals. Write "
              + number.replace(",", "")
              + " or "
              + number.replace(',', '.')
              + ".");
    }
    if (!PLAIN.matcher(number).matches() && !EXPONENT.matcher(number).matches()) {
      throw refusal(text);
    }
    double value = Double.parseDouble(number.replace(',', '.'));
    if (!Double.isFinite(value)) {
      throw new UnreadableException(
          "not-a-number", "the number is too large. Check it against the paper.");
    }
    return value;
  }

  private UnreadableException refusal(String text) {
    boolean bracketed =
        text.contains("(") || text.contains("[") || text.contains("±") || text.contains("+-");
    boolean range = RANGE.matcher(text).matches();
    if (bracketed || range) {
      return new UnreadableException(
          "several-numbers", siblings.map(p -> advice(p, range)).orElse(ALONE));
    }
    if (OVER.matcher(text).matches()) {
      return new UnreadableException(
          "threshold-in-number",
          "one number was expected, a threshold was found. A threshold of defect length goes into"
              + " defect_length_over_cm, any other into the words or the note.");
    }
    if (text.endsWith("%")) {
      return new UnreadableException(
          "not-a-number",
          "a number without a percent sign was expected. Percentages have columns of their own.");
    }
    return new UnreadableException(
        "not-a-number",
        "a number such as 5.8 or 5,8 was expected. Units and words have columns of their own; write"
            + " NR where the paper does not report it.");
  }

  private static String advice(String prefix, boolean range) {
    if (range) {
      return "one number was expected, a range was found. Write its ends into "
          + prefix
          + "min and "
          + prefix
          + "max.";
    }
    String names = "%1$ssd, %1$sq1 and %1$sq3, %1$smin and %1$smax".formatted(prefix);
    return "one number was expected. Write the mean here and what stands in brackets or after ± into"
        + " the columns made for it ("
        + names
        + "); if the paper does not say which it is, into "
        + prefix
        + "spread_unstated.";
  }

  @Override
  public String write(Double value) {
    return plainText(value);
  }

  /** The shortest decimal text that reads back as the same number. */
  public static String plainText(double value) {
    BigDecimal exact = BigDecimal.valueOf(value);
    return exact.signum() == 0 ? "0" : exact.stripTrailingZeros().toPlainString();
  }

  @Override
  public Type type() {
    return Type.NUMBER;
  }
}
