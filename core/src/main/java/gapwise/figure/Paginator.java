package gapwise.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Fills pages with the parts of a figure; without a page height there is one page. */
final class Paginator {
  private final Board board;
  private final double pageHeight;
  private final List<Part> strip;
  private final List<Part> foot;
  private final AxisFoot axis;
  private final List<PageOfParts> pages = new ArrayList<>();

  private List<Part> head;
  private List<Part> plotted = new ArrayList<>();
  private List<Part> tail = new ArrayList<>();

  /** Parts that must stay together, and the block they belong to. */
  private record Chunk(String block, boolean startsBlock, List<Part> parts) {}

  Paginator(Board board) {
    this.board = board;
    this.pageHeight = board.style().sheet().pageHeight().orElse(Double.POSITIVE_INFINITY);
    this.strip =
        board.forest().provenance().demonstration() ? List.of(Strip.invented(board)) : List.of();
    this.foot = FigureWords.foot(board);
    this.axis = new AxisFoot(board);
    this.head = FigureWords.firstHead(board);
  }

  List<PageOfParts> pages() {
    for (Chunk chunk : chunks()) {
      double needed = PageOfParts.sum(chunk.parts());
      if (!plotted.isEmpty() && used() + needed > pageHeight) {
        turn();
        if (!chunk.startsBlock() && !chunk.block().isBlank()) {
          plotted.add(new BlockHead(board, chunk.block() + ", continued", true));
        }
      }
      plotted.addAll(chunk.parts());
    }
    for (Part part : FigureWords.tail(board)) {
      if (used() + part.height() > pageHeight && !(plotted.isEmpty() && tail.isEmpty())) {
        turn();
      }
      tail.add(part);
    }
    turn();
    return List.copyOf(pages);
  }

  private double used() {
    return page().height() + (plotted.isEmpty() ? axis.height() : 0);
  }

  private PageOfParts page() {
    Optional<Part> under = plotted.isEmpty() ? Optional.empty() : Optional.of(axis);
    return new PageOfParts(
        strip,
        plotted.isEmpty() && !pages.isEmpty() ? FigureWords.titleAgain(board) : head,
        List.copyOf(plotted),
        under,
        List.copyOf(tail),
        foot,
        board.style().sheet().margin());
  }

  private void turn() {
    pages.add(page());
    plotted = new ArrayList<>();
    tail = new ArrayList<>();
    head = FigureWords.nextHead(board);
  }

  private List<Chunk> chunks() {
    List<Chunk> chunks = new ArrayList<>();
    boolean first = true;
    for (Block block : board.forest().blocks()) {
      List<Part> together = new ArrayList<>();
      together.add(new BlockHead(board, block.name(), first));
      first = false;
      boolean starts = true;
      List<Row> rows = block.rows();
      for (int i = 0; i < rows.size() - 1; i++) {
        together.add(series(rows.get(i)));
        chunks.add(new Chunk(block.name(), starts, List.copyOf(together)));
        together.clear();
        starts = false;
      }
      // The last series stays with the summary under it.
      if (!rows.isEmpty()) {
        together.add(series(rows.get(rows.size() - 1)));
      }
      together.add(summary(block.summary(), false));
      chunks.add(new Chunk(block.name(), starts, List.copyOf(together)));
    }
    board
        .forest()
        .overall()
        .ifPresent(all -> chunks.add(new Chunk("", true, List.of(summary(all, true)))));
    return chunks;
  }

  private Part series(Row row) {
    return board.style().sheet().stacked()
        ? new SeriesCard(board, row)
        : new SeriesLine(board, row);
  }

  private Part summary(Summary summary, boolean overall) {
    if (summary instanceof Summary.Pooled pooled) {
      return new SummaryLine(board, pooled, overall);
    }
    return new NoSummaryLine(board, (Summary.NotPooled) summary);
  }
}
