package gapwise.server.address;

import gapwise.evidence.PageBox;
import gapwise.evidence.Reading;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Boxes on pages of papers in addresses and forms: left, top, right, bottom with commas between.
 */
public final class PageBoxes {
  private static final String NUMBER = "(\\d{1,5}(?:\\.\\d{1,6})?)";
  private static final Pattern BOX =
      Pattern.compile(NUMBER + "," + NUMBER + "," + NUMBER + "," + NUMBER);

  private PageBoxes() {}

  /** A box as an address writes it; empty for anything else. */
  public static Optional<PageBox> read(String text) {
    Matcher box = BOX.matcher(text);
    if (!box.matches()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new PageBox(
              Double.parseDouble(box.group(1)),
              Double.parseDouble(box.group(2)),
              Double.parseDouble(box.group(3)),
              Double.parseDouble(box.group(4))));
    } catch (IllegalArgumentException none) {
      return Optional.empty();
    }
  }

  /** Address of the page on which a number was read, its words marked. */
  public static String at(Reading reading) {
    return PagePaths.PAPERS
        + "/"
        + reading.paper()
        + "/pages/"
        + reading.page()
        + reading.boxes().stream()
            .map(box -> box.left() + "," + box.top() + "," + box.right() + "," + box.bottom())
            .collect(Collectors.joining("&at=", "?at=", ""));
  }
}
