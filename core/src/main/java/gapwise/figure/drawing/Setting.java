package gapwise.figure.drawing;

import java.util.Objects;

/**
 * What a drawing is made for, and whether it stands by itself. A drawing that is taken away says
 * everything: the mark of invented data, title, sentences, cautions, source. Within a page that
 * says these in its own words it holds what belongs to the marks.
 *
 * @param withinPage whether a page round it says what it leaves out
 */
public record Setting(Medium medium, boolean withinPage) {
  public Setting {
    Objects.requireNonNull(medium, "medium");
    if (withinPage && !medium.style(0).sheet().onScreen()) {
      throw new IllegalArgumentException("no page is drawn round " + medium);
    }
  }

  /** A drawing that is taken away. */
  public static Setting alone(Medium medium) {
    return new Setting(medium, false);
  }

  /** A drawing as wide as a medium within a page. */
  public static Setting withinPage(Medium medium) {
    return new Setting(medium, true);
  }

  /** Sizes for so many rows. */
  public Style style(int rows) {
    Style style = medium.style(rows);
    return withinPage ? style.withinPage() : style;
  }
}
