package gapwise.server.page.studies;

import gapwise.search.SearchAnswer.ArmHit;
import gapwise.server.address.ListColumn;
import gapwise.server.home.RememberedEach;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Lines as they were last worded and drawn, kept for one state of the evidence base, since many
 * searches find the same group.
 */
final class RememberedRows {
  /** More than most evidence bases hold; a line takes some two kilobytes. */
  private static final int MOST = 20_000;

  private final PlainRows rows;
  private final RememberedEach<Line, ArmRow> latest = new RememberedEach<>(MOST, this::made);

  private record Line(ArmHit hit, List<ListColumn> columns) {}

  /**
   * @param rows makes lines anew
   */
  RememberedRows(PlainRows rows) {
    this.rows = rows;
  }

  /** Lines of one list, so all with the same columns. */
  private Map<Line, ArmRow> made(List<Line> lines) {
    List<ListColumn> columns = lines.get(0).columns();
    Map<Line, ArmRow> made = new HashMap<>();
    rows.of(lines.stream().map(Line::hit).toList(), columns)
        .forEach(row -> made.put(new Line(row.hit(), columns), row));
    return made;
  }

  /** As {@link PlainRows#of}. */
  List<ArmRow> of(List<ArmHit> hits, List<ListColumn> columns) {
    List<Line> lines = hits.stream().map(hit -> new Line(hit, columns)).toList();
    Map<Line, ArmRow> known = latest.of(lines);
    return lines.stream().flatMap(line -> Optional.ofNullable(known.get(line)).stream()).toList();
  }
}
