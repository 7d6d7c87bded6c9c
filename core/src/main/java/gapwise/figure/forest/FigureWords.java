package gapwise.figure.forest;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Gap;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Paragraph;
import gapwise.figure.drawing.Style;
import gapwise.figure.page.PageNumber;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The words above, after and below the plot as parts: title, sentences, notes, cautions, foot. */
final class FigureWords {
  private static final int MANY = 99;

  private FigureWords() {}

  static List<PagePart> firstHead(Board board) {
    Style style = board.style();
    if (style.sheet().withinPage()) {
      return List.of(new ColumnHeads(board));
    }
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
    Style.Type type = board.style().type();
    boolean slide = board.style().sheet().landscape();
    double size = slide ? Math.max(type.sentence(), 0.8 * type.title()) : type.sentence();
    return List.of(line(board, title, Lettering.bold(size), 0));
  }

  /** A title or name where it stands again on a further page. */
  static String continued(String name) {
    return say("figure.continued", Map.of("name", name));
  }

  static List<PagePart> tail(Board board) {
    List<PagePart> tail = new ArrayList<>(leftOut(board));
    tail.add(Key.of(board));
    tail.addAll(reading(board, true));
    return List.copyOf(tail);
  }

  /**
   * What follows pooled values alone, the longest first: where it does not fit under them, notes
   * and then the key go on with the series.
   */
  static List<List<PagePart>> tailsOfCompared(Board board) {
    List<PagePart> key =
        board.forest().pooled().isEmpty() ? List.of() : List.of(Key.ofPooled(board));
    List<PagePart> all = Stream.concat(key.stream(), notes(board).stream()).toList();
    return List.of(all, key, List.of());
  }

  /**
   * What follows the series where the pooled values stand on a page before.
   *
   * @param told which of the tails of the pooled values they have, from 0
   */
  static List<PagePart> tailOfSeries(Board board, int told) {
    List<PagePart> tail = new ArrayList<>(leftOut(board));
    tail.add(told > 1 ? Key.of(board) : Key.ofSeries(board));
    tail.addAll(reading(board, told > 0));
    return List.copyOf(tail);
  }

  /** How to read bones and numbers; on a slide in one paragraph. */
  private static List<PagePart> reading(Board board, boolean notes) {
    List<String> words = new ArrayList<>();
    boolean drawn = board.columns().bonesDrawn();
    words.add(drawn ? SpanKey.words(board.forest()) : say("figure.bone-in-words"));
    if (notes) {
      words.addAll(board.forest().notes());
    }
    return drawn ? lines(board, words) : lines(board, List.of(String.join(" ", words)));
  }

  private static List<PagePart> leftOut(Board board) {
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
    return tail;
  }

  private static List<PagePart> notes(Board board) {
    List<String> notes = board.forest().notes();
    return notes.isEmpty() ? List.of() : lines(board, List.of(String.join(" ", notes)));
  }

  private static List<PagePart> lines(Board board, List<String> words) {
    double before = board.style().type().small() * 0.3;
    return words.stream().map(each -> line(board, each, board.style().source(), before)).toList();
  }

  /** The foot of one of very many pages, as tall as that of any. */
  static List<PagePart> footOfMany(Board board) {
    boolean paged = board.style().sheet().pageHeight().isPresent();
    return foot(board, paged ? new PageNumber(MANY, MANY) : new PageNumber(1, 1));
  }

  /** Cautions stand where results stand: at the foot of every page. */
  static List<PagePart> foot(Board board, PageNumber number) {
    Forest forest = board.forest();
    Style style = board.style();
    boolean alone = !style.sheet().withinPage();
    List<PagePart> foot = new ArrayList<>();
    Lettering caution = style.caution();
    double room = style.sheet().room();
    List<String> phrases = new ArrayList<>();
    if (alone) {
      foot.add(new Gap(style.type().foot() * 0.7));
      for (String each : cautions(forest, style)) {
        foot.add(Paragraph.caution(each, style.sheet().margin(), room, caution));
      }
      phrases.addAll(forest.provenance().phrases());
    }
    // Printed pages lie together; a sheet on a screen stands alone, and must tell of the others.
    (style.sheet().onScreen() ? number.wordsAmong(forest.rows().size()) : number.words())
        .ifPresent(phrases::add);
    if (!phrases.isEmpty()) {
      String words = String.join(" \u00b7 ", phrases);
      foot.add(line(board, words, style.source(), style.type().foot() * 0.6));
    }
    return List.copyOf(foot);
  }

  /** On a slide, where height is scarce, all in one paragraph. */
  private static List<String> cautions(Forest forest, Style style) {
    boolean together = style.sheet().landscape() && !forest.cautions().isEmpty();
    return together ? List.of(String.join(" ", forest.cautions())) : forest.cautions();
  }

  private static PagePart line(Board board, String text, Lettering lettering, double before) {
    Style.Sheet sheet = board.style().sheet();
    return Paragraph.of(text, sheet.margin(), sheet.room(), lettering, before);
  }
}
