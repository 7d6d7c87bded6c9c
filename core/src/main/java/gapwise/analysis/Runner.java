package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.problem.WrongInputException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Runs plans. The one door of this room: the command line, the HTTP API and pages all call it.
 * Immutable and safe for threads.
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
  public Outcome run(String plan, Optional<Path> folder) {
    try {
      return answer(PlanText.parse(plan), folder);
    } catch (WrongInputException wrong) {
      return new Outcome.Wrong(wrong.problems());
    }
  }

  /** Runs a plan given as JSON; otherwise as {@link #run(String, Optional)}. */
  public Outcome run(JsonNode plan, Optional<Path> folder) {
    try {
      return answer(plan, folder);
    } catch (WrongInputException wrong) {
      return new Outcome.Wrong(wrong.problems());
    }
  }

  private Outcome answer(JsonNode json, Optional<Path> folder) {
    Plan plan = PlanReader.read(json);
    DataTable table = new SourceReader(folder, evidence).read(plan);
    return new Outcome.Done(plan.runOn(table));
  }
}
