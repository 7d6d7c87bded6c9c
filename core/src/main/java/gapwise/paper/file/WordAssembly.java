package gapwise.paper.file;

import gapwise.paper.Box;
import gapwise.paper.Guard;
import gapwise.paper.Word;
import gapwise.paper.Word.Mark;
import gapwise.paper.Word.Turn;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Puts letters together to words, whatever order they were drawn in. */
final class WordAssembly {
  /** Letters apart by more than this part of their size stand in two words. */
  private static final double GAP = 0.18;

  /** Baselines that differ by less than this part of the size are one. */
  private static final double ONE_LINE = 0.12;

  private WordAssembly() {}

  static List<Word> of(List<Letter> letters, Guard guard) {
    List<Word> words = new ArrayList<>();
    for (Turn turn : Turn.values()) {
      List<Letter> mine = letters.stream().filter(l -> l.turn() == turn).toList();
      List<Word> found = new ArrayList<>();
      for (List<Letter> row : rows(mine)) {
        guard.tick();
        split(row, found);
      }
      List<Word> joined = RaisedMarks.attach(found, guard);
      joined.forEach(word -> words.add(turned(word)));
    }
    return words;
  }

  /** Letters on one baseline, from left to right. */
  private static List<List<Letter>> rows(List<Letter> letters) {
    List<Letter> sorted = new ArrayList<>(letters);
    sorted.sort(Comparator.comparingDouble(Letter::baseline));
    List<List<Letter>> rows = new ArrayList<>();
    double last = 0;
    for (Letter letter : sorted) {
      double near = Math.max(0.3, ONE_LINE * letter.size());
      if (rows.isEmpty() || letter.baseline() - last > near) {
        rows.add(new ArrayList<>());
      }
      rows.get(rows.size() - 1).add(letter);
      last = letter.baseline();
    }
    // Letters drawn twice, a hair apart to look bold, are told by their place, so the order of
    // drawing decides among equals.
    rows.forEach(row -> row.sort(Comparator.comparingDouble(Letter::left)));
    return rows;
  }

  private static void split(List<Letter> row, List<Word> found) {
    List<Letter> word = new ArrayList<>();
    for (Letter letter : row) {
      if (!word.isEmpty()) {
        Letter before = word.get(word.size() - 1);
        if (isAgain(before, letter)) {
          continue;
        }
        double size = Math.max(before.size(), letter.size());
        boolean otherSize = Math.min(before.size(), letter.size()) < 0.86 * size;
        if (letter.isBlank() || letter.left() - before.right() > GAP * size || otherSize) {
          end(word, found);
        }
      }
      if (!letter.isBlank()) {
        word.add(letter);
      }
    }
    end(word, found);
  }

  private static boolean isAgain(Letter before, Letter letter) {
    return before.text().equals(letter.text())
        && letter.left() - before.left() < 0.3 * Math.min(before.width(), letter.width());
  }

  private static void end(List<Letter> word, List<Word> found) {
    if (word.isEmpty()) {
      return;
    }
    StringBuilder text = new StringBuilder();
    word.forEach(letter -> text.append(letter.text()));
    String whole = java.text.Normalizer.normalize(text, java.text.Normalizer.Form.NFC);
    boolean breaks = whole.endsWith("\u00AD");
    whole = whole.replace("\u00AD", "");
    Letter first = word.get(0);
    if (!whole.isBlank()) {
      Box box =
          new Box(
              first.left(),
              first.baseline() - Letter.RISE * first.size(),
              word.stream().mapToDouble(Letter::right).max().orElse(first.right()),
              first.baseline() + Letter.DROP * first.size());
      long bold = word.stream().filter(Letter::bold).count();
      FootnoteSigns.set(
          new Word(
              whole.strip(),
              box,
              first.baseline(),
              first.size(),
              first.turn(),
              bold * 2 > word.size(),
              first.colour(),
              breaks,
              List.of()),
          found);
    }
    word.clear();
  }

  /** From the frame in which the line runs to the right back to the page. */
  private static Word turned(Word word) {
    if (word.turn() == Turn.NONE) {
      return word;
    }
    List<Mark> marks =
        word.marks().stream().map(m -> new Mark(m.text(), back(m.box(), word.turn()))).toList();
    double line = word.turn() == Turn.UP ? word.baseline() : -word.baseline();
    return new Word(
        word.text(),
        back(word.box(), word.turn()),
        line,
        word.size(),
        word.turn(),
        word.bold(),
        word.colour(),
        word.breaks(),
        marks);
  }

  private static Box back(Box box, Turn turn) {
    return switch (turn) {
      case DOWN -> Box.between(-box.top(), box.left(), -box.bottom(), box.right());
      case UP -> Box.between(box.top(), -box.left(), box.bottom(), -box.right());
      case OVER -> Box.between(-box.left(), -box.top(), -box.right(), -box.bottom());
      default -> box;
    };
  }
}
