package gapwise.evidence.check;

import gapwise.evidence.Arm;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Group;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;
import java.util.Optional;
import java.util.Set;

/** Time in a frame of an arm whose method has none, or a frame time of 0 for "not applicable". */
final class FrameOutcomes implements ReportRule {
  private static final Set<String> FRAMES =
      Set.of("ring-frame", "rail-frame", "hexapod-frame", "bone-transport");
  private static final Set<String> MAY_HAVE_FRAMES = Set.of("combined", "mixed-salvage", "other");

  @Override
  public void check(ReportAt at, Findings findings) {
    if (!at.report().outcome().needsFrame()) {
      return;
    }
    Optional<QuantitySummary> quantity = at.quantity();
    if (quantity.filter(s -> s.centre().isPresent() && s.centre().getAsDouble() == 0).isPresent()) {
      findings.doubtful(
          at.part("mean"),
          "frame-time-zero",
          "Found 0 for '"
              + at.report().outcome().label()
              + "'. Where there was no frame, leave the row out or write n/a.");
    }
    Optional<Arm> arm = at.group().flatMap(Group::arm);
    if (arm.isPresent() && !mayHaveFrame(arm.get())) {
      findings.doubtful(
          at.part("outcome"),
          "frame-of-frameless-method",
          "'"
              + at.report().outcome().label()
              + "' is given, but the method '"
              + arm.get().method().principal().label()
              + "' has no external frame. Check the arm, or name the frame among its parts.");
    }
  }

  private static boolean mayHaveFrame(Arm arm) {
    return arm.method().principal().frame()
        || MAY_HAVE_FRAMES.contains(arm.method().principal().code())
        || arm.method().parts().stream().anyMatch(part -> FRAMES.contains(part.code()));
  }
}
