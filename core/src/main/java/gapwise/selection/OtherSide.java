package gapwise.selection;

import gapwise.evidence.EventCount;
import gapwise.evidence.ReportedValue;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Events of an outcome counted from those who did not have its other side. */
final class OtherSide {
  private static final BigDecimal ALL = BigDecimal.valueOf(100);

  private OtherSide() {}

  /** 17 of 20 for 3 of 20; empty for what does not say of how many the events were counted. */
  static Optional<ReportedValue> of(ReportedValue value) {
    if (!(value instanceof ReportedValue.Events events) || !events.count().isComplete()) {
      return Optional.empty();
    }
    EventCount count = events.count();
    OptionalDouble percent =
        count.percentAsReported().isPresent()
            ? OptionalDouble.of(
                ALL.subtract(BigDecimal.valueOf(count.percentAsReported().getAsDouble()))
                    .doubleValue())
            : OptionalDouble.empty();
    int total = count.total().getAsInt();
    return Optional.of(
        new ReportedValue.Events(
            new EventCount(
                OptionalInt.of(total - count.events().getAsInt()),
                count.total(),
                percent,
                count.countedBack())));
  }
}
