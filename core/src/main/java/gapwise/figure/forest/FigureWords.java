package gapwise.figure.forest;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Gap;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Paragraph;
import gapwise.figure.drawing.Style;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The words above, after and below the plot as parts: title, sentences, notes, cautions, foot. */
final class FigureWords {
  private FigureWords() {}

  static List<PagePart> firstHead(Board board) {
    Style style = board.style();
    List<PagePart> head = new ArrayList<>();
    head.add(
        line(board, board.forest().heading().title(), Lettering.bold(style.type().title()), 0));
    Lettering sentence = Lettering.plain(style.type().sentence()).in(Ink.SOFT);
    double before = style.type().sentence() * 0.35;
    for (String each : board.forest().heading().sentences()) {
      head.add(line(board, each, sentence, before));
    }
    head.add(new ColumnHeads(board));
    return List.copyOf(head);
  }

  static List<PagePart> nextHead(Board board) {
    List<PagePart> head = new ArrayList<>(titleAgain(board));
    head.add(new ColumnHeads(board));
    return List.copyOf(head);
  }

  static List<PagePart> titleAgain(Board board) {
    String title = continued(board.forest().heading().title());
    return List.of(line(board, title, Lettering.bold(board.style().type().sentence()), 0));
  }

  /** A title or name where it stands again on a further page. */
  static String continued(String name) {
    return say("figure.continued", Map.of("name", name));
  }

  static List<PagePart> tail(Board board) {
    Forest forest = board.forest();
    List<PagePart> tail = new ArrayList<>();
    double small = board.style().type().small();
    if (!forest.leftOut().isEmpty()) {
      String words =
          say("figure.left-out", Map.of("series", Integer.toString(forest.leftOut().size())));
      Lettering bold = board.style().bold().in(Ink.SOFT);
      tail.add(line(board, words, bold, small));
      forest.leftOut().forEach(row -> tail.add(new LeftOutLine(board, row)));
    }
    tail.add(Key.of(board));
    tail.add(line(board, SpanKey.words(forest), board.style().source(), small * 0.2));
    forest
        .notes()
        .forEach(note -> tail.add(line(board, note, board.style().source(), small * 0.3)));
    return List.copyOf(tail);
  }

  /** Cautions stand where results stand: at the foot of every page. */
  static List<PagePart> foot(Board board) {
    Forest forest = board.forest();
    Style style = board.style();
    List<PagePart> foot = new ArrayList<>();
    Lettering caution = style.caution();
    double room = style.sheet().room();
    foot.add(new Gap(style.type().foot() * 0.7));
    forest
        .cautions()
        .forEach(each -> foot.add(Paragraph.caution(each, style.sheet().margin(), room, caution)));
    String provenance = String.join(" \u00b7 ", forest.provenance().phrases());
    foot.add(line(board, provenance, style.source(), style.type().foot() * 0.6));
    return List.copyOf(foot);
  }

  private static PagePart line(Board board, String text, Lettering lettering, double before) {
    Style.Sheet sheet = board.style().sheet();
    return Paragraph.of(text, sheet.margin(), sheet.room(), lettering, before);
  }
}
