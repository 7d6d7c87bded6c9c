package gapwise.figure.bubble;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import java.util.OptionalDouble;

/**
 * Where the data end on either side: dotted upright lines, named above the field, so that the words
 * cover neither bands nor marks.
 *
 * @param style sizes
 * @param field where things lie
 * @param left x before which the curve is a guess
 * @param right x after which the curve is a guess
 */
record BubbleWalls(Style style, BubbleField field, OptionalDouble left, OptionalDouble right) {
  private static final String WORDS = say("figure.beyond-data");

  /** Room that the words take above the field and the marks on its upper edge. */
  static double height(Style style) {
    return style.type().small() * 1.45;
  }

  private Lettering small() {
    return style.small();
  }

  private double gap() {
    return small().size() * 0.4;
  }

  /** Where the words before the data begin, held on the sheet. */
  private double leftWords() {
    double wished = left.orElse(0) - gap() - small().width(WORDS);
    return Math.max(style.sheet().margin(), wished);
  }

  private double rightWords() {
    double most = style.sheet().right() - small().width(WORDS);
    return Math.min(most, right.orElse(0) + gap());
  }

  /** Where words of both sides would touch, the key alone tells what is dashed. */
  private boolean apart() {
    return left.isEmpty()
        || right.isEmpty()
        || leftWords() + small().width(WORDS) + 2 * gap() < rightWords();
  }

  void draw(Svg svg) {
    boolean told = apart();
    left.ifPresent(x -> wall(svg, x, told, leftWords(), leftWords() + small().width(WORDS) <= x));
    right.ifPresent(x -> wall(svg, x, told, rightWords(), rightWords() >= x));
  }

  private void wall(Svg svg, double x, boolean told, double words, boolean clear) {
    double above = field.top() - BubblePlot.greatestRadius(style);
    double middle = above - height(style) / 2;
    double from = told && clear ? middle - small().size() * 0.6 : field.top();
    svg.dashed(x, from, x, field.bottom(), Ink.SOFT, 1.1, "1.2 3");
    if (told) {
      double baseline = middle + small().middleToBaseline();
      svg.text(words, baseline, Svg.Anchor.START, small(), WORDS);
    }
  }
}
