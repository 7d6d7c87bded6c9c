package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.plan.FarNumbers;
import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanSize;
import gapwise.analysis.plan.PlanText;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.EvidenceRows;
import gapwise.analysis.rows.SourceReader;
import gapwise.problem.WrongInputException;
import java.nio.file.Path;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;

/**
 * Runs plans. The one door of this room: the command line, the HTTP API and pages all call it.
 * Immutable and safe for threads.
 *
 * <p>It works within the budget of the {@link gapwise.budget.Work} that its caller has bound, and
 * without one has no limits. Work that is stopped is not an outcome: the exception goes to the
 * caller, who knows whether anybody still waits.
 */
public final class Runner {
  private final Optional<EvidenceRows> evidence;

  private Runner(Optional<EvidenceRows> evidence) {
    this.evidence = evidence;
  }

  /** A runner without a curated store; plans that select evidence are refused. */
  public static Runner withoutEvidence() {
    return new Runner(Optional.empty());
  }

  /** A runner that answers plans that select evidence. */
  public static Runner with(EvidenceRows evidence) {
    return new Runner(Optional.of(evidence));
  }

  /**
   * Runs a plan given as text.
   *
   * @param plan JSON
   * @param folder where relative names of tables start; empty if a plan may name no file, as when
   *     it comes over the network
   */
  public PlanOutcome run(String plan, Optional<Path> folder) {
    try {
      return answer(PlanText.parse(plan), folder);
    } catch (WrongInputException wrong) {
      return new PlanOutcome.Wrong(wrong.problems());
    }
  }

  /** Runs a plan given as JSON; otherwise as {@link #run(String, Optional)}. */
  public PlanOutcome run(JsonNode plan, Optional<Path> folder) {
    try {
      PlanSize.check(plan);
      return answer(plan, folder);
    } catch (WrongInputException wrong) {
      return new PlanOutcome.Wrong(wrong.problems());
    }
  }

  private PlanOutcome answer(JsonNode json, Optional<Path> folder) {
    Plan plan = PlanReader.read(json);
    DataTable table =
        new SourceReader(folder, evidence).read(plan.head().sources(), plan.head().measure());
    try {
      return new PlanOutcome.Done(plan.runOn(table));
    } catch (ArithmeticException
        | IllegalArgumentException
        | IllegalStateException
        | NoSuchElementException beyond) {
      // What a formula or its library says of numbers that left its range. Where no number of the
      // plan is that far out it is a fault of ours, and must be seen as one.
      throw FarNumbers.in(plan, table)
          .map(far -> (RuntimeException) new WrongInputException(List.of(far)))
          .orElse(beyond);
    }
  }
}
