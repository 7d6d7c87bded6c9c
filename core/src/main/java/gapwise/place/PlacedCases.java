package gapwise.place;

import gapwise.answer.Answers;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * Places cases among published evidence, each through plans that anyone can run again. Keeps
 * nothing. Safe for use by many threads.
 */
public final class PlacedCases {
  private final Answers answers;

  /**
   * @param answers of the evidence base
   */
  public PlacedCases(Answers answers) {
    this.answers = Objects.requireNonNull(answers, "answers");
  }

  /** The place of every milestone of the case. */
  public PlacedCase place(PatientCase patientCase) {
    List<PlacedMilestone> placed = new ArrayList<>();
    for (Reached reached : patientCase.reached()) {
      placed.add(new MilestonePlacing(answers, patientCase, reached).placed());
    }
    placed.sort(Comparator.comparing((PlacedMilestone one) -> one.methods().isEmpty()));
    return new PlacedCase(patientCase, placed);
  }
}
