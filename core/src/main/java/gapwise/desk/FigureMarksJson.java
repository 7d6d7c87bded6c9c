package gapwise.desk;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.trace.Axis;
import gapwise.paper.trace.Scale;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Marks on a figure as JSON: {@code file}, {@code page}, {@code image}, an axis each in {@code x}
 * and {@code y} with its {@code scale} and two {@code marks} of left, top and value, and {@code
 * points} as left, top, left, top.
 */
final class FigureMarksJson {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();
  private static final double HUNDREDTHS = 100;

  private FigureMarksJson() {}

  static String write(FigureMarks marks) {
    ObjectNode json = MAPPER.createObjectNode();
    json.put("file", marks.source().file());
    json.put("page", marks.source().page());
    json.put("image", marks.source().image());
    write(json.putObject("x"), marks.x());
    write(json.putObject("y"), marks.y());
    ArrayNode points = json.putArray("points");
    marks.points().forEach(point -> place(points, point));
    return json.toString();
  }

  private static void write(ObjectNode json, Axis axis) {
    json.put("scale", axis.scale().name().toLowerCase(Locale.ROOT));
    ArrayNode marks = json.putArray("marks");
    for (Axis.Mark mark : List.of(axis.first(), axis.second())) {
      ArrayNode one = marks.addArray();
      place(one, mark.at());
      one.add(mark.value());
    }
  }

  private static void place(ArrayNode json, Point point) {
    json.add(Math.rint(point.x() * HUNDREDTHS) / HUNDREDTHS);
    json.add(Math.rint(point.y() * HUNDREDTHS) / HUNDREDTHS);
  }

  static Optional<FigureMarks> read(String text) {
    try {
      JsonNode json = MAPPER.readTree(text);
      List<Point> points = new ArrayList<>();
      JsonNode flat = json.path("points");
      for (int at = 0; at + 1 < flat.size() && points.size() <= FigureMarks.MOST_POINTS; at += 2) {
        points.add(new Point(number(flat.path(at)), number(flat.path(at + 1))));
      }
      return Optional.of(
          new FigureMarks(
              new FigureMarks.Source(
                  json.path("image").asBoolean(),
                  json.path("file").asText(),
                  json.path("page").asInt()),
              axis(json.path("x")),
              axis(json.path("y")),
              points));
    } catch (JsonProcessingException | IllegalArgumentException none) {
      return Optional.empty();
    }
  }

  private static Axis axis(JsonNode json) {
    return new Axis(
        Scale.valueOf(json.path("scale").asText().toUpperCase(Locale.ROOT)),
        mark(json.path("marks").path(0)),
        mark(json.path("marks").path(1)));
  }

  private static Axis.Mark mark(JsonNode json) {
    return new Axis.Mark(
        new Point(number(json.path(0)), number(json.path(1))), number(json.path(2)));
  }

  private static double number(JsonNode json) {
    if (!json.isNumber() || !Double.isFinite(json.asDouble())) {
      throw new IllegalArgumentException("no number: " + json);
    }
    return json.asDouble();
  }
}
