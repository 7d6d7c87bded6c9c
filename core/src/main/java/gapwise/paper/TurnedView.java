package gapwise.paper;

import gapwise.paper.DrawnPath.Point;
import gapwise.paper.Word.Mark;
import gapwise.paper.Word.Turn;
import java.util.ArrayList;
import java.util.List;

/**
 * A page looked at with the head turned, so that words that run upwards, downwards or upside down
 * are read like others: for a table or figure printed sideways.
 *
 * @param page as it then looks
 * @param turn which words run from left to right in it
 * @param width of the page as displayed
 * @param height of the page as displayed
 */
public record TurnedView(Page page, Turn turn, double width, double height) {
  /** The view in which the words of one turn are upright; all others are left out. */
  public static TurnedView of(Page page, Turn turn) {
    List<Word> words = new ArrayList<>();
    for (Word word : page.words()) {
      if (word.turn() == turn) {
        words.add(seen(word, turn, page));
      }
    }
    boolean sideways = turn == Turn.UP || turn == Turn.DOWN;
    double width = sideways ? page.height() : page.width();
    double height = sideways ? page.width() : page.height();
    ReadingOrder order = ReadingOrder.of(words, width, new Guard(Caps.STANDARD));
    List<Word> ordered = new ArrayList<>();
    order.lines().forEach(line -> ordered.addAll(line.words()));
    Page view =
        new Page(
            page.number(),
            width,
            height,
            ordered,
            order.lines(),
            order.columns(),
            page.paths().stream().map(path -> seen(path, turn, page)).toList(),
            page.images().stream().map(box -> seen(box, turn, page)).toList(),
            page.lettering(),
            page.damaged(),
            page.unknownLetters());
    return new TurnedView(view, turn, page.width(), page.height());
  }

  /** A box of the view on the page as displayed. */
  public Box back(Box box) {
    return switch (turn) {
      case UP -> Box.between(box.top(), height - box.left(), box.bottom(), height - box.right());
      case DOWN -> Box.between(width - box.top(), box.left(), width - box.bottom(), box.right());
      case OVER ->
          Box.between(
              width - box.left(), height - box.top(), width - box.right(), height - box.bottom());
      case NONE -> box;
    };
  }

  /** A word of the view on the page as displayed. */
  public Word back(Word word) {
    double line =
        switch (turn) {
          case DOWN -> width - word.baseline();
          case OVER -> height - word.baseline();
          default -> word.baseline();
        };
    return new Word(
        word.text(),
        back(word.box()),
        line,
        word.size(),
        turn,
        word.bold(),
        word.colour(),
        word.breaks(),
        word.marks().stream().map(m -> new Mark(m.text(), back(m.box()))).toList());
  }

  private static Word seen(Word word, Turn turn, Page page) {
    double line =
        switch (turn) {
          case DOWN -> page.width() - word.baseline();
          case OVER -> page.height() - word.baseline();
          default -> word.baseline();
        };
    return new Word(
        word.text(),
        seen(word.box(), turn, page),
        line,
        word.size(),
        Turn.NONE,
        word.bold(),
        word.colour(),
        word.breaks(),
        word.marks().stream().map(m -> new Mark(m.text(), seen(m.box(), turn, page))).toList());
  }

  private static DrawnPath seen(DrawnPath path, Turn turn, Page page) {
    List<Point> points = new ArrayList<>();
    for (Point point : path.points()) {
      points.add(seen(point, turn, page));
    }
    return new DrawnPath(
        points, path.filled(), path.colour(), path.width(), path.dashes(), path.curved());
  }

  private static Box seen(Box box, Turn turn, Page page) {
    Point a = seen(new Point(box.left(), box.top()), turn, page);
    Point b = seen(new Point(box.right(), box.bottom()), turn, page);
    return Box.between(a.x(), a.y(), b.x(), b.y());
  }

  private static Point seen(Point point, Turn turn, Page page) {
    return switch (turn) {
      case UP -> new Point(page.height() - point.y(), point.x());
      case DOWN -> new Point(point.y(), page.width() - point.x());
      case OVER -> new Point(page.width() - point.x(), page.height() - point.y());
      case NONE -> point;
    };
  }
}
