package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.QuestionPlan;
import gapwise.selection.Question;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The plan that carries an outcome along the length of missing bone. */
final class LengthPlan {
  /** The column of the evidence base's rows with the mean or median length in centimetres. */
  static final String COLUMN = "defectLengthCentimetres";

  /** Fewer series give no line: three points lie near some line by chance (our choice). */
  static final int FEWEST_FOR_LINE = 4;

  /** Fewer series give no curve with three knots (our choice). */
  static final int FEWEST_FOR_CURVE = 8;

  /** How far the curve is carried past the shortest and longest mean, in centimetres. */
  private static final double BEYOND = 2;

  private static final int POINTS_INSIDE = 25;
  private static final int POINTS_BEYOND = 5;

  private LengthPlan() {}

  /** Whether a shape can be asked of these rows. */
  static boolean allows(Selection selection, LengthShape shape) {
    List<Double> lengths = lengths(selection);
    int fewest = shape == LengthShape.CURVE ? FEWEST_FOR_CURVE : FEWEST_FOR_LINE;
    return lengths.size() >= fewest && lengths.stream().distinct().count() >= fewest - 1;
  }

  /** The plan; empty where the outcome is not pooled or no row was selected. */
  static Optional<ObjectNode> of(Selection selection, Optional<LengthShape> shape) {
    if (selection.rows().isEmpty()) {
      return Optional.empty();
    }
    Optional<ObjectNode> plan = QuestionPlan.of(selection, title(selection.question()), false);
    if (plan.isPresent() && shape.isPresent()) {
      along(plan.get(), lengths(selection), shape.get());
    }
    return plan;
  }

  /** What plan and figure are called. */
  static String title(Question question) {
    return say("answer.by-length", Map.of("question", QuestionWords.of(question)));
  }

  private static void along(ObjectNode plan, List<Double> lengths, LengthShape shape) {
    QuestionPlan.forModerators(plan);
    ArrayNode moderators = plan.putArray("moderators");
    if (shape == LengthShape.CURVE) {
      moderators.addObject().put("column", COLUMN).putObject("spline").put("count", 3);
    } else {
      moderators.add(COLUMN);
    }
    double shortest = lengths.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
    double longest = lengths.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    ArrayNode predictions = plan.putArray("predictions");
    if (shortest > 0) {
      stretch(predictions, clean(Math.max(0, shortest - BEYOND)), shortest, POINTS_BEYOND);
    }
    stretch(predictions, shortest, longest, POINTS_INSIDE);
    stretch(predictions, longest, clean(longest + BEYOND), POINTS_BEYOND);
  }

  /** Without the last digits that binary arithmetic leaves, so that a plan reads 3.9. */
  private static double clean(double centimetres) {
    return BigDecimal.valueOf(centimetres).round(new MathContext(10)).doubleValue();
  }

  private static void stretch(ArrayNode predictions, double from, double to, int points) {
    predictions
        .addObject()
        .put("column", COLUMN)
        .put("from", from)
        .put("to", to)
        .put("points", points);
  }

  static OptionalDouble length(SelectedRow row) {
    return row.defect()
        .map(defect -> defect.length().centreCentimetres())
        .orElse(OptionalDouble.empty());
  }

  private static List<Double> lengths(Selection selection) {
    return selection.rows().stream()
        .map(LengthPlan::length)
        .filter(OptionalDouble::isPresent)
        .map(OptionalDouble::getAsDouble)
        .toList();
  }
}
