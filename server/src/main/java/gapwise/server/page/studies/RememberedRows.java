package gapwise.server.page.studies;

import gapwise.search.SearchAnswer.ArmHit;
import gapwise.server.address.ListColumn;
import gapwise.server.home.Remembered;
import java.util.List;
import java.util.Optional;

/**
 * Lines as they were last worded and drawn, kept for one state of the evidence base, since many
 * searches find the same group.
 */
final class RememberedRows {
  /** More than most evidence bases hold; a line takes some four kilobytes. */
  private static final int MOST = 5000;

  private final Remembered<Line, Optional<ArmRow>> latest;

  private record Line(ArmHit hit, List<ListColumn> columns) {}

  /**
   * @param rows makes lines anew
   */
  RememberedRows(PlainRows rows) {
    this.latest =
        new Remembered<>(
            MOST, line -> rows.of(List.of(line.hit()), line.columns()).stream().findFirst());
  }

  /** As {@link PlainRows#of}. */
  List<ArmRow> of(List<ArmHit> hits, List<ListColumn> columns) {
    return hits.stream().flatMap(hit -> latest.of(new Line(hit, columns)).stream()).toList();
  }
}
