package gapwise.paper.table;

import java.util.List;
import java.util.Optional;

/** Tells whether the first table of a page is the rest of the last one of the page before. */
final class Continuation {
  private Continuation() {}

  /** Both as one table; empty if they are two. */
  static Optional<Grid> of(Tables.Open open, Tables.Piece piece) {
    int pages = piece.page().number() - open.page();
    boolean besides = piece.grid().parts().get(0).box().left() > open.box().middle();
    boolean follows = pages == 1 || pages == 0 && besides;
    boolean announced = piece.caption().map(Caption::continued).orElse(false);
    boolean ownTable = piece.caption().isPresent() && !announced;
    if (!follows || ownTable) {
      return Optional.empty();
    }
    int head = piece.grid().headerRows();
    if (piece.grid().columns() == open.grid().columns()
        && isRepeated(open.grid(), piece.grid(), head)) {
      return Optional.of(open.grid().followedBy(piece.grid(), head));
    }
    if (!open.ends() || !(piece.beginsPage() || announced)) {
      return Optional.empty();
    }
    if (!open.cuts().fit(piece.reading().lines())) {
      return Optional.empty();
    }
    Optional<Grid> same = piece.reading().read(open.cuts());
    return same.filter(g -> g.columns() == open.grid().columns())
        .map(g -> open.grid().followedBy(g, repeatedRows(open.grid(), g)));
  }

  private static boolean isRepeated(Grid first, Grid second, int head) {
    return head > 0
        && head <= first.headerRows()
        && first.texts().subList(0, head).equals(second.texts().subList(0, head));
  }

  /** First rows of the rest that say together what the head says. */
  private static int repeatedRows(Grid first, Grid second) {
    List<List<String>> head = first.texts().subList(0, first.headerRows());
    for (int rows = Math.min(6, second.rows().size() - 1); rows > 0; rows--) {
      if (said(head).equals(said(second.texts().subList(0, rows)))) {
        return rows;
      }
    }
    return 0;
  }

  private static List<String> said(List<List<String>> rows) {
    String[] columns = new String[rows.isEmpty() ? 0 : rows.get(0).size()];
    java.util.Arrays.fill(columns, "");
    for (List<String> row : rows) {
      for (int i = 0; i < columns.length; i++) {
        columns[i] += row.get(i).replace(" ", "");
      }
    }
    return List.of(columns);
  }
}
