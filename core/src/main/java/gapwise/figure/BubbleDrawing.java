package gapwise.figure;

import java.util.ArrayList;
import java.util.List;

/** Draws bubble plots, one drawing each: the same value gives the same bytes on every machine. */
public final class BubbleDrawing {
  /** Height of the field over its width: as tall as a screen leaves room for. */
  private static final double SHAPE = 0.52;

  /** Phones are narrow, so the field is nearly square there. */
  private static final double SHAPE_ON_PHONE = 0.9;

  /** However long the words, the field keeps this share of the width. */
  private static final double LEAST_SHAPE = 0.25;

  private BubbleDrawing() {}

  /** Draws the figure. A page of fixed height that the words overfill grows instead. */
  public static Picture draw(Bubble bubble, Medium medium) {
    Style style = medium.style(0);
    Style.Sheet sheet = style.sheet();
    List<Part> strip =
        bubble.provenance().demonstration() ? List.of(Strip.invented(style)) : List.of();
    List<Part> head = head(bubble, style);
    List<Part> tail = new ArrayList<>();
    tail.add(BubbleKey.of(bubble, style));
    tail.addAll(foot(bubble, style));
    double words =
        PageOfParts.sum(strip)
            + PageOfParts.sum(head)
            + PageOfParts.sum(tail)
            + PageOfParts.margins(sheet.margin());
    double axes = new BubblePlot(bubble, style, 0).height();
    double wished = sheet.room() * (sheet.stacked() ? SHAPE_ON_PHONE : SHAPE);
    double free = sheet.pageHeight().orElse(Double.POSITIVE_INFINITY) - words - axes;
    double field = Math.max(sheet.room() * LEAST_SHAPE, Math.min(wished, free));
    double height = Math.max(sheet.pageHeight().orElse(0), words + axes + field);
    Svg svg = new Svg().begin(sheet.width(), height, sheet.unit(), "img", bubble.title());
    svg.element("desc", bubble.description());
    String caption = FigureMetadata.caption(bubble.description(), bubble.provenance());
    FigureMetadata.write(svg, bubble.title(), caption, List.of(), bubble.provenance());
    svg.rect(0, 0, sheet.width(), height, Ink.GROUND);
    double y = stack(svg, strip, 0);
    y = stack(svg, head, y + sheet.margin() * 0.7);
    y = stack(svg, List.of(new BubblePlot(bubble, style, field)), y);
    stack(svg, tail, y);
    return new Picture(svg.end(), sheet.width(), height);
  }

  private static double stack(Svg svg, List<Part> parts, double top) {
    double y = top;
    for (Part part : parts) {
      part.draw(svg, y);
      y += part.height();
    }
    return y;
  }

  private static List<Part> head(Bubble bubble, Style style) {
    List<Part> head = new ArrayList<>();
    head.add(line(style, bubble.title(), Lettering.bold(style.type().title()), 0));
    Lettering sentence = Lettering.plain(style.type().sentence()).in(Ink.SOFT);
    for (String each : bubble.sentences()) {
      head.add(line(style, each, sentence, style.type().sentence() * 0.35));
    }
    return List.copyOf(head);
  }

  private static List<Part> foot(Bubble bubble, Style style) {
    List<Part> foot = new ArrayList<>();
    Lettering caution = Lettering.plain(style.type().small() + 0.5);
    foot.add(new Gap(style.type().small() * 0.7));
    for (String each : bubble.cautions()) {
      foot.add(Paragraph.caution(each, style.sheet().margin(), style.sheet().room(), caution));
    }
    String provenance = String.join(" \u00b7 ", bubble.provenance().phrases());
    foot.add(line(style, provenance, style.small(), style.type().small() * 0.6));
    return List.copyOf(foot);
  }

  private static Part line(Style style, String text, Lettering lettering, double before) {
    return Paragraph.of(text, style.sheet().margin(), style.sheet().room(), lettering, before);
  }
}
