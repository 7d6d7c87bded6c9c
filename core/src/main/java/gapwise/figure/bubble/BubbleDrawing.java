package gapwise.figure.bubble;

import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.drawing.Style;
import gapwise.figure.page.FieldPage;
import gapwise.figure.page.OneField;
import java.util.List;

/** Draws bubble plots, one drawing each: the same value gives the same bytes on every machine. */
public final class BubbleDrawing {
  private BubbleDrawing() {}

  /** Draws the figure. */
  public static Picture draw(Bubble bubble, Setting setting) {
    return new FieldPage(bubble, bubble.sentences(), setting.style(0), new Content(bubble)).draw();
  }

  private record Content(Bubble bubble) implements OneField {
    @Override
    public PagePart plot(Style style, double fieldHeight) {
      return new BubblePlot(bubble, style, fieldHeight);
    }

    @Override
    public List<PagePart> key(Style style) {
      return List.of(BubbleKey.of(bubble, style));
    }
  }
}
