package gapwise.paper.file;

import gapwise.paper.Guard;
import gapwise.paper.Word;
import gapwise.paper.Word.Mark;
import java.util.ArrayList;
import java.util.List;

/**
 * Gives small raised letters to the word that they stand behind, apart from its text, so that 47
 * with a raised 1 is never read as 471; small lowered ones become part of the word.
 */
final class RaisedMarks {
  /** A raised letter is smaller than its word by this factor or less. */
  private static final double SMALLER = 0.86;

  /** A mark follows its word without a space, which is a quarter of the size or a little less. */
  private static final double BESIDE = 0.16;

  private static final String[] EXPONENTS = {
    "\u2070", "\u00B9", "\u00B2", "\u00B3", "\u2074", "\u2075", "\u2076", "\u2077", "\u2078",
    "\u2079"
  };

  private RaisedMarks() {}

  /** Words by baseline and from left to right; small ones find their hosts. */
  static List<Word> attach(List<Word> words, Guard guard) {
    List<Word> result = new ArrayList<>(words);
    boolean[] gone = new boolean[words.size()];
    int low = 0;
    for (int i = 0; i < words.size(); i++) {
      guard.tick();
      Word small = words.get(i);
      while (low < i && words.get(low).baseline() < small.baseline() - 60) {
        low++;
      }
      int host = -1;
      double nearest = Double.MAX_VALUE;
      for (int j = low; j < words.size() && words.get(j).baseline() < small.baseline() + 60; j++) {
        guard.tick();
        double gap = small.box().left() - result.get(j).wholeBox().right();
        if (i != j && !gone[j] && isHost(result.get(j), small, gap) && Math.abs(gap) < nearest) {
          nearest = Math.abs(gap);
          host = j;
        }
      }
      if (host >= 0) {
        result.set(host, joined(result.get(host), small));
        gone[i] = true;
      }
    }
    List<Word> kept = new ArrayList<>();
    for (int i = 0; i < result.size(); i++) {
      if (!gone[i]) {
        kept.add(leading(result, gone, i, guard));
      }
    }
    return kept;
  }

  /** A mark before the note that it stands for is put on the line of that note. */
  private static Word leading(List<Word> words, boolean[] gone, int at, Guard guard) {
    Word small = words.get(at);
    for (int i = at + 1; i < words.size(); i++) {
      guard.tick();
      Word next = words.get(i);
      double down = next.baseline() - small.baseline();
      if (down > 0.8 * next.size() && down > 12) {
        break;
      }
      double gap = next.box().left() - small.box().right();
      if (!gone[i]
          && small.size() < SMALLER * next.size()
          && small.text().length() <= 3
          && down > 0.12 * next.size()
          && down < 0.8 * next.size()
          && gap > -0.25 * next.size()
          && gap < 0.5 * next.size()) {
        return small.on(next.baseline());
      }
    }
    return small;
  }

  private static boolean isHost(Word host, Word small, double gap) {
    double size = host.size();
    double raised = host.baseline() - small.baseline();
    boolean beside = gap > -0.25 * size && gap < BESIDE * size;
    boolean lifted = raised > 0.12 * size && raised < 0.8 * size;
    boolean lowered = raised < -0.05 * size && raised > -0.4 * size;
    return small.size() < SMALLER * size && beside && (lifted || lowered);
  }

  private static Word joined(Word host, Word small) {
    boolean raised = small.baseline() < host.baseline();
    if (!raised) {
      return host.withText(host.text() + small.text(), host.box().with(small.box()));
    }
    if (FootnoteSigns.isPower(host.text(), small.text())) {
      StringBuilder power = new StringBuilder(host.text());
      small.text().chars().forEach(c -> power.append(exponent((char) c)));
      return host.withText(power.toString(), host.box().with(small.box()));
    }
    return host.with(new Mark(small.text(), small.box()));
  }

  private static String exponent(char sign) {
    return Character.isDigit(sign)
        ? EXPONENTS[Character.digit(sign, 10)]
        : sign == '+' ? "\u207A" : "\u207B";
  }
}
