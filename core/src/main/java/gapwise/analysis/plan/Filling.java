package gapwise.analysis.plan;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Set;

/**
 * A plan in which a task fills in what was left out, as far as it has a meaning, so that the filled
 * plan asks the same.
 *
 * @param given as it came
 * @param full a copy, which is filled
 */
public record Filling(ObjectNode given, ObjectNode full) {
  /** The order in which docs/plan.md tells the fields; others follow as they were given. */
  private static final List<String> ORDER =
      List.of(
          "task",
          "title",
          "source",
          "columns",
          "summaries",
          "statistics",
          "raters",
          "categories",
          "weights",
          "multiplier",
          "as",
          "numbersAtRisk",
          "groups",
          "horizon",
          "survivalAt",
          "compare",
          "pooledCurve",
          "measure",
          "scale",
          "comparator",
          "intervention",
          "standardDeviation",
          "reportedAs",
          "limitsLevel",
          "correlation",
          "methods",
          "pooledCounts",
          "model",
          "pooling",
          "networkEffects",
          "likelihood",
          "armSpread",
          "quadraturePoints",
          "betweenStudyVariance",
          "interval",
          "predictionInterval",
          "predictionStandardError",
          "tauSquaredInterval",
          "prior",
          "probabilities",
          "priorSensitivity",
          "continuityCorrection",
          "uninformativeStudies",
          "smallSampleCorrection",
          "standardisedVariance",
          "backTransformN",
          "backTransformAlsoWith",
          "places",
          "subgroup",
          "subgroupVariance",
          "subgroupBlanks",
          "moderators",
          "about",
          "moderatorTest",
          "predictions",
          "permutationTest",
          "cluster",
          "robustVariance",
          "smallStudyEffects",
          "funnel",
          "influence",
          "cumulativeBy",
          "reference",
          "better",
          "rankingDraws",
          "seed",
          "centre",
          "vary",
          "threshold",
          "list",
          "power",
          "level");

  /** Fields that hold data and no settings. */
  static final Set<String> DATA = Set.of("source", "summaries", "numbersAtRisk");

  private static final double USUAL_LEVEL = 0.95;

  /** A plan of a task with every default filled in, its fields in one order. */
  public static ObjectNode of(Task task, ObjectNode given) {
    Filling plan = new Filling(given, copy(given));
    plan.full.put("task", task.word());
    task.fill(plan);
    plan.number("level", USUAL_LEVEL);
    return inOrder(plan.full);
  }

  /** A copy that may be changed but for the data in it, which it shares: they can be many rows. */
  public static ObjectNode copy(ObjectNode plan) {
    ObjectNode copy = JsonNodeFactory.instance.objectNode();
    plan.fields()
        .forEachRemaining(
            field ->
                copy.set(
                    field.getKey(),
                    DATA.contains(field.getKey())
                        ? field.getValue()
                        : field.getValue().deepCopy()));
    return copy;
  }

  private static ObjectNode inOrder(ObjectNode full) {
    ObjectNode ordered = JsonNodeFactory.instance.objectNode();
    ORDER.stream().filter(full::has).forEach(field -> ordered.set(field, full.get(field)));
    full.fields().forEachRemaining(field -> ordered.putIfAbsent(field.getKey(), field.getValue()));
    return ordered;
  }

  /** The text of a field that is filled already. */
  public String text(String field) {
    return full.path(field).asText();
  }

  /** Whether a field of the plan has this word. */
  public boolean is(String field, String word) {
    return text(field).equals(word);
  }

  /** Fills in a text. */
  public void text(String field, String usual) {
    full.put(field, given.path(field).asText(usual));
  }

  /** Fills in a yes or no, no if left out. */
  public void flag(String field) {
    full.put(field, given.path(field).asBoolean(false));
  }

  /** Fills in a number. */
  public void number(String field, double usual) {
    full.set(
        field, given.has(field) ? given.get(field) : JsonNodeFactory.instance.numberNode(usual));
  }

  /** Fills in a whole number. */
  public void whole(String field, long usual) {
    full.put(field, given.path(field).asLong(usual));
  }
}
