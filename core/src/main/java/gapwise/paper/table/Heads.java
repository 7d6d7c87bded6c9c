package gapwise.paper.table;

import gapwise.paper.Box;
import java.util.List;
import java.util.regex.Pattern;

/** How many lines of a table head its columns. */
final class Heads {
  /** What stands in a body rather than in a head. */
  private static final Pattern VALUE =
      Pattern.compile(
          "[<>≤≥≈~=±+−-]?\\s?[0-9].*|n/?a|N/?A|nr|NR|[-–—−]|yes|no|Yes|No|[mfMF]|[Mm]ale|[Ff]emale");

  private Heads() {}

  /**
   * How many of the first lines are the head.
   *
   * @param rules level lines within the table, from top to bottom, that run over most of it
   */
  static int lines(List<RowLine> lines, List<Box> rules) {
    double first = lines.get(0).baseline() - 0.8 * lines.get(0).size();
    for (Box rule : rules) {
      if (rule.centre() > first) {
        int above = (int) lines.stream().filter(l -> l.baseline() < rule.centre() + 1).count();
        if (above > 0 && above <= 8 && above < lines.size()) {
          return valued(lines.subList(0, above)) ? 0 : above;
        }
      }
    }
    int count = 0;
    while (count < lines.size() - 1 && count < 6 && !hasValue(lines.get(count))) {
      if (count > 0 && isLabel(lines.get(count), lines.get(0))) {
        break;
      }
      count++;
    }
    boolean noneHasValues = lines.stream().noneMatch(Heads::hasValue);
    return noneHasValues ? 1 : count;
  }

  /** Words that begin anew in the first column, below heads: a label over rows of the body. */
  private static boolean isLabel(RowLine line, RowLine head) {
    String text = line.stretches().get(0).text();
    return line.stretches().size() == 1
        && head.stretches().size() > 1
        && line.box().left() < head.stretches().get(1).box().left() - 2 * line.size()
        && Character.isUpperCase(text.codePointAt(0));
  }

  private static boolean valued(List<RowLine> lines) {
    long values = lines.stream().filter(Heads::hasValue).count();
    return values > 1 && values * 2 > lines.size();
  }

  private static boolean hasValue(RowLine line) {
    List<String> texts = line.stretches().stream().map(s -> s.text()).toList();
    long values = texts.stream().skip(texts.size() > 1 ? 1 : 0).filter(Heads::isValue).count();
    boolean numbered = texts.size() > 1 && texts.get(0).matches("[0-9]{1,4}[.)]?");
    return values > 0 && (numbered || values * 3 >= texts.size() - 1);
  }

  private static boolean isValue(String text) {
    return VALUE.matcher(text).matches() && !text.matches("[0-9]+ (weeks?|months?|years?|mo|yr)");
  }
}
