package gapwise.supplement;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.PlanOutcome;
import gapwise.budget.Budget;
import gapwise.budget.Work;
import gapwise.budget.WorkStoppedException;
import gapwise.datapackage.PackageReader;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * Runs every plan of a supplement again, on the data of the supplement alone, and holds every
 * number of every result against the one that was written.
 */
public final class Rerun {
  /**
   * By how much of its size a number may differ where another version of the program ran it; our
   * choice: a change in the order of sums moves the last digits, and nothing that is printed.
   */
  public static final double TOLERANCE_BETWEEN_VERSIONS = 1e-8;

  /** What the origin of a result is, and not what came out. */
  private static final Set<String> ORIGIN = Set.of("software", "evidence");

  private Rerun() {}

  /**
   * One analysis that was run again.
   *
   * @param name of it, and of its files
   * @param title for people
   * @param numbers how many numbers were compared
   * @param moved numbers that are others than before
   * @param words texts that are others than before, or fields that are new
   * @param problems why there is no result
   * @param result what came out; empty where nothing did
   */
  public record Compared(
      String name,
      String title,
      int numbers,
      List<Difference> moved,
      List<Difference> words,
      List<Problem> problems,
      Optional<JsonNode> result) {
    public Compared {
      moved = List.copyOf(moved);
      words = List.copyOf(words);
      problems = List.copyOf(problems);
      Objects.requireNonNull(result, "result");
    }
  }

  /**
   * All of them.
   *
   * @param program version of the program that wrote the supplement
   * @param sameProgram whether it is this one
   * @param studies how many studies the data hold
   * @param invented whether any of them is invented
   */
  public record Done(
      String program, boolean sameProgram, int studies, boolean invented, List<Compared> analyses) {
    public Done {
      analyses = List.copyOf(analyses);
    }

    /**
     * Whether every number is as it was, and, where the same version wrote it, every other word of
     * every result too.
     */
    public boolean equal() {
      return analyses.stream()
          .allMatch(
              one ->
                  one.moved().isEmpty()
                      && one.problems().isEmpty()
                      && (!sameProgram || one.words().isEmpty()));
    }

    /** How many numbers were compared. */
    public int numbers() {
      return analyses.stream().mapToInt(Compared::numbers).sum();
    }
  }

  /**
   * Runs a supplement again.
   *
   * @param program version of this program
   * @param budget what one analysis may cost
   * @throws WrongInputException where the package is damaged, changed or none
   */
  public static Done of(PackageReader reader, String program, Budget budget) throws IOException {
    SupplementReader supplement = SupplementReader.checked(reader);
    boolean same = supplement.program().equals(program);
    List<gapwise.evidence.Study> studies = supplement.studies();
    List<Compared> compared = new ArrayList<>();
    try (OwnEvidence own = OwnEvidence.of(studies, supplement.decisions())) {
      for (WrittenAnalysis analysis : supplement.analyses()) {
        compared.add(again(supplement, own, analysis, same, budget));
      }
    }
    return new Done(supplement.program(), same, studies.size(), supplement.invented(), compared);
  }

  private static Compared again(
      SupplementReader supplement,
      OwnEvidence own,
      WrittenAnalysis analysis,
      boolean same,
      Budget budget)
      throws IOException {
    JsonNode before = supplement.result(analysis);
    String plan = supplement.plan(analysis);
    Path tables = Files.createTempDirectory("gapwise-tables");
    PlanOutcome outcome;
    try {
      supplement.tables(analysis, tables);
      outcome =
          Work.within(budget)
              .join(() -> own.run(analysis.asking(), plan, Optional.of(tables)).outcome());
    } catch (WorkStoppedException stopped) {
      outcome = new PlanOutcome.Wrong(List.of(stopped.problem()));
    } finally {
      OwnEvidence.delete(tables);
    }
    if (outcome instanceof PlanOutcome.Wrong wrong) {
      return new Compared(
          analysis.name(),
          analysis.title(),
          0,
          List.of(),
          List.of(),
          wrong.problems(),
          Optional.empty());
    }
    JsonNode after = outcome.json();
    Comparison found =
        new Comparison(same ? 0 : TOLERANCE_BETWEEN_VERSIONS, ORIGIN).of(before, after);
    return new Compared(
        analysis.name(),
        analysis.title(),
        found.compared(),
        found.numbers(),
        found.words(),
        List.of(),
        Optional.of(after));
  }
}
