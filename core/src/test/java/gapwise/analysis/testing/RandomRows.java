package gapwise.analysis.testing;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Random;

/** Rows as untidy as can be: zeros, blanks, single patients, numbers that no study has. */
public final class RandomRows {
  private RandomRows() {}

  /** Fills a row with all that a measure reads, of one group or of two. */
  public static void fill(Random random, ObjectNode row, String measure) {
    row.put("group", List.of("a", "a", "b", "").get(random.nextInt(4)));
    if (measure.equals("reported-effect")) {
      // now and then as large, small or exact as no study is
      double size = random.nextInt(6) > 0 ? 1 : Math.pow(10, random.nextInt(600) - 300);
      row.put("effect", (0.5 + random.nextInt(3)) * size);
      row.put("variance", random.nextInt(3) / 2.0 * (random.nextBoolean() ? size : 1));
      return;
    }
    boolean one = List.of("proportion", "mean", "incidence-rate").contains(measure);
    for (String group : one ? List.of("") : List.of("intervention.", "comparator.")) {
      int n = 1 + random.nextInt(5);
      double time = random.nextInt(6) > 0 ? n : Math.pow(10, random.nextInt(310) - 8);
      row.put(group + "n", n).put(group + "total", n).put(group + "personTime", time);
      row.put(group + "events", random.nextInt(n + 1));
      if (random.nextInt(8) > 0) {
        row.put(group + "mean", random.nextInt(4)).put(group + "sd", random.nextInt(3));
      } else {
        row.put(group + "median", 2).put(group + "q1", 1).put(group + "q3", 4);
      }
    }
  }
}
