package gapwise.server.page.studies;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchAnswer.ArmHit;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Looks up what groups of patients report of an outcome. */
@FunctionalInterface
public interface ArmValues {
  /**
   * The values of those groups that report the outcome.
   *
   * @param lengths missing bone of the patients asked for; a group may report them apart
   */
  Map<ArmHit, ArmValue> of(Outcome outcome, Optional<LengthRange> lengths, List<ArmHit> arms);
}
