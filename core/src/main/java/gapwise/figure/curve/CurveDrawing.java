package gapwise.figure.curve;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Gap;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Paragraph;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.drawing.Style;
import gapwise.figure.page.FieldPage;
import java.util.ArrayList;
import java.util.List;

/** Draws curves of time to an event: the same value gives the same bytes on every machine. */
final class CurveDrawing {
  private static final double SHAPE = 0.42;
  private static final double SHAPE_STACKED = 0.85;
  private static final double LEAST_FIELD = 120;

  /** Names stand beside the plot, so that it needs more of a landscape page than other fields. */
  private static final double WIDEST = 0.82;

  private CurveDrawing() {}

  /** One drawing; on a page of fixed height the plot takes what the words leave. */
  static Picture draw(CurveFigure figure, Setting setting) {
    Style style = setting.style(figure.curves().size());
    return new FieldPage(figure, figure.sentences(), style, new Content(figure)).draw();
  }

  private record Content(CurveFigure figure) implements FieldPage.Content {
    @Override
    public PagePart plot(Style style, double fieldHeight) {
      return new CurvePlot(figure, style, fieldHeight);
    }

    @Override
    public List<PagePart> key(Style style) {
      Style.Sheet sheet = style.sheet();
      List<PagePart> parts = new ArrayList<>();
      parts.add(new Gap(style.type().small() * 0.7));
      List<String> words = words(figure);
      if (!words.isEmpty()) {
        String told = String.join(" ", words);
        parts.add(Paragraph.of(told, sheet.margin(), sheet.room(), style.small(), 0));
      }
      return parts;
    }

    @Override
    public double widest() {
      return WIDEST;
    }

    @Override
    public double wished(Style style) {
      Style.Sheet sheet = style.sheet();
      double shape = sheet.stacked() || !sheet.trimmed() ? SHAPE_STACKED : SHAPE;
      return sheet.room() * shape;
    }

    @Override
    public double least(Style style) {
      return LEAST_FIELD;
    }
  }

  /** What marks other than the lines mean, as far as there are any. */
  private static List<String> words(CurveFigure figure) {
    List<String> words = new ArrayList<>();
    if (figure.curves().stream().anyMatch(curve -> !curve.lastSeen().isEmpty())) {
      words.add(say("figure.key-last-seen"));
    }
    int limits = figure.withLimits().size();
    if (limits > 0) {
      words.add(say(limits > 1 ? "figure.key-shaded-or-dotted" : "figure.key-shaded"));
    }
    return words;
  }
}
