package gapwise.exchange.form;

import gapwise.evidence.PageBox;
import gapwise.evidence.Reading;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The place of one number on a page: {@code events on page 3 of 0a1b... at [120.5 88 150.2 97.1]:
 * 26/32 (81%)}, the four numbers of a box being left, top, right and bottom.
 */
public record ReadingForm() implements CellForm<Reading> {
  private static final String NUMBER = "\\d{1,5}(?:\\.\\d{1,6})?";
  private static final String BOX =
      "\\[" + NUMBER + " " + NUMBER + " " + NUMBER + " " + NUMBER + "\\]";
  private static final Pattern PLACE =
      Pattern.compile(
          "([a-z0-9_]+) on page (\\d{1,4}) of ([0-9a-f]+) at ("
              + BOX
              + "(?: "
              + BOX
              + ")*)(?:: (.*))?",
          Pattern.DOTALL);
  private static final Pattern NUMBERS = Pattern.compile(NUMBER);

  @Override
  public Reading read(String text) throws UnreadableException {
    Matcher place = PLACE.matcher(text);
    if (!place.matches()) {
      throw unreadable();
    }
    try {
      String words = place.group(5) == null ? "" : place.group(5);
      return new Reading(
          place.group(1),
          place.group(3),
          Integer.parseInt(place.group(2)),
          boxes(place.group(4)),
          words);
    } catch (IllegalArgumentException impossible) {
      throw unreadable();
    }
  }

  private static UnreadableException unreadable() {
    return new UnreadableException(
        "not-a-place",
        "a place as 'events on page 3 of (32 letters of the file) at [120.5 88 150.2 97.1]: 26/32'"
            + " was expected. The program writes these; clear the cell if you do not have the"
            + " paper.");
  }

  private static List<PageBox> boxes(String text) {
    Matcher number = NUMBERS.matcher(text);
    List<Double> numbers = new ArrayList<>();
    while (number.find()) {
      numbers.add(Double.valueOf(number.group()));
    }
    List<PageBox> boxes = new ArrayList<>();
    for (int at = 0; at < numbers.size(); at += 4) {
      boxes.add(
          new PageBox(
              numbers.get(at), numbers.get(at + 1), numbers.get(at + 2), numbers.get(at + 3)));
    }
    return boxes;
  }

  @Override
  public String write(Reading value) {
    StringBuilder text = new StringBuilder();
    text.append(value.column()).append(" on page ").append(value.page());
    text.append(" of ").append(value.paper()).append(" at");
    for (PageBox box : value.boxes()) {
      text.append(" [").append(plain(box.left())).append(' ').append(plain(box.top()));
      text.append(' ').append(plain(box.right())).append(' ').append(plain(box.bottom()));
      text.append(']');
    }
    return value.words().isEmpty() ? text.toString() : text + ": " + value.words();
  }

  private static String plain(double points) {
    return BigDecimal.valueOf(points).stripTrailingZeros().toPlainString();
  }
}
