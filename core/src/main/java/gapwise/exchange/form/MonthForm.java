package gapwise.exchange.form;

import gapwise.evidence.unit.PartialDate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A year or a month of a year. Spreadsheets turn a typed 2011-08 into the first day of that month;
 * that is taken back, any other day is not.
 */
public record MonthForm() implements CellForm<PartialDate> {
  private static final Pattern FIRST_OF_MONTH = Pattern.compile("(\\d{4}-\\d{2})-01");

  @Override
  public PartialDate read(String text) throws UnreadableException {
    Matcher first = FIRST_OF_MONTH.matcher(text);
    return PartialDate.parse(first.matches() ? first.group(1) : text)
        .orElseThrow(
            () ->
                new UnreadableException(
                    "not-a-month", "a year such as 2011 or a month such as 2011-08 was expected."));
  }

  @Override
  public String write(PartialDate value) {
    return value.toString();
  }

  @Override
  public Type type() {
    return Type.YEAR_MONTH;
  }
}
