package gapwise.paper.table;

import gapwise.paper.Box;
import gapwise.paper.Page;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Ruling lines of a page; pieces of one line, drawn cell by cell, are one. */
final class Rules {
  private static final double SAME = 1.5;

  private Rules() {}

  /** Level lines from top to bottom. */
  static List<Box> level(Page page) {
    List<Box> sorted = new ArrayList<>(page.levelRules());
    sorted.sort(Comparator.comparingDouble(Box::centre).thenComparing(Box::left));
    List<Box> joined = new ArrayList<>();
    for (Box rule : sorted) {
      int at = -1;
      for (int i = joined.size() - 1;
          i >= 0 && rule.centre() - joined.get(i).centre() < SAME;
          i--) {
        if (joined.get(i).sharedWidth(rule) > -SAME) {
          at = i;
        }
      }
      if (at < 0) {
        joined.add(rule);
      } else {
        joined.set(at, joined.get(at).with(rule));
      }
    }
    return joined;
  }

  /**
   * Where level lines drawn cell by cell touch, from left to right: the edges of columns.
   *
   * @param place of a table
   */
  static List<Double> seams(Page page, Box place) {
    List<Box> pieces =
        page.levelRules().stream()
            .filter(r -> place.grown(3).holds(r.middle(), r.centre()))
            .toList();
    List<double[]> seams = new ArrayList<>();
    for (Box left : pieces) {
      for (Box right : pieces) {
        if (Math.abs(left.centre() - right.centre()) < SAME
            && Math.abs(left.right() - right.left()) < SAME
            && left.middle() < right.middle()) {
          seams.add(new double[] {left.right(), left.centre()});
        }
      }
    }
    List<Double> found = new ArrayList<>();
    for (double[] seam : seams) {
      boolean known = found.stream().anyMatch(x -> Math.abs(x - seam[0]) < 2 * SAME);
      boolean again =
          seams.stream()
              .anyMatch(
                  o -> Math.abs(o[0] - seam[0]) < SAME && Math.abs(o[1] - seam[1]) > 2 * SAME);
      if (!known && again) {
        found.add(seam[0]);
      }
    }
    found.sort(Comparator.naturalOrder());
    return found;
  }

  /** Upright lines from left to right. */
  static List<Box> upright(Page page) {
    List<Box> sorted = new ArrayList<>(page.uprightRules());
    sorted.sort(Comparator.comparingDouble(Box::middle).thenComparing(Box::top));
    List<Box> joined = new ArrayList<>();
    for (Box rule : sorted) {
      int last = joined.size() - 1;
      if (last >= 0
          && rule.middle() - joined.get(last).middle() < SAME
          && joined.get(last).sharedHeight(rule) > -SAME) {
        joined.set(last, joined.get(last).with(rule));
      } else {
        joined.add(rule);
      }
    }
    return joined;
  }

  /**
   * Level lines above one another of one length, as they frame a table.
   *
   * @param lines from top to bottom
   */
  static List<List<Box>> frames(List<Box> lines) {
    List<List<Box>> frames = new ArrayList<>();
    for (Box line : lines) {
      List<Box> mine = null;
      for (List<Box> frame : frames) {
        Box last = frame.get(frame.size() - 1);
        if (Math.abs(last.left() - line.left()) < 4 && Math.abs(last.right() - line.right()) < 4) {
          mine = frame;
        }
      }
      if (mine == null) {
        mine = new ArrayList<>();
        frames.add(mine);
      }
      mine.add(line);
    }
    return frames;
  }
}
