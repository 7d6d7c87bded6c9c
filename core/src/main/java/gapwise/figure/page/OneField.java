package gapwise.figure.page;

import gapwise.figure.drawing.Style;

/** A field with two axes whose height follows from its width. */
public interface OneField extends FieldPage.Content {
  /** Height of the field over its width: as tall as a screen leaves room for. */
  double SHAPE = 0.52;

  /** Phones and columns are narrow, so the field is nearly square there. */
  double SHAPE_STACKED = 0.9;

  /** On a page of fixed height there is room for a taller field. */
  double SHAPE_ON_A_PAGE = 0.8;

  /** However long the words, the field keeps this share of the width. */
  double LEAST_SHAPE = 0.25;

  /** In a narrow column height goes to the field before it goes to anything else. */
  double LEAST_SHAPE_STACKED = 0.5;

  /** Beside words, on a landscape page, the field is narrower and must stay taller. */
  double LEAST_SHAPE_BESIDE = 0.42;

  @Override
  default double wished(Style style) {
    Style.Sheet sheet = style.sheet();
    double shape = sheet.stacked() ? SHAPE_STACKED : sheet.trimmed() ? SHAPE : SHAPE_ON_A_PAGE;
    return sheet.room() * shape;
  }

  @Override
  default double least(Style style) {
    Style.Sheet sheet = style.sheet();
    double shape =
        sheet.landscape()
            ? LEAST_SHAPE_BESIDE
            : sheet.stacked() ? LEAST_SHAPE_STACKED : LEAST_SHAPE;
    return sheet.room() * shape;
  }
}
