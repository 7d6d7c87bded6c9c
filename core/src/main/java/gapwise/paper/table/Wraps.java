package gapwise.paper.table;

import gapwise.paper.Box;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Lines of a table's body put together to rows. A line goes with the one above it where rules or
 * spacing say so, or where it cannot be a row of its own.
 */
final class Wraps {
  /** Lines of one cell are closer than rows by this factor or more. */
  private static final double CLOSER = 0.85;

  private Wraps() {}

  /**
   * Rows.
   *
   * @param rules level lines within the body, from top to bottom
   */
  static List<Strip> rows(List<Strip> lines, List<Box> rules) {
    if (lines.size() < 2) {
      return lines;
    }
    boolean ruled = isRuled(lines, rules);
    double pitch = pitch(lines);
    List<Strip> rows = new ArrayList<>();
    rows.add(lines.get(0));
    double last = lines.get(0).bottom();
    boolean lastWasLabel = lines.get(0).onlyFirst();
    for (int i = 1; i < lines.size(); i++) {
      Strip line = lines.get(i);
      Strip row = rows.get(rows.size() - 1);
      double from = last;
      boolean parted =
          rules.stream()
              .anyMatch(
                  r ->
                      r.centre() > from
                          && r.centre() < line.top() + 0.2 * line.size()
                          && isBetween(r, from, line));
      double gap = line.top() - last;
      boolean joins =
          ruled ? !parted : !parted && goesOn(row, line, gap < CLOSER * pitch, lastWasLabel);
      if (joins) {
        rows.set(rows.size() - 1, row.with(line));
      } else {
        rows.add(line);
      }
      lastWasLabel = line.onlyFirst() && (!joins || lastWasLabel);
      last = line.bottom();
    }
    return rows;
  }

  private static boolean isBetween(Box rule, double above, Strip line) {
    return rule.centre() > above && rule.centre() < line.top() - 0.3 * line.size();
  }

  private static boolean isRuled(List<Strip> lines, List<Box> rules) {
    long parted = 0;
    for (int i = 1; i < lines.size(); i++) {
      double above = lines.get(i - 1).bottom();
      Strip line = lines.get(i);
      parted += rules.stream().anyMatch(r -> isBetween(r, above, line)) ? 1 : 0;
    }
    return parted >= 2 && parted * 3 >= lines.size() - 1;
  }

  private static boolean goesOn(Strip row, Strip line, boolean closer, boolean afterLabel) {
    boolean lowerCase = startsLower(line.first());
    boolean open = isOpen(row.first());
    if (!line.hasFirst()) {
      return closer || line.cells().size() * 2 <= row.cells().size();
    }
    if (line.onlyFirst()) {
      return (closer || lowerCase || open) && !(startsUpper(line.first()) && !closer && !open);
    }
    // A label that began on lines of its own ends beside its values.
    return afterLabel && row.onlyFirst() && (lowerCase || open);
  }

  private static boolean startsLower(String text) {
    return !text.isEmpty() && (Character.isLowerCase(text.charAt(0)) || text.startsWith("("));
  }

  private static boolean startsUpper(String text) {
    return !text.isEmpty() && Character.isUpperCase(text.charAt(0));
  }

  private static boolean isOpen(String text) {
    long opened = text.chars().filter(c -> c == '(').count();
    long closed = text.chars().filter(c -> c == ')').count();
    return opened > closed
        || text.endsWith(",")
        || text.matches(".*(-|\u2010| of| and| or| to| the| with| in)");
  }

  /** The usual distance of rows: of lines that have values as well as a first cell. */
  private static double pitch(List<Strip> lines) {
    double[] gaps = new double[lines.size() - 1];
    int count = 0;
    for (int i = 1; i < lines.size(); i++) {
      boolean whole = lines.get(i).hasFirst() && lines.get(i).cells().size() > 1;
      if (whole) {
        gaps[count++] = lines.get(i).top() - lines.get(i - 1).bottom();
      }
    }
    if (count == 0) {
      return 0;
    }
    double[] sorted = Arrays.copyOf(gaps, count);
    Arrays.sort(sorted);
    return sorted[count / 2];
  }
}
