package gapwise.paper.table;

import gapwise.paper.Box;
import gapwise.paper.Page;
import gapwise.paper.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads the rows and columns of a table whose place is known. */
final class GridReading {
  private final Page page;
  private final Box place;
  private final List<Box> level;
  private final List<RowLine> lines;

  GridReading(Page page, Box place) {
    this.page = page;
    this.place = place;
    this.level =
        Rules.level(page).stream()
            .filter(r -> place.grown(3).holds(r.middle(), r.centre()))
            .toList();
    this.lines =
        RowLine.of(
            page.words().stream()
                .filter(w -> w.turn() == Word.Turn.NONE && place.holdsMiddleOf(w.box()))
                .toList());
  }

  List<RowLine> lines() {
    return lines;
  }

  /** The table, with columns of its own. */
  Optional<Grid> read() {
    if (lines.isEmpty()) {
      return Optional.empty();
    }
    int head = Heads.lines(lines, broad());
    List<RowLine> body = lines.subList(head, lines.size());
    Cuts cuts = Cuts.between(body, upright(), lines.subList(0, head));
    if (cuts.columns() < 2) {
      cuts = Cuts.between(lines, upright());
    }
    return Optional.of(read(cuts, head));
  }

  /** The cuts of the body, as they would be taken for a continuation. */
  Cuts cuts() {
    int head = lines.isEmpty() ? 0 : Heads.lines(lines, broad());
    return Cuts.between(lines.subList(head, lines.size()), upright(), lines.subList(0, head));
  }

  /** The table as a continuation of one with these columns. */
  Optional<Grid> read(Cuts cuts) {
    return lines.isEmpty() ? Optional.empty() : Optional.of(read(cuts, 0));
  }

  private Grid read(Cuts cuts, int head) {
    List<RowLine> body = lines.subList(head, lines.size());
    List<List<GridCell>> rows = new ArrayList<>();
    HeadRows heads = HeadRows.of(body, cuts, partial(), place, Rules.seams(page, place));
    List<Strip> headRows = heads.rows(lines.subList(0, head));
    headRows.forEach(strip -> rows.add(strip.row(cuts.columns(), page.number())));
    lift(rows);
    List<Strip> strips = body.stream().map(line -> Strip.of(line, cuts)).toList();
    for (Strip strip : Wraps.rows(strips, broad())) {
      rows.add(strip.row(cuts.columns(), page.number()));
    }
    Box box = Box.around(lines.stream().map(RowLine::box).toList());
    return new Grid("", List.of(new Grid.Part(page.number(), box, 0)), headRows.size(), rows);
  }

  /** A head that stands beside spanning heads, on the lower line alone, takes both rows. */
  private static void lift(List<List<GridCell>> rows) {
    for (int i = rows.size() - 1; i > 0; i--) {
      List<GridCell> above = new ArrayList<>(rows.get(i - 1));
      List<GridCell> below = new ArrayList<>(rows.get(i));
      boolean[] covered = new boolean[above.size()];
      for (int column = 0; column < above.size(); column++) {
        int span = above.get(column).columns();
        for (int inner = column; inner < column + span && inner < above.size(); inner++) {
          covered[inner] |= !above.get(column).isEmpty();
        }
      }
      for (int column = 0; column < above.size(); column++) {
        GridCell cell = below.get(column);
        if (!covered[column] && !cell.isEmpty()) {
          above.set(column, cell.overRows(cell.rows() + 1));
          below.set(column, GridCell.empty(cell.page()));
        }
      }
      rows.set(i - 1, above);
      rows.set(i, below);
    }
  }

  /** Level lines over most of the table. */
  private List<Box> broad() {
    return level.stream().filter(r -> r.width() > 0.8 * place.width()).toList();
  }

  private List<Box> partial() {
    return level.stream().filter(r -> r.width() <= 0.8 * place.width()).toList();
  }

  /** Where lines part columns: upright over most of the body, or level ones at their seams. */
  private List<Double> upright() {
    List<Double> ruled = new ArrayList<>();
    List<Double> seams = Rules.seams(page, place);
    if (new Cuts(seams).fit(lines)) {
      ruled.addAll(seams);
    }
    for (Box rule : Rules.upright(page)) {
      boolean inside = rule.middle() > place.left() + 4 && rule.middle() < place.right() - 4;
      if (inside && rule.sharedHeight(place) > 0.6 * place.height()) {
        boolean known = ruled.stream().anyMatch(x -> Math.abs(x - rule.middle()) < 3);
        if (!known) {
          ruled.add(rule.middle());
        }
      }
    }
    return ruled;
  }
}
