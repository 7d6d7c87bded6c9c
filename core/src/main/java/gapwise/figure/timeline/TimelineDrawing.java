package gapwise.figure.timeline;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Paragraph;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.drawing.Stack;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.Ticks;
import gapwise.figure.file.FigureMetadata;
import gapwise.figure.page.PageNumber;
import gapwise.figure.page.Strip;
import java.util.ArrayList;
import java.util.List;

/** Draws timelines: the same value gives the same bytes on every machine. */
public final class TimelineDrawing {
  /** Step by which a slide that one track overfills grows until it stands on it. */
  private static final double STEP = 1.04;

  /** How much larger letters are tried on a page that few tracks would leave empty. */
  private static final double[] LARGER = {1.2, 1.1};

  private TimelineDrawing() {}

  /**
   * Draws the figure on as many pages as its tracks take, each with its words, key, cautions and
   * provenance; a medium without pages gives one drawing. A track is never torn.
   */
  public static List<Picture> draw(Timeline timeline, Setting setting) {
    Style style = fitting(timeline, setting);
    List<List<PagePart>> pages = pages(timeline, style);
    List<Picture> pictures = new ArrayList<>();
    for (int i = 0; i < pages.size(); i++) {
      pictures.add(picture(timeline, style, pages.get(i), new PageNumber(i + 1, pages.size())));
    }
    return List.copyOf(pictures);
  }

  /** How many drawings {@link #draw} gives. */
  static int sheets(Timeline timeline, Setting setting) {
    return pages(timeline, fitting(timeline, setting)).size();
  }

  private static Style fitting(Timeline timeline, Setting setting) {
    Style style = setting.style(0);
    if (style.sheet().fixedHeight().isPresent()) {
      for (double factor : LARGER) {
        Style larger = style.largerBy(factor);
        if (!overfilled(timeline, larger) && pages(timeline, larger).size() == 1) {
          return larger;
        }
      }
    }
    while (style.sheet().landscape() && overfilled(timeline, style)) {
      style = style.onSheetLargerBy(STEP);
    }
    return style;
  }

  private static boolean overfilled(Timeline timeline, Style style) {
    double tallest = tracks(timeline, style).stream().mapToDouble(PagePart::height).max().orElse(0);
    return tallest > room(timeline, style);
  }

  /** Room for tracks on one page. */
  private static double room(Timeline timeline, Style style) {
    double words =
        Stack.height(head(timeline, style))
            + Stack.height(foot(timeline, style, new PageNumber(1, 2)));
    return style.sheet().pageHeight().orElse(Double.POSITIVE_INFINITY)
        - words
        - style.sheet().margin();
  }

  /** Tracks in order, as many on a page as stand on it, one at least. */
  private static List<List<PagePart>> pages(Timeline timeline, Style style) {
    double room = room(timeline, style);
    List<List<PagePart>> pages = new ArrayList<>();
    double left = 0;
    for (PagePart track : tracks(timeline, style)) {
      if (pages.isEmpty() || track.height() > left) {
        pages.add(new ArrayList<>());
        left = room;
      }
      pages.get(pages.size() - 1).add(track);
      left -= track.height();
    }
    return pages;
  }

  private static Picture picture(
      Timeline timeline, Style style, List<PagePart> tracks, PageNumber page) {
    Style.Sheet sheet = style.sheet();
    List<PagePart> parts = new ArrayList<>(head(timeline, style));
    parts.addAll(tracks);
    parts.addAll(foot(timeline, style, page));
    double height = Math.max(Stack.height(parts) + sheet.margin(), sheet.fixedHeight().orElse(0));
    String title = page.title(timeline.title());
    Svg svg = new Svg().begin(sheet.width(), height, sheet.unit(), "img", title);
    svg.element("desc", timeline.description());
    if (!sheet.withinPage()) {
      FigureMetadata.write(svg, timeline);
    }
    svg.rect(0, 0, sheet.width(), height, Ink.GROUND);
    Stack.draw(svg, parts, 0);
    return new Picture(svg.end(), sheet.width(), height);
  }

  private static List<PagePart> head(Timeline timeline, Style style) {
    if (style.sheet().withinPage()) {
      return List.of();
    }
    List<PagePart> parts = new ArrayList<>(Strip.of(timeline.provenance(), style));
    double small = style.type().small();
    parts.add(line(style, timeline.title(), Lettering.bold(style.type().title()), small));
    Lettering sentence = Lettering.plain(style.type().sentence()).in(Ink.SOFT);
    timeline.sentences().forEach(words -> parts.add(line(style, words, sentence, small * 0.4)));
    return parts;
  }

  /** All tracks of all pages have one scale. */
  private static List<PagePart> tracks(Timeline timeline, Style style) {
    Ticks ticks = Ticks.linear(0, timeline.longestMonths(), mostTicks(style));
    return timeline.tracks().stream()
        .<PagePart>map(track -> new TimelineTrack(track, style, ticks))
        .toList();
  }

  private static List<PagePart> foot(Timeline timeline, Style style, PageNumber page) {
    List<PagePart> parts = new ArrayList<>();
    parts.add(TimelineKey.of(timeline, style));
    if (style.sheet().withinPage()) {
      return parts;
    }
    timeline
        .cautions()
        .forEach(
            words ->
                parts.add(
                    Paragraph.caution(
                        words, style.sheet().margin(), style.sheet().room(), style.caution())));
    List<String> source = new ArrayList<>(timeline.source());
    page.words().ifPresent(source::add);
    String provenance = String.join(" \u00b7 ", source);
    parts.add(line(style, provenance, style.source(), style.type().foot() * 0.6));
    return parts;
  }

  private static int mostTicks(Style style) {
    return style.sheet().stacked() ? 7 : 13;
  }

  private static PagePart line(Style style, String text, Lettering lettering, double before) {
    Style.Sheet sheet = style.sheet();
    return Paragraph.of(text, sheet.margin(), sheet.room(), lettering, before);
  }
}
