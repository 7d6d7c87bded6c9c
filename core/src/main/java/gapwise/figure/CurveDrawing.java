package gapwise.figure;

import java.util.ArrayList;
import java.util.List;

/** Draws curves of time to an event: the same value gives the same bytes on every machine. */
public final class CurveDrawing {
  private static final double LEAST_PLOT = 120;

  private CurveDrawing() {}

  /** One drawing; on a page of fixed height the plot takes what the words leave. */
  public static Picture draw(CurveFigure figure, Medium medium) {
    Style style = medium.style(figure.curves().size());
    Style.Sheet sheet = style.sheet();
    double usual = sheet.stacked() ? sheet.room() * 0.85 : sheet.room() * 0.42;
    double words = height(parts(figure, style, 0)) + 2 * sheet.margin();
    double plot =
        sheet.pageHeight().isPresent()
            ? Math.max(LEAST_PLOT, Math.min(usual, sheet.pageHeight().getAsDouble() - words))
            : usual;
    List<Part> parts = parts(figure, style, plot);
    double height = Math.max(sheet.pageHeight().orElse(0), height(parts) + 2 * sheet.margin());
    Svg svg = new Svg().begin(sheet.width(), height, sheet.unit(), "img", figure.title());
    svg.element("desc", figure.description());
    svg.rect(0, 0, sheet.width(), height, Ink.GROUND);
    double top = sheet.margin();
    for (Part part : parts) {
      part.draw(svg, top);
      top += part.height();
    }
    return new Picture(svg.end(), sheet.width(), height);
  }

  private static double height(List<Part> parts) {
    return parts.stream().mapToDouble(Part::height).sum();
  }

  private static List<Part> parts(CurveFigure figure, Style style, double plot) {
    Style.Type type = style.type();
    double x = style.sheet().margin();
    double room = style.sheet().room();
    List<Part> parts = new ArrayList<>();
    parts.add(Paragraph.of(figure.title(), x, room, Lettering.bold(type.title()), 0));
    if (figure.provenance().demonstration()) {
      Lettering invented = Lettering.bold(type.sentence()).in(Ink.ACCENT);
      parts.add(Paragraph.of(Provenance.INVENTED, x, room, invented, type.sentence() * 0.35));
    }
    Lettering sentence = Lettering.plain(type.sentence()).in(Ink.SOFT);
    figure
        .sentences()
        .forEach(each -> parts.add(Paragraph.of(each, x, room, sentence, type.sentence() * 0.35)));
    parts.add(new Gap(type.small()));
    parts.add(new CurvePlot(figure, style, plot));
    parts.add(new Gap(type.small() * 0.7));
    Lettering caution = Lettering.plain(type.small() + 0.5);
    figure.cautions().forEach(each -> parts.add(Paragraph.caution(each, x, room, caution)));
    String key = key(figure);
    if (!key.isEmpty()) {
      parts.add(Paragraph.of(key, x, room, style.small(), type.small() * 0.6));
    }
    String foot = String.join(" \u00b7 ", figure.provenance().phrases());
    parts.add(Paragraph.of(foot, x, room, style.small(), type.small() * 0.4));
    return parts;
  }

  /** What marks other than the lines mean, as far as there are any. */
  private static String key(CurveFigure figure) {
    boolean lost = figure.curves().stream().anyMatch(curve -> !curve.lastSeen().isEmpty());
    boolean limits =
        figure.curves().stream()
            .flatMap(curve -> curve.steps().stream())
            .anyMatch(step -> step.limits().isPresent());
    return ((lost ? "Small strokes: patients last seen without the event. " : "")
            + (limits ? "Shaded: within the limits of the curve." : ""))
        .strip();
  }
}
