package gapwise.decision.sheet;

import java.util.List;

/**
 * How much stands on the printed page for the team, in lines as they are printed at its size of
 * letters. Widths are those of the usual letter in the typeface of the sheet, so the number is a
 * little too large for most texts; what the table leaves is given to what is told beside it.
 */
final class TeamFit {
  /**
   * Lines of the shorter of the two papers, in letters of 7 points; found by printing full sheets.
   */
  private static final int LINES = 87;

  /** Letters of a line over the whole width, and over the first column of the table. */
  private static final int WIDTH = 168;

  private static final int HEAD = 21;

  /** Heading, situation, fence, heads, key, model, day, address without prices, payer. */
  private static final int ALWAYS = 17;

  /** Prices of costs take so many lines of the address. */
  private static final int PRICES = 4;

  private TeamFit() {}

  /** As much of what stands beside the table as fits. */
  static TeamAnswers fitted(TeamPage page) {
    int table = page.lines().stream().mapToInt(line -> lines(line, page.methods().size())).sum();
    int rest = ALWAYS + table + lines(letters(page), WIDTH) + page.settled().size();
    TeamAnswers answers = page.answers();
    while (rest + lines(answers) > LINES) {
      var less = answers.less();
      if (less.isEmpty()) {
        break;
      }
      answers = less.get();
    }
    return answers;
  }

  private static int letters(TeamPage page) {
    return page.printed().stream().mapToInt(one -> one.label().length() + 2).sum()
        + page.retracted().length();
  }

  private static int lines(TeamAnswers answers) {
    return answers.paragraphs().stream().mapToInt(letters -> lines(letters, WIDTH)).sum()
        + (answers.asksCosts() ? PRICES : 0);
  }

  private static int lines(TeamPage.Line line, int methods) {
    int width = (WIDTH - HEAD) / methods - 1;
    return line.cells().stream()
        .mapToInt(
            cell ->
                lines(
                    List.of(
                        cell.value(),
                        cell.counted(),
                        cell.newCentre(),
                        cell.fit(),
                        cell.certainty()),
                    width))
        .reduce(lines(List.of(line.aspect(), line.outcome()), HEAD), Math::max);
  }

  private static int lines(List<String> texts, int width) {
    return texts.stream().mapToInt(text -> lines(text.length(), width)).sum();
  }

  private static int lines(int letters, int width) {
    return (letters + width - 1) / width;
  }
}
