package gapwise.figure.plane;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Legend;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.page.FieldPage;
import gapwise.figure.page.OneField;
import java.util.ArrayList;
import java.util.List;

/** Draws acceptability, one drawing each: the same value gives the same bytes everywhere. */
final class AcceptabilityDrawing {
  private AcceptabilityDrawing() {}

  static Picture draw(Acceptability figure, Setting setting) {
    return new FieldPage(figure, figure.sentences(), setting.style(0), new Content(figure)).draw();
  }

  private record Content(Acceptability figure) implements OneField {
    @Override
    public PagePart plot(Style style, double fieldHeight) {
      return new AcceptabilityPlot(figure, style, fieldHeight);
    }

    @Override
    public List<PagePart> key(Style style) {
      List<Legend.Entry> entries = new ArrayList<>();
      for (Acceptability.Line line : figure.lines()) {
        entries.add(
            new Legend.Entry(
                (svg, x, middle) -> {
                  AcceptabilityPlot.stroke(
                      svg, line.kind(), "M" + Svg.at(x, middle) + "H" + Svg.n(x + 28));
                  AcceptabilityPlot.mark(svg, line.kind(), x + 14, middle, style);
                },
                line.kind().label()));
      }
      entries.add(
          new Legend.Entry(
              (svg, x, middle) ->
                  AcceptabilityPlot.frontier(svg, "M" + Svg.at(x, middle) + "H" + Svg.n(x + 28)),
              say("figure.key-frontier")));
      return List.of(new Legend(style, entries));
    }
  }
}
