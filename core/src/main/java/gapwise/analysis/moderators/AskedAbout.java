package gapwise.analysis.moderators;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.rows.RowValue;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** The one thing of a regression that a plan names, before it is held against the moderators. */
public sealed interface AskedAbout {
  /** Reads it from a checked plan. */
  static AskedAbout of(JsonNode about) {
    if (about.has("term")) {
      return new Term(about.get("term").asText());
    }
    return about.has("against")
        ? new Difference(values(about.get("at")), values(about.get("against")))
        : new At(values(about.get("at")));
  }

  private static Map<String, RowValue> values(JsonNode given) {
    Map<String, RowValue> values = new LinkedHashMap<>();
    given.fields().forEachRemaining(one -> values.put(one.getKey(), RowValue.of(one.getValue())));
    return Collections.unmodifiableMap(values);
  }

  /** A coefficient, by its term. */
  record Term(String term) implements AskedAbout {}

  /**
   * The mean at values of the moderators.
   *
   * @param values by column; those left out are held at their mean, or at the reference level
   */
  record At(Map<String, RowValue> values) implements AskedAbout {
    public At {
      values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }
  }

  /**
   * The mean at some values less the mean at others.
   *
   * @param values of the first, by column
   * @param others of the second
   */
  record Difference(Map<String, RowValue> values, Map<String, RowValue> others)
      implements AskedAbout {
    public Difference {
      values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
      others = Collections.unmodifiableMap(new LinkedHashMap<>(others));
    }
  }
}
