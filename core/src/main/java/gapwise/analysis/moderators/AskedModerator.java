package gapwise.analysis.moderators;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/** One entry of a plan's moderators, before it is held against the data. */
sealed interface AskedModerator {
  /** The columns it reads. */
  List<String> columns();

  /** Reads one from a checked plan. */
  static AskedModerator of(JsonNode one) {
    if (one.isTextual()) {
      return new Plain(one.asText());
    }
    if (one.has("product")) {
      return new Product(one.get("product").get(0).asText(), one.get("product").get(1).asText());
    }
    String column = one.get("column").asText();
    if (one.has("reference")) {
      return new Category(column, one.get("reference").asText());
    }
    if (one.has("spline")) {
      return Spline.of(column, one.get("spline"));
    }
    return one.has("centre")
        ? new Centred(column, one.get("centre").asDouble())
        : new Plain(column);
  }

  /** A column of numbers, or of categories. */
  record Plain(String column) implements AskedModerator {
    @Override
    public List<String> columns() {
      return List.of(column);
    }
  }

  /** A column of numbers, of which a centre is taken off. */
  record Centred(String column, double centre) implements AskedModerator {
    @Override
    public List<String> columns() {
      return List.of(column);
    }
  }

  /** A column of categories with the one that others are set against. */
  record Category(String column, String reference) implements AskedModerator {
    @Override
    public List<String> columns() {
      return List.of(column);
    }
  }

  /**
   * A column of numbers as a curve.
   *
   * @param knots empty for usual ones
   * @param count of usual knots
   */
  record Spline(String column, List<Double> knots, int count) implements AskedModerator {
    private static final int USUAL_COUNT = 3;

    public Spline {
      knots = List.copyOf(knots);
    }

    private static Spline of(String column, JsonNode asked) {
      List<Double> knots = new ArrayList<>();
      asked.path("knots").forEach(knot -> knots.add(knot.asDouble()));
      return new Spline(column, knots, asked.path("count").asInt(USUAL_COUNT));
    }

    @Override
    public List<String> columns() {
      return List.of(column);
    }
  }

  /** Each term of one column times each of another. */
  record Product(String first, String second) implements AskedModerator {
    @Override
    public List<String> columns() {
      return List.of(first, second);
    }
  }
}
