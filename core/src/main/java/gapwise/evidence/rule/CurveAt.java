package gapwise.evidence.rule;

import gapwise.evidence.Arm;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.Study;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * One published curve and its place in the study.
 *
 * @param study the study
 * @param index its position
 * @param curve the curve
 */
public record CurveAt(Study study, int index, PublishedCurve curve) {
  /** How far a reading may be off, in percentage points; as much is levelled when one is pooled. */
  public static final double READING_ERROR = 2;

  public static List<CurveAt> of(Study study) {
    return IntStream.range(0, study.curves().size())
        .mapToObj(index -> new CurveAt(study, index, study.curves().get(index)))
        .toList();
  }

  public RecordPart part(String field) {
    return new RecordPart.OfCurve(study.id(), index, field);
  }

  /** The patients of its arm. */
  public Group group() {
    Optional<Arm> arm = study.arm(curve.arm());
    return new Group(study, arm, arm.orElseThrow().baseline());
  }

  /** A time as the figure gives it, with its unit. */
  public String time(double time) {
    return Printed.about(time) + " " + curve.unit().symbol();
  }
}
