package gapwise.server.page;

import gapwise.search.SearchAnswer.ArmHit;
import gapwise.server.home.Latest;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Lines as they were last worded and drawn, kept until the evidence base changes, since many
 * searches find the same group.
 */
final class LatestRows {
  /** More than most evidence bases hold; a line takes some four kilobytes. */
  private static final int MOST = 5000;

  private final Latest<Line, Optional<ArmRow>> latest;
  private final LongSupplier change;

  private record Line(ArmHit hit, List<ListColumn> columns) {}

  /**
   * @param rows makes lines anew
   * @param change number of the last change that is shown
   */
  LatestRows(PlainRows rows, LongSupplier change) {
    this.latest =
        new Latest<>(
            MOST, line -> rows.of(List.of(line.hit()), line.columns()).stream().findFirst());
    this.change = change;
  }

  /** As {@link PlainRows#of}. */
  List<ArmRow> of(List<ArmHit> hits, List<ListColumn> columns) {
    long now = change.getAsLong();
    return hits.stream().flatMap(hit -> latest.at(now, new Line(hit, columns)).stream()).toList();
  }
}
