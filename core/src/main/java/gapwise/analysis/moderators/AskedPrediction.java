package gapwise.analysis.moderators;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.rows.RowValue;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** One entry of a plan's predictions, before it is held against the moderators. */
sealed interface AskedPrediction {
  /** How many points are predicted. */
  long points();

  /** Reads one from a checked plan. */
  static AskedPrediction of(JsonNode one) {
    return one.has("column") && one.has("from") && one.has("to")
        ? new Along(
            one.get("column").asText(),
            one.get("from").asDouble(),
            one.get("to").asDouble(),
            one.get("points").asInt(),
            values(one.path("at")))
        : new At(values(one));
  }

  private static Map<String, RowValue> values(JsonNode given) {
    Map<String, RowValue> values = new LinkedHashMap<>();
    given.fields().forEachRemaining(one -> values.put(one.getKey(), RowValue.of(one.getValue())));
    return values;
  }

  /**
   * At values of the moderators.
   *
   * @param values by column; those left out are held at their mean, or at the reference level
   */
  record At(Map<String, RowValue> values) implements AskedPrediction {
    public At {
      values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }

    @Override
    public long points() {
      return 1;
    }
  }

  /**
   * Along one column.
   *
   * @param points equally apart, both ends among them, at least two
   * @param at values of the other columns
   */
  record Along(String column, double from, double to, long points, Map<String, RowValue> at)
      implements AskedPrediction {
    public Along {
      at = Collections.unmodifiableMap(new LinkedHashMap<>(at));
    }
  }
}
