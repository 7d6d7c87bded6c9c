package gapwise.exchange.form;

import gapwise.evidence.UnstatedSpread;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What stands in brackets or after a plus-minus sign without saying what it is: {@code ± 7} or
 * {@code (5-20)}; with the number before it, {@code 36 ± 7} or {@code 12 (5-20)}, where the paper
 * does not say whether that is a mean or a median.
 */
public record SpreadForm() implements CellForm<UnstatedSpread> {
  private static final String NUMBER = "([+-]?[\\d.,]+)";
  private static final Pattern PLUS_MINUS =
      Pattern.compile("(?:" + NUMBER + "\\s*)?(?:±|\\+/-|\\+-)\\s*" + NUMBER);
  private static final Pattern BRACKETS =
      Pattern.compile(
          "(?:"
              + NUMBER
              + "\\s*)?[(\\[]\\s*"
              + NUMBER
              + "\\s*(?:(?:-|–|to|;)\\s*"
              + NUMBER
              + ")?\\s*[)\\]]");

  @Override
  public UnstatedSpread read(String text) throws UnreadableException {
    String plain = text.replace('−', '-');
    Matcher form = PLUS_MINUS.matcher(plain);
    if (form.matches()) {
      return new UnstatedSpread(
          NumberForm.plain().read(form.group(2)), OptionalDouble.empty(), number(form.group(1)));
    }
    form = BRACKETS.matcher(plain);
    if (form.matches()) {
      return new UnstatedSpread(
          NumberForm.plain().read(form.group(2)), number(form.group(3)), number(form.group(1)));
    }
    throw new UnreadableException(
        "not-a-spread",
        "what the paper prints was expected, such as '± 7', '(5-20)', '36 ± 7' or '12 (5-20)'.");
  }

  private static OptionalDouble number(String text) throws UnreadableException {
    return text == null ? OptionalDouble.empty() : OptionalDouble.of(NumberForm.plain().read(text));
  }

  /** One number alone is written after a plus-minus sign, two in brackets. */
  @Override
  public String write(UnstatedSpread value) {
    String centre =
        value.centre().isPresent() ? NumberForm.plainText(value.centre().getAsDouble()) + " " : "";
    String first = NumberForm.plainText(value.first());
    return value.second().isPresent()
        ? centre
            + "("
            + first
            + (value.second().getAsDouble() < 0 ? " to " : "-")
            + NumberForm.plainText(value.second().getAsDouble())
            + ")"
        : centre + "± " + first;
  }
}
