package gapwise.figure.timeline;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Legend;
import gapwise.figure.drawing.Legend.Entry;
import gapwise.figure.drawing.Marks;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** How to read a timeline, and how its phases look: darker the more weight the leg bears. */
final class TimelineKey {
  private TimelineKey() {}

  static Legend of(Timeline timeline, Style style) {
    List<Entry> entries = new ArrayList<>();
    Map<Integer, Timeline.Stretch> phases = new LinkedHashMap<>();
    timeline.tracks().stream()
        .flatMap(track -> track.course().stream())
        .sorted(Comparator.comparingInt(Timeline.Stretch::number))
        .forEach(one -> phases.putIfAbsent(one.number(), one));
    for (Timeline.Stretch one : phases.values()) {
      entries.add(
          new Entry(
              (svg, x, middle) -> phase(svg, one.load(), x, middle - 6, 26, 12), one.title()));
    }
    entries.add(
        new Entry(
            (svg, x, middle) ->
                svg.dashed(x + 13, middle - 8, x + 13, middle + 8, Ink.INK, 1.6, "3 2"),
            say("figure.key-case")));
    boolean pooled = timeline.tracks().stream().anyMatch(track -> !track.pooled().isEmpty());
    if (pooled) {
      entries.add(
          new Entry(
              (svg, x, middle) ->
                  svg.path("M" + Svg.at(x, middle) + "l13 -5l13 5l-13 5Z", Ink.ACCENT),
              say("figure.key-average")));
    }
    if (timeline.tracks().stream()
        .flatMap(track -> track.pooled().stream())
        .anyMatch(one -> one.prediction().isPresent())) {
      entries.add(
          new Entry(
              (svg, x, middle) -> Marks.hatched(svg, x, middle - 4, 26, 8),
              say("figure.key-new-series")));
    }
    return new Legend(style, entries);
  }

  /** Whether words on such a phase must be light. */
  static boolean isDark(Timeline.Load load) {
    return load == Timeline.Load.FREE || load == Timeline.Load.IN_SUPPORT;
  }

  static String fill(Timeline.Load load) {
    return switch (load) {
      case FRAME, PARTIAL -> Ink.BONE;
      case NONE, WAITING -> Ink.GROUND;
      case IN_SUPPORT -> Ink.SOFT;
      case FREE -> Ink.INK;
    };
  }

  /** One phase as a piece of the bar; a frame has pins. */
  static void phase(
      Svg svg, Timeline.Load load, double x, double top, double width, double height) {
    String path =
        "M" + Svg.at(x, top) + "h" + Svg.n(width) + "v" + Svg.n(height) + "h" + Svg.n(-width) + "Z";
    svg.shape(path, fill(load), Ink.INK, 1.1, load == Timeline.Load.WAITING ? "3 2" : "");
    if (load == Timeline.Load.FRAME) {
      StringBuilder pins = new StringBuilder();
      for (double pin = x + 4; pin < x + width - 1; pin += 8) {
        pins.append('M').append(Svg.at(pin, top + height)).append('v').append(Svg.n(4));
      }
      svg.stroke(pins.toString(), Ink.INK, 1.1);
    }
  }
}
