package gapwise.figure;

import java.util.ArrayList;
import java.util.List;

/** Draws timelines, one drawing each: the same value gives the same bytes on every machine. */
public final class TimelineDrawing {
  private TimelineDrawing() {}

  /** Draws the figure, as tall as it needs; a slide that it overfills grows. */
  public static Picture draw(Timeline timeline, Medium medium) {
    Style style = medium.style(0);
    Style.Sheet sheet = style.sheet();
    List<Part> parts = parts(timeline, style);
    double needed = parts.stream().mapToDouble(Part::height).sum() + sheet.margin();
    double height = Math.max(needed, sheet.pageHeight().orElse(0));
    Svg svg = new Svg().begin(sheet.width(), height, sheet.unit(), "img", timeline.title());
    svg.element("desc", timeline.description());
    FigureMetadata.write(svg, timeline);
    svg.rect(0, 0, sheet.width(), height, Ink.GROUND);
    double top = 0;
    for (Part part : parts) {
      part.draw(svg, top);
      top += part.height();
    }
    return new Picture(svg.end(), sheet.width(), height);
  }

  private static List<Part> parts(Timeline timeline, Style style) {
    List<Part> parts = new ArrayList<>();
    if (timeline.provenance().demonstration()) {
      parts.add(Strip.invented(style));
    }
    double small = style.type().small();
    parts.add(line(style, timeline.title(), Lettering.bold(style.type().title()), small));
    Lettering sentence = Lettering.plain(style.type().sentence()).in(Ink.SOFT);
    timeline.sentences().forEach(words -> parts.add(line(style, words, sentence, small * 0.4)));
    Ticks ticks = Ticks.linear(0, timeline.longestMonths(), mostTicks(style));
    for (Timeline.Track track : timeline.tracks()) {
      parts.add(new TimelineTrack(track, style, ticks));
    }
    parts.add(TimelineKey.of(timeline, style));
    Lettering caution = Lettering.plain(small + 0.5);
    timeline
        .cautions()
        .forEach(
            words ->
                parts.add(
                    Paragraph.caution(
                        words, style.sheet().margin(), style.sheet().room(), caution)));
    String provenance = String.join(" \u00b7 ", timeline.source());
    parts.add(line(style, provenance, style.small(), small * 0.6));
    return parts;
  }

  private static int mostTicks(Style style) {
    return style.sheet().stacked() ? 7 : 13;
  }

  private static Part line(Style style, String text, Lettering lettering, double before) {
    Style.Sheet sheet = style.sheet();
    return Paragraph.of(text, sheet.margin(), sheet.room(), lettering, before);
  }
}
