package gapwise.decision.choice;

import gapwise.decision.cost.CourseDraws;
import gapwise.decision.cost.MethodCourse;
import gapwise.decision.option.Aspect;
import gapwise.decision.option.Column;
import gapwise.evidence.ArmFollowUp;
import gapwise.evidence.vocabulary.Method;
import gapwise.selection.SelectedRow;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Draws of a table as courses of patients: months in treatment last until full weight is borne.
 *
 * @param drawable the methods with the outcomes of {@link #NEEDED}, in its order
 * @param entered stages that somebody entered, by code of the method
 * @param seed of the draws
 */
record Courses(Drawable drawable, Map<String, Integer> entered, long seed) {
  /** What a course is made of: months, joined, infected, amputated, reoperated. */
  static final List<Aspect> NEEDED =
      List.of(
          Aspect.FULL_WEIGHT,
          Aspect.UNION,
          Aspect.INFECTION,
          Aspect.LATER_AMPUTATION,
          Aspect.UNPLANNED_OPERATION);

  private static final double HUNDRED = 100;

  /** No treatment is shorter, none longer, so that a tail of a posterior breaks nothing. */
  private static final double LEAST_MONTHS = 0.1;

  private static final double MOST_MONTHS = 600;

  /** One for each method that can be drawn. */
  List<MethodCourse> all() {
    return IntStream.range(0, drawable.methods().size()).mapToObj(this::course).toList();
  }

  private MethodCourse course(int place) {
    Method method = drawable.methods().get(place);
    double[] months =
        Arrays.stream(draws(place, 0))
            .map(one -> Math.max(LEAST_MONTHS, Math.min(MOST_MONTHS, one)))
            .toArray();
    return new MethodCourse(
        method.code(),
        method.shortLabel(),
        Aspect.isAmputation(method)
            ? MethodCourse.Kind.AMPUTATION
            : MethodCourse.Kind.RECONSTRUCTION,
        stages(method).planned(),
        seen(method),
        CourseDraws.of(months, share(place, 1), share(place, 2), share(place, 3), share(place, 4)));
  }

  /** In how many stages a method is done, and who says so. */
  Stages stages(Method method) {
    return Stages.of(method, drawable.columns(), entered);
  }

  private double[] share(int method, int column) {
    return Arrays.stream(draws(method, column))
        .map(one -> Math.max(0, Math.min(1, one / HUNDRED)))
        .toArray();
  }

  private double[] draws(int method, int column) {
    Range range = Range.usual(NEEDED.get(column)).orElseThrow();
    double[] draws = drawable.draws(method, column, range, seed, CostedTable.DRAWS);
    if (draws.length == CostedTable.DRAWS) {
      return draws;
    }
    double[] same = new double[CostedTable.DRAWS];
    Arrays.fill(same, draws[0]);
    return same;
  }

  /** The shortest mean follow-up of a group behind its shares; 0 where one does not tell. */
  private double seen(Method method) {
    double shortest = Double.POSITIVE_INFINITY;
    for (Column column : drawable.columns().subList(1, NEEDED.size())) {
      for (SelectedRow row : column.rows()) {
        if (row.arm().method().principal().equals(method)) {
          OptionalDouble months =
              ArmFollowUp.of(row.study(), row.arm())
                  .map(ArmFollowUp::centreMonths)
                  .orElse(OptionalDouble.empty());
          shortest = Math.min(shortest, months.orElse(0));
        }
      }
    }
    return Double.isFinite(shortest) ? shortest : 0;
  }
}
