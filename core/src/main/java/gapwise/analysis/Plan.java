package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;

/** A checked plan with every default filled in. Immutable. */
sealed interface Plan
    permits SynthesisPlan,
        IntervalPlan,
        ConvertPlan,
        AgreementPlan,
        NetworkPlan,
        CurvePlan,
        SurvivalPlan,
        PatientsPlan,
        MultiversePlan,
        TrialPlan {
  /**
   * The plan as JSON with every default filled in; shared, since rows are many: not to be changed.
   */
  ObjectNode json();

  /** The measure, or the task where it has none. */
  String measure();

  /** Role to column. */
  Map<String, String> columns();

  /** Runs the plan. */
  Result runOn(DataTable table);
}
