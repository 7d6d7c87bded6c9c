package gapwise.analysis.smallstudy;

import gapwise.synthesis.smallstudy.Caution;
import gapwise.synthesis.smallstudy.Refusal;
import java.util.List;

/**
 * Why tests for small-study effects were not made and what speaks against those that were, for
 * whoever tells it in sentences; the warnings of a result say the same.
 *
 * @param refusals reasons, each once
 * @param cautions against tests that were made
 */
public record SmallStudyNotes(List<Refusal> refusals, List<Caution> cautions) {
  /** Of a plan that asks for no test. */
  static final SmallStudyNotes NONE = new SmallStudyNotes(List.of(), List.of());

  public SmallStudyNotes {
    refusals = List.copyOf(refusals);
    cautions = List.copyOf(cautions);
  }
}
