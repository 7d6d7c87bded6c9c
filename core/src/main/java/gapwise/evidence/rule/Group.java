package gapwise.evidence.rule;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.CountedUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * The patients of one arm, or of all arms together.
 *
 * @param study the study
 * @param arm the arm; empty for all arms together
 * @param baseline who was treated
 */
public record Group(Study study, Optional<Arm> arm, Baseline baseline) {

  /** Every arm, then all arms together. */
  public static List<Group> of(Study study) {
    List<Group> groups = new ArrayList<>();
    study.arms().forEach(arm -> groups.add(new Group(study, Optional.of(arm), arm.baseline())));
    groups.add(new Group(study, Optional.empty(), study.whole()));
    return groups;
  }

  public RecordPart part(String field) {
    return arm.<RecordPart>map(one -> new RecordPart.OfArm(study.id(), one.id(), field))
        .orElseGet(() -> new RecordPart.OfAllArms(study.id(), field));
  }

  /** How many there are of what is counted, as the paper says. */
  public OptionalInt size(CountedUnit unit) {
    return switch (unit) {
      case PATIENTS -> baseline.patients();
      case LIMBS -> baseline.limbs();
      case DEFECTS -> baseline.defects();
    };
  }

  /** The largest of the numbers of patients, limbs and defects; empty when none is known. */
  public OptionalInt largestSize() {
    return Stream.of(CountedUnit.values()).map(this::size).flatMapToInt(OptionalInt::stream).max();
  }
}
