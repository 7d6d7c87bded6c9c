package gapwise.figure.ranks;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Svg;
import java.util.Locale;

/**
 * How the part of one rank looks: the first dark, the others ever lighter, so that grey print tells
 * the same. Between them stands a bright line.
 *
 * @param fill colour of the part
 * @param ink colour of the number on it
 */
record RankShade(String fill, String ink) {
  /** Grey of the second and of the last rank; dark letters reach 4.5 on both. */
  private static final int SECOND = 168;

  private static final int LAST = 240;

  static RankShade of(int rank, int ranks) {
    if (rank == 0) {
      return new RankShade(Ink.INK, Ink.GROUND);
    }
    double share = ranks > 2 ? (rank - 1.0) / (ranks - 2) : 0;
    int grey = (int) Math.round(SECOND + share * (LAST - SECOND));
    return new RankShade(
        String.format(Locale.ROOT, "#%02X%02X%02X", grey, grey - 3, Math.max(0, grey - 12)),
        Ink.INK);
  }

  void part(Svg svg, double x, double top, double width, double height) {
    svg.shape(
        "M" + Svg.at(x, top) + "h" + Svg.n(width) + "v" + Svg.n(height) + "h" + Svg.n(-width) + "Z",
        fill,
        Ink.GROUND,
        1.2,
        "");
  }
}
