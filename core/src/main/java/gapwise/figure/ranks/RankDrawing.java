package gapwise.figure.ranks;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Legend;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.drawing.Style;
import gapwise.figure.page.FieldPage;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Draws shares of ranks: the same value gives the same bytes on every machine. */
final class RankDrawing {
  /** Height of a bar in sizes of text, wished and at least. */
  private static final double WISHED = 2.2;

  private static final double LEAST = 1.5;

  private RankDrawing() {}

  static Picture draw(RankShares figure, Setting setting) {
    Style style = setting.style(figure.bars().size());
    return new FieldPage(figure, figure.sentences(), style, new Content(figure)).draw();
  }

  private record Content(RankShares figure) implements FieldPage.Content {
    @Override
    public PagePart plot(Style style, double fieldHeight) {
      return new RankPlot(figure, style, fieldHeight / figure.bars().size());
    }

    @Override
    public List<PagePart> key(Style style) {
      List<Legend.Entry> entries = new ArrayList<>();
      int ranks = figure.bars().size();
      for (int rank = 0; rank < ranks; rank++) {
        int at = rank;
        entries.add(
            new Legend.Entry(
                (svg, x, middle) -> RankShade.of(at, ranks).part(svg, x, middle - 7, 28, 14),
                rank == 0
                    ? say("figure.key-first")
                    : say("figure.key-rank", Map.of("rank", Integer.toString(rank + 1)))));
      }
      return List.of(new Legend(style, entries));
    }

    @Override
    public double wished(Style style) {
      return figure.bars().size() * style.type().text() * WISHED;
    }

    @Override
    public double least(Style style) {
      return figure.bars().size() * style.type().text() * LEAST;
    }
  }
}
