package gapwise.paper.table;

import gapwise.paper.Box;
import gapwise.paper.Line;
import gapwise.paper.Page;
import gapwise.paper.Stretches;
import gapwise.paper.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Words that announce a table, such as "Table 2. Results".
 *
 * @param words of all its lines
 * @param box around them
 * @param continued whether it says that the table goes on from the page before
 */
record Caption(String words, Box box, boolean continued) {
  private static final String NUMBER = "(?:[A-Z]?[0-9]{1,2}[a-zA-Z]?|[IVX]{1,5})";

  /** A number with a stop or colon behind it, or alone on the line; "Table 2 lists" is prose. */
  private static final Pattern BEGINS =
      Pattern.compile(
          "(?i:Table|Tab\\.|Tabelle|Tableau|Tabla|Tabella)\\s?"
              + NUMBER
              + "(?:[.:|–—]|\\s*\\(|$).*");

  private static final Pattern BOLD =
      Pattern.compile("(?i:Table|Tab\\.|Tabelle|Tableau|Tabla|Tabella) ?" + NUMBER + "\\b.*");

  private static final Pattern CONTINUED =
      Pattern.compile("(?i).*\\b(?:continued|cont['’]?d|cont\\.|Fortsetzung|suite)\\b.*");

  static List<Caption> on(Page page) {
    List<Caption> found = new ArrayList<>();
    List<Line> stretches =
        Stretches.of(page.words().stream().filter(w -> w.turn() == Word.Turn.NONE).toList(), 1.2);
    for (int i = 0; i < stretches.size(); i++) {
      Line line = stretches.get(i);
      boolean bold = line.words().get(0).bold() && BOLD.matcher(line.text()).matches();
      if (bold || BEGINS.matcher(line.text()).matches()) {
        found.add(whole(line, stretches));
      }
    }
    return found;
  }

  /** With the lines that it goes on over: below it, as near as lines are, whole to the margin. */
  private static Caption whole(Line first, List<Line> stretches) {
    StringBuilder words = new StringBuilder(first.text());
    Box box = first.box();
    Line last = first;
    boolean more = true;
    while (more) {
      more = false;
      for (Line line : stretches) {
        double down = line.baseline() - last.baseline();
        boolean below = down > 0.5 * last.size() && down < 1.3 * last.size();
        boolean alone =
            stretches.stream()
                .noneMatch(
                    o ->
                        o != line
                            && Math.abs(o.baseline() - line.baseline()) < 1
                            && Math.min(
                                    Math.abs(o.box().left() - line.box().right()),
                                    Math.abs(line.box().left() - o.box().right()))
                                < 60);
        if (below
            && alone
            && Math.abs(line.box().left() - first.box().left()) < 2
            && Math.abs(line.size() - first.size()) < 0.6
            && last.box().right() > 0.8 * line.box().right()) {
          words.append(' ').append(line.text());
          box = box.with(line.box());
          last = line;
          more = true;
          break;
        }
      }
    }
    return new Caption(words.toString(), box, CONTINUED.matcher(words.toString()).matches());
  }
}
