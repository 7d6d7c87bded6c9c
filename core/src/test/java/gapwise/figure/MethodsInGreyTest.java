package gapwise.figure;

import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.vocabulary.Method;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.drawing.MethodShape;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Svg;
import gapwise.figure.file.Painted;
import java.awt.image.BufferedImage;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Marks of methods are told apart by their shape, as a printer without colour gives them. */
class MethodsInGreyTest {
  /** Pixels across a mark; at the size of a key a mark is a sixth of that. */
  private static final int ACROSS = 72;

  /** Two marks differ in so much of what either covers; our choice. */
  private static final double LEAST_DIFFERENCE = 0.12;

  private static boolean[] inked(Method method) {
    MethodMark black = new MethodMark(method.code(), method.label(), method.mark(), "#000000");
    Svg svg = new Svg().begin(ACROSS, ACROSS, "px", "img", method.label());
    svg.rect(0, 0, ACROSS, ACROSS, "#FFFFFF");
    MethodShape.draw(svg, black, ACROSS / 2.0, ACROSS / 2.0, ACROSS * 0.45);
    BufferedImage image = Painted.behindTheWords(new Picture(svg.end(), ACROSS, ACROSS));
    boolean[] inked = new boolean[ACROSS * ACROSS];
    for (int i = 0; i < inked.length; i++) {
      inked[i] = (image.getRGB(i % ACROSS, i / ACROSS) & 0xFF) < 128;
    }
    return inked;
  }

  @Test
  void noTwoMethodsHaveOneShape() {
    List<Method> methods = Method.vocabulary().all();
    for (Method one : methods) {
      for (Method other : methods.subList(0, methods.indexOf(one))) {
        boolean[] a = inked(one);
        boolean[] b = inked(other);
        int either = 0;
        int differing = 0;
        for (int i = 0; i < a.length; i++) {
          either += a[i] || b[i] ? 1 : 0;
          differing += a[i] != b[i] ? 1 : 0;
        }
        double share = (double) differing / either;
        assertTrue(share >= LEAST_DIFFERENCE, one.code() + " and " + other.code() + ": " + share);
      }
    }
  }
}
