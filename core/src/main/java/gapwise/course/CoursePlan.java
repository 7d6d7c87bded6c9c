package gapwise.course;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.unit.Unit;
import java.util.List;
import java.util.TreeSet;

/**
 * The plan that rebuilds the curves of one method and pools them: times in months, shares without
 * the event from 0 to 1, told at quarters of years, whatever the data, so that no time is chosen
 * because it looks well.
 */
final class CoursePlan {
  /** Months at which shares are told. */
  static final List<Integer> MONTHS = List.of(6, 9, 12);

  /** Months between times of the pooled curve. */
  private static final int STEP = 3;

  /**
   * The latest time told; what comes after five years is not the treatment any more. Our choice.
   */
  private static final int LATEST = 60;

  private final ObjectNode plan = JsonNodeFactory.instance.objectNode();
  private final ArrayNode points;
  private final ArrayNode atRisk;
  private final ObjectNode groups;

  private CoursePlan(String title) {
    plan.put("task", "reconstruct-curve");
    plan.put("title", title);
    points = plan.putObject("source").putArray("rows");
    columns(plan, "group", "time", "survival");
    groups = plan.putObject("groups");
    ObjectNode numbers = plan.putObject("numbersAtRisk");
    atRisk = numbers.putArray("rows");
    columns(numbers, "group", "time", "atRisk");
  }

  private static void columns(ObjectNode node, String... roles) {
    ObjectNode columns = node.putObject("columns");
    for (String role : roles) {
      columns.put(role, role);
    }
  }

  /** The plan of some curves, at least one. */
  static ObjectNode of(String title, List<CurveTaken> curves, int horizon) {
    CoursePlan work = new CoursePlan(title);
    curves.forEach(work::add);
    if (work.atRisk.isEmpty()) {
      work.plan.remove("numbersAtRisk");
    }
    work.plan.put("horizon", horizon);
    ArrayNode at = work.plan.putArray("survivalAt");
    MONTHS.forEach(at::add);
    if (curves.size() > 1) {
      ArrayNode times = work.plan.putObject("pooledCurve").putArray("times");
      times(curves, horizon).forEach(times::add);
    }
    return work.plan;
  }

  private void add(CurveTaken taken) {
    PublishedCurve curve = taken.curve();
    curve.points().forEach(point -> add(taken, point.time(), point));
    PublishedCurve.Point last = curve.points().get(curve.points().size() - 1);
    if (curve.lastTime() > last.time()) {
      // Somebody was followed beyond the last fall, where the figure runs level.
      add(taken, curve.lastTime(), last);
    }
    ObjectNode group = groups.putObject(taken.label()).put("patients", taken.patients());
    curve.totals().events().ifPresent(events -> group.put("events", events));
    curve.totals().median().ifPresent(median -> group.put("median", months(curve, median)));
    for (PublishedCurve.AtRisk mark : curve.atRisk()) {
      if (mark.time() > 0) {
        atRisk
            .addObject()
            .put("group", taken.label())
            .put("time", months(curve, mark.time()))
            .put("atRisk", mark.patients());
      }
    }
  }

  private void add(CurveTaken taken, double time, PublishedCurve.Point point) {
    points
        .addObject()
        .put("group", taken.label())
        .put("time", months(taken.curve(), time))
        .put("survival", share(taken.curve(), point));
  }

  /** To a ten-thousandth, as no figure is read closer and a plan stays readable. */
  private static double share(PublishedCurve curve, PublishedCurve.Point point) {
    return Math.rint(100 * curve.shows().without(point.share())) / 10_000;
  }

  private static double months(PublishedCurve curve, double time) {
    return Math.rint(10_000 * curve.unit().to(Unit.MONTHS, time)) / 10_000;
  }

  private static TreeSet<Integer> times(List<CurveTaken> curves, int horizon) {
    double[] ends =
        curves.stream()
            .mapToDouble(taken -> months(taken.curve(), taken.curve().lastTime()))
            .sorted()
            .toArray();
    // Beyond this only one curve speaks, and nothing is pooled.
    double end = Math.min(LATEST, ends[ends.length - 2]);
    TreeSet<Integer> times = new TreeSet<>(MONTHS);
    times.add(horizon);
    for (int month = STEP; month <= end; month += STEP) {
      times.add(month);
    }
    return times;
  }
}
