package gapwise.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.answer.DemonstrationFigures;
import gapwise.figure.drawing.Contrast;
import gapwise.figure.drawing.DrawnSvg;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.file.Painted;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What an eye refuses in a drawing: words over words, words that leave their drawing, words too
 * small to read, words that do not stand out from what is behind them. Every kind of figure in the
 * states that break a layout, in every medium, and figures of the demonstration base.
 */
class EyeTest {
  /** Points below which nothing is set, at the size the medium is used at; our choice. */
  private static final double LEAST_POINTS = 9;

  /** A slide is shown on a page 13.33 in wide, as presentation programs make them by default. */
  private static final double SLIDE_INCHES = 40 / 3.0;

  /** WCAG 2.1, criterion 1.4.3 (AA). */
  private static final double LEAST_CONTRAST = 4.5;

  /**
   * Of the box of a word so much may lie on something too near to its own colour: a grid line or a
   * dotted line that ends at a word, and the softened edges of what stands beside it.
   */
  private static final double MOST_STRUCK = 0.02;

  @TempDir private static Path home;

  private static Map<String, Figure> figures = new LinkedHashMap<>();

  /** Read once, since the demonstration base takes a while. */
  private static synchronized Map<String, Figure> figures() {
    if (figures.isEmpty()) {
      figures.putAll(FiguresThatHurt.byName());
      DemonstrationFigures.byName(home)
          .forEach((name, figure) -> figures.put("demonstration: " + name, figure));
    }
    return figures;
  }

  static Stream<Setting> settings() {
    return Stream.concat(
        Stream.of(Medium.values()).map(Setting::alone),
        Stream.of(Medium.PAGE, Medium.PHONE).map(Setting::withinPage));
  }

  @ParameterizedTest
  @MethodSource("settings")
  void nothingIsRefused(Setting setting) {
    List<String> refused = new ArrayList<>();
    figures()
        .forEach(
            (name, figure) -> {
              int sheet = 0;
              for (Picture picture : figure.draw(setting)) {
                String where = name + ", sheet " + ++sheet + ": ";
                refusals(picture, setting.medium()).forEach(each -> refused.add(where + each));
              }
            });
    assertEquals("", String.join("\n", refused));
  }

  @Test
  void theEyeSeesWhatItIsMadeToRefuse() {
    Picture good = FiguresThatHurt.byName().get("forest of ratios").draw(Medium.SLIDE).get(0);
    assertEquals(List.of(), refusals(good, Medium.SLIDE));
    String text = "<text x=\"40\" y=\"300\" font-size=\"16\">";
    refuses(
        good, text + "one</text>\n<text x=\"46\" y=\"304\" font-size=\"16\">two</text>\n", "over");
    refuses(good, "<text x=\"1270\" y=\"700\" font-size=\"16\">leaves</text>\n", "leaves");
    refuses(good, "<text x=\"4\" y=\"715\" font-size=\"8\">small</text>\n", "small");
    refuses(good, "<text x=\"4\" y=\"715\" font-size=\"16\" fill=\"#D9D5CB\">x</text>\n", "pale");
    refuses(
        good,
        "<rect x=\"0\" y=\"700\" width=\"90\" height=\"20\" fill=\"#1B2430\"/>\n"
            + "<text x=\"4\" y=\"715\" font-size=\"16\">dark on dark</text>\n",
        "pale");
  }

  private static void refuses(Picture good, String added, String why) {
    String svg = good.svg().replace("</svg>", added + "</svg>");
    List<String> refused = refusals(new Picture(svg, good.width(), good.height()), Medium.SLIDE);
    assertTrue(refused.stream().anyMatch(each -> each.contains(why)), () -> why + ": " + refused);
  }

  private static List<String> refusals(Picture picture, Medium medium) {
    List<String> refused = new ArrayList<>();
    List<DrawnSvg.Letters> letters = DrawnSvg.of(picture).letters();
    BufferedImage behind = Painted.behindTheWords(picture);
    for (int i = 0; i < letters.size(); i++) {
      DrawnSvg.Letters one = letters.get(i);
      for (DrawnSvg.Letters other : letters.subList(0, i)) {
        if (one.overlaps(other)) {
          refused.add("'" + one.text() + "' over '" + other.text() + "'");
        }
      }
      if (one.left() < 0
          || one.right() > picture.width()
          || one.top() < 0
          || one.bottom() > picture.height()) {
        refused.add("'" + one.text() + "' leaves the drawing");
      }
      double points = one.size() * pointsPerUnit(picture, medium);
      if (points < LEAST_POINTS - 1e-6) {
        refused.add("'" + one.text() + "' is too small: " + points + " pt");
      }
      double struck = struck(one, behind);
      if (struck > MOST_STRUCK) {
        refused.add(
            String.format("'%s' is pale or struck on %.0f %% of it", one.text(), 100 * struck));
      }
    }
    return refused;
  }

  private static double pointsPerUnit(Picture picture, Medium medium) {
    return medium == Medium.SLIDE ? 72 * SLIDE_INCHES / picture.width() : 72 / 96.0;
  }

  /** The share of a word's box, without its tails, that its letters do not stand out from. */
  private static double struck(DrawnSvg.Letters word, BufferedImage behind) {
    int near = 0;
    int all = 0;
    Map<Integer, Boolean> known = new LinkedHashMap<>();
    int bottom = (int) Math.min(behind.getHeight(), word.bottom() - 0.2 * word.size());
    for (int y = (int) Math.max(0, word.top()); y < bottom; y++) {
      int right = (int) Math.min(behind.getWidth(), word.right());
      for (int x = (int) Math.max(0, word.left()); x < right; x++) {
        all++;
        int colour = behind.getRGB(x, y) & 0xFFFFFF;
        if (known.computeIfAbsent(colour, ground -> isNear(word.fill(), ground))) {
          near++;
        }
      }
    }
    return all == 0 ? 0 : (double) near / all;
  }

  private static boolean isNear(String letters, int ground) {
    return Contrast.between(letters, String.format("#%06X", ground)) < LEAST_CONTRAST;
  }
}
