package gapwise.paper;

import gapwise.paper.DrawnPath.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * What stands on one page.
 *
 * @param number from 1
 * @param width as displayed, points
 * @param height as displayed, points
 * @param words in reading order; turned words after the others
 * @param lines the words that are not turned, in reading order
 * @param columns of running text, from left to right; one box if there is one column
 * @param paths lines drawn, in the order of drawing
 * @param images boxes of embedded pictures
 * @param lettering where the words come from
 * @param damaged whether part of its drawing could not be read, so that words may be missing
 * @param unknownLetters letters whose meaning the file does not tell; each is U+FFFD in its word
 */
public record Page(
    int number,
    double width,
    double height,
    List<Word> words,
    List<Line> lines,
    List<Box> columns,
    List<DrawnPath> paths,
    List<Box> images,
    Lettering lettering,
    boolean damaged,
    int unknownLetters)
    implements PageReading {
  /** Where the words of a page come from. */
  public enum Lettering {
    /** Printed by the program that made the file. */
    PRINTED,
    /** Laid unseen over a picture by a program that guessed letters: each word may be wrong. */
    GUESSED,
    /** There are none, but a picture that fills much of the page: it was scanned. */
    SCANNED,
    /** There is neither. */
    NONE
  }

  /** A stroke thinner than this is a ruling line, a thicker one is an area; common practice. */
  private static final double THICKEST_RULE = 2.5;

  public Page {
    words = List.copyOf(words);
    lines = List.copyOf(lines);
    columns = List.copyOf(columns);
    paths = List.copyOf(paths);
    images = List.copyOf(images);
    Objects.requireNonNull(lettering, "lettering");
  }

  /** The page itself as a box. */
  public Box box() {
    return new Box(0, 0, width, height);
  }

  /** What a person should know of the words of this page; empty where nothing is unusual. */
  public List<String> notes() {
    List<String> notes = new ArrayList<>();
    if (lettering == Lettering.SCANNED) {
      notes.add(
          "Page "
              + number
              + " was scanned and holds no words, only a picture. Read its numbers by eye.");
    } else if (lettering == Lettering.GUESSED) {
      notes.add(
          "The words of page "
              + number
              + " were guessed from a scanned picture by another program. Compare each with the"
              + " picture.");
    } else if (lettering == Lettering.NONE) {
      notes.add("Page " + number + " holds no words.");
    }
    if (damaged) {
      notes.add(
          "Part of page "
              + number
              + " is damaged, so words or lines may be missing. Compare it with another copy.");
    }
    if (unknownLetters > 0) {
      notes.add(
          "The file does not tell what "
              + unknownLetters
              + (unknownLetters == 1 ? " letter" : " letters")
              + " of page "
              + number
              + " mean. Read the words that hold such letters from the picture.");
    }
    return List.copyOf(notes);
  }

  /** Straight lines from left to right, as those that rule a table, as flat boxes. */
  public List<Box> levelRules() {
    return rules(true);
  }

  /** Straight lines from top to bottom, as narrow boxes. */
  public List<Box> uprightRules() {
    return rules(false);
  }

  private List<Box> rules(boolean level) {
    List<Box> found = new ArrayList<>();
    for (DrawnPath path : paths) {
      Box whole = path.box();
      if (path.filled()) {
        add(found, whole, level, THICKEST_RULE);
      } else if (path.width() <= THICKEST_RULE) {
        for (int i = 0; i + 1 < path.points().size(); i++) {
          Point a = path.points().get(i);
          Point b = path.points().get(i + 1);
          add(found, Box.between(a.x(), a.y(), b.x(), b.y()), level, 0.5);
        }
      }
    }
    return List.copyOf(found);
  }

  private static void add(List<Box> found, Box box, boolean level, double thickest) {
    double along = level ? box.width() : box.height();
    double across = level ? box.height() : box.width();
    if (along >= 8 && across <= thickest) {
      found.add(box);
    }
  }
}
