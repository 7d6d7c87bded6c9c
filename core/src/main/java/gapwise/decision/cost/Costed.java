package gapwise.decision.cost;

import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.util.List;

/**
 * Costs and effects of methods.
 *
 * @param entries with which they were reckoned
 * @param effect what effects are counted in
 * @param methods each by itself, in the order given
 * @param outcomes all draws, methods by their codes in the same order
 */
public record Costed(
    CostEntries entries,
    CostModel.Effect effect,
    List<MethodCost> methods,
    CostsAndEffects outcomes)
    implements CostModel {
  public Costed {
    methods = List.copyOf(methods);
  }

  /** What must be known before these numbers are read. */
  public List<Problem> cautions() {
    Problems found = new Problems();
    boolean amputation = false;
    for (MethodCost each : methods) {
      MethodCourse method = each.method();
      amputation |= method.kind() == MethodCourse.Kind.AMPUTATION;
      double months = method.draws().means().months();
      if (method.monthsSeen() < months) {
        found.add(
            method.code(),
            "seen-shorter-than-treatment",
            method.label()
                + ": its shares were read earlier than treatment ends on average, or it is not told"
                + " when; more may heal, become infected or lose the limb later");
      }
      share(
          found,
          method,
          "shares-scaled",
          each.scaled(),
          "more than all patients would be healed or amputated, and both were scaled to all");
      share(
          found,
          method,
          "months-lengthened",
          each.lengthened(),
          "infection and waiting take longer than the months in treatment, which became longer");
    }
    if (amputation && effect == CostModel.Effect.YEARS_HEALED) {
      found.add(
          "effect",
          "amputation-without-utilities",
          "without utilities only years on the own leg count, so an amputation brings nothing by"
              + " definition; do not read its effect as worse. Enter utilities to compare");
    }
    return found.list();
  }

  private void share(Problems found, MethodCourse method, String code, int draws, String what) {
    if (draws > 0) {
      found.add(
          method.code(),
          code,
          method.label() + ": in " + draws + " of " + outcomes.draws() + " draws " + what);
    }
  }
}
