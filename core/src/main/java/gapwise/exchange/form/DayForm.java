package gapwise.exchange.form;

import gapwise.evidence.unit.Day;

/** A day of the calendar, which a spreadsheet may hold as a date. */
public record DayForm() implements CellForm<Day> {
  @Override
  public Day read(String text) throws UnreadableException {
    return Day.parse(text)
        .orElseThrow(
            () ->
                new UnreadableException(
                    "not-a-day", "a day such as 2026-05-14 (year, month, day) was expected."));
  }

  @Override
  public String write(Day value) {
    return value.toString();
  }

  @Override
  public Type type() {
    return Type.DAY;
  }
}
