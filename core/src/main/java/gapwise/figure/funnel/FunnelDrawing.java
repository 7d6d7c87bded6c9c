package gapwise.figure.funnel;

import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.drawing.Style;
import gapwise.figure.page.FieldPage;
import gapwise.figure.page.OneField;
import java.util.List;

/** Draws funnel plots, one drawing each: the same value gives the same bytes on every machine. */
public final class FunnelDrawing {
  private FunnelDrawing() {}

  /** Draws the figure. */
  public static Picture draw(Funnel funnel, Setting setting) {
    return new FieldPage(funnel, funnel.sentences(), setting.style(0), new Content(funnel)).draw();
  }

  private record Content(Funnel funnel) implements OneField {
    @Override
    public PagePart plot(Style style, double fieldHeight) {
      return new FunnelPlot(funnel, style, fieldHeight);
    }

    @Override
    public List<PagePart> key(Style style) {
      return List.of(FunnelKey.of(funnel, style));
    }
  }
}
