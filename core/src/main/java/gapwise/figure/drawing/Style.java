package gapwise.figure.drawing;

import java.util.OptionalDouble;

/** Sizes of one medium at one density, in units of the drawing. */
public record Style(Sheet sheet, Type type, Rhythm rhythm) {

  /**
   * The ground that is drawn on.
   *
   * @param width width of the drawing
   * @param pageHeight greatest height of a page; empty for one drawing as tall as it needs
   * @param trimmed whether a page ends where its content does; else it has the full height
   * @param unit "px" or "mm": the unit of the outer size
   * @param margin room left on all sides
   * @param stacked whether a series is stacked in lines (phone) or set in columns
   * @param withinPage whether a page round the drawing says title, sentences, cautions and source
   */
  public record Sheet(
      double width,
      OptionalDouble pageHeight,
      boolean trimmed,
      String unit,
      double margin,
      boolean stacked,
      boolean withinPage) {
    /** Height that a drawing must have; empty where it ends with its content. */
    public OptionalDouble fixedHeight() {
      return trimmed ? OptionalDouble.empty() : pageHeight;
    }

    /** Whether pages are wider than tall, so that words stand beside a field. */
    public boolean landscape() {
      return pageHeight.isPresent() && width > pageHeight.getAsDouble();
    }

    /** Whether it is looked at on a screen, one drawing for itself. */
    public boolean onScreen() {
      return trimmed && unit.equals("px");
    }

    public double right() {
      return width - margin;
    }

    public double room() {
      return width - 2 * margin;
    }
  }

  /**
   * Sizes of text.
   *
   * @param foot size of cautions and source
   */
  public record Type(double title, double sentence, double text, double small, double foot) {}

  /**
   * Sizes of rows and marks.
   *
   * @param pitch height of a row of one line
   * @param secondLine height of each further line
   * @param lensRadius half the width of the lens of greatest weight
   * @param bar thickness of an interval bar
   * @param bone height of a bone end
   * @param span room for a span
   * @param nameLines lines that a long name may take
   */
  public record Rhythm(
      double pitch,
      double secondLine,
      double lensRadius,
      double bar,
      double bone,
      double span,
      int nameLines) {}

  /** The same on a sheet of another width. */
  public Style across(double width) {
    return resized(width, sheet.pageHeight());
  }

  /** The same letters on a sheet larger by a factor, so that more stands on it. */
  public Style onSheetLargerBy(double factor) {
    OptionalDouble height =
        sheet.pageHeight().isPresent()
            ? OptionalDouble.of(sheet.pageHeight().getAsDouble() * factor)
            : OptionalDouble.empty();
    return resized(sheet.width() * factor, height);
  }

  /** Larger letters, rows and marks on the same sheet, so that few words and rows fill it. */
  public Style largerBy(double factor) {
    return new Style(
        sheet,
        new Type(
            type.title() * factor,
            type.sentence() * factor,
            type.text() * factor,
            type.small() * factor,
            type.foot() * factor),
        new Rhythm(
            rhythm.pitch() * factor,
            rhythm.secondLine() * factor,
            rhythm.lensRadius() * factor,
            rhythm.bar() * factor,
            rhythm.bone() * factor,
            rhythm.span() * factor,
            rhythm.nameLines()));
  }

  private Style resized(double width, OptionalDouble height) {
    return on(width, height, sheet.withinPage());
  }

  /** The same where a page says the words that do not belong to the marks. */
  Style withinPage() {
    return on(sheet.width(), sheet.pageHeight(), true);
  }

  private Style on(double width, OptionalDouble height, boolean withinPage) {
    return new Style(
        new Sheet(
            width,
            height,
            sheet.trimmed(),
            sheet.unit(),
            sheet.margin(),
            sheet.stacked(),
            withinPage),
        type,
        rhythm);
  }

  /** Letters of a caution. */
  public Lettering caution() {
    return Lettering.plain(type.foot() + 0.5);
  }

  /** Letters of the line that says where numbers come from. */
  public Lettering source() {
    return Lettering.soft(type.foot());
  }

  public Lettering text() {
    return Lettering.plain(type.text());
  }

  public Lettering bold() {
    return Lettering.bold(type.text());
  }

  public Lettering small() {
    return Lettering.soft(type.small());
  }
}
