package gapwise.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/**
 * A figure that is one field with axes between its words: title and sentences above, key, cautions
 * and provenance below.
 *
 * @param plot the field with its axes, for a height of the field
 */
record FieldPage(
    String title,
    String description,
    List<String> sentences,
    List<String> cautions,
    Provenance provenance,
    Style style,
    Part key,
    DoubleFunction<Part> plot) {
  /** Height of the field over its width: as tall as a screen leaves room for. */
  private static final double SHAPE = 0.52;

  /** Phones are narrow, so the field is nearly square there. */
  private static final double SHAPE_ON_PHONE = 0.9;

  /** However long the words, the field keeps this share of the width. */
  private static final double LEAST_SHAPE = 0.25;

  /** Draws it. A page of fixed height that the words overfill grows instead. */
  Picture draw() {
    Style.Sheet sheet = style.sheet();
    List<Part> strip = provenance.demonstration() ? List.of(Strip.invented(style)) : List.of();
    List<Part> head = head();
    List<Part> tail = new ArrayList<>(List.of(key));
    tail.addAll(foot());
    double words =
        PageOfParts.sum(strip)
            + PageOfParts.sum(head)
            + PageOfParts.sum(tail)
            + PageOfParts.margins(sheet.margin());
    double axes = plot.apply(0).height();
    double wished = sheet.room() * (sheet.stacked() ? SHAPE_ON_PHONE : SHAPE);
    double free = sheet.pageHeight().orElse(Double.POSITIVE_INFINITY) - words - axes;
    double field = Math.max(sheet.room() * LEAST_SHAPE, Math.min(wished, free));
    double height = Math.max(sheet.pageHeight().orElse(0), words + axes + field);
    Svg svg = new Svg().begin(sheet.width(), height, sheet.unit(), "img", title);
    svg.element("desc", description);
    String caption = FigureMetadata.caption(description, provenance);
    FigureMetadata.write(svg, title, caption, List.of(), provenance);
    svg.rect(0, 0, sheet.width(), height, Ink.GROUND);
    double y = stack(svg, strip, 0);
    y = stack(svg, head, y + sheet.margin() * 0.7);
    y = stack(svg, List.of(plot.apply(field)), y);
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

  private List<Part> head() {
    List<Part> head = new ArrayList<>();
    head.add(line(title, Lettering.bold(style.type().title()), 0));
    Lettering sentence = Lettering.plain(style.type().sentence()).in(Ink.SOFT);
    for (String each : sentences) {
      head.add(line(each, sentence, style.type().sentence() * 0.35));
    }
    return head;
  }

  private List<Part> foot() {
    List<Part> foot = new ArrayList<>();
    Lettering caution = Lettering.plain(style.type().small() + 0.5);
    foot.add(new Gap(style.type().small() * 0.7));
    for (String each : cautions) {
      foot.add(Paragraph.caution(each, style.sheet().margin(), style.sheet().room(), caution));
    }
    String phrases = String.join(" \u00b7 ", provenance.phrases());
    foot.add(line(phrases, style.small(), style.type().small() * 0.6));
    return foot;
  }

  private Part line(String text, Lettering lettering, double before) {
    return Paragraph.of(text, style.sheet().margin(), style.sheet().room(), lettering, before);
  }
}
