package gapwise.figure.plane;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Legend;
import gapwise.figure.drawing.MethodShape;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.drawing.Style;
import gapwise.figure.page.FieldPage;
import gapwise.figure.page.OneField;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Draws planes, one drawing each: the same value gives the same bytes on every machine. */
final class PlaneDrawing {
  private PlaneDrawing() {}

  static Picture draw(Plane plane, Setting setting) {
    return new FieldPage(plane, plane.sentences(), setting.style(0), new Content(plane)).draw();
  }

  private record Content(Plane plane) implements OneField {
    @Override
    public PagePart plot(Style style, double fieldHeight) {
      return new PlanePlot(plane, style, fieldHeight);
    }

    @Override
    public List<PagePart> key(Style style) {
      List<Legend.Entry> entries = new ArrayList<>();
      for (Cloud cloud : plane.clouds()) {
        entries.add(
            new Legend.Entry(
                (svg, x, middle) -> MethodShape.draw(svg, cloud.kind(), x + 14, middle, 7),
                words(cloud)));
      }
      entries.add(
          new Legend.Entry(
              (svg, x, middle) -> PlanePlot.halo(svg, x + 14, middle, 9),
              say("figure.key-plane-mean")));
      entries.add(
          new Legend.Entry(
              (svg, x, middle) -> svg.line(x + 3, middle, x + 25, middle, Ink.INK, 1.2),
              say("figure.key-plane-zero", Map.of("method", plane.against()))));
      return List.of(new Legend(style, entries));
    }

    private static String words(Cloud cloud) {
      return cloud.shown().size() == cloud.draws()
          ? cloud.kind().label()
          : say(
              "figure.key-plane-draws",
              Map.of(
                  "method",
                  cloud.kind().label(),
                  "shown",
                  Shown.grouped(Integer.toString(cloud.shown().size())),
                  "draws",
                  Shown.grouped(Integer.toString(cloud.draws()))));
    }
  }
}
