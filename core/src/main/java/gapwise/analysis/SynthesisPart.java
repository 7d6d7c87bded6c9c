package gapwise.analysis;

import gapwise.effect.StudyData;
import java.util.List;

/** One part of the result of a synthesis. Listed in {@link SynthesisParts}. */
interface SynthesisPart {
  /** Whether the plan asks for it. */
  boolean asked(SynthesisPlan plan);

  /**
   * Works it out.
   *
   * @param result takes the part; left as it is if the part cannot be told
   * @param warnings takes what a reader must know, and why a part is not told
   */
  <D extends StudyData> void add(
      Synthesis<D> synthesis, ResultBuilder result, List<Result.Warning> warnings);
}
