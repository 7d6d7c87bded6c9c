package gapwise.figure.flow;

import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.drawing.Style;
import gapwise.figure.page.FieldPage;
import java.util.List;

/** Draws a flow: the same value gives the same bytes on every machine. */
final class FlowDrawing {
  /** Room between two steps in sizes of text, wished and at least. */
  private static final double WISHED = 1.8;

  private static final double LEAST = 1.2;

  private FlowDrawing() {}

  static Picture draw(FlowChart chart, Setting setting) {
    Style style = setting.style(chart.steps().size() * 2);
    return new FieldPage(chart, chart.sentences(), style, new Content(chart)).draw();
  }

  private record Content(FlowChart chart) implements FieldPage.Content {
    private int gaps() {
      return chart.steps().size() - 1;
    }

    @Override
    public PagePart plot(Style style, double fieldHeight) {
      return new FlowPlot(chart, style, fieldHeight / gaps());
    }

    @Override
    public List<PagePart> key(Style style) {
      return List.of();
    }

    @Override
    public double wished(Style style) {
      return gaps() * style.type().text() * WISHED;
    }

    @Override
    public double least(Style style) {
      return gaps() * style.type().text() * LEAST;
    }
  }
}
