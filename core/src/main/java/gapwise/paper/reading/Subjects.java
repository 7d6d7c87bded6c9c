package gapwise.paper.reading;

import gapwise.evidence.vocabulary.Outcome;
import gapwise.printed.Wanted;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a number in a sentence is about, by the words of its trade that stand nearest to it. */
final class Subjects {
  /** Words further away speak of something else. */
  private static final int NEAR_LETTERS = 110;

  private static final List<Subject> MEASURED =
      List.of(
          arms("defect_length", "gaps?|defects?|missing bone|bone loss"),
          arms("age", "age[ds]?|years old"),
          arms(
              "follow_up", "follow(?:ed)?[- ]?up|were followed|was followed|seen for|observed for"),
          outcome("time-to-full-weight-bearing", "full weight(?:[- ]bearing)?"),
          outcome("external-fixation-time", "fixators?|frames?|external fixation"),
          outcome("time-to-union", "union|united|healed|healing|bones? joined|consolidated"),
          outcome("hospital-days", "hospital stay|in hospital|stay in hospital"),
          outcome("limb-length-discrepancy", "leg length|length discrepanc(?:y|ies)"));

  private static final List<Subject> COUNTED =
      List.of(
          arms("infected", "infected gaps?|infected defects?|were infected|was infected"),
          arms("male", "men|male|males"),
          arms("smokers", "smokers?|smoked"),
          arms("diabetics", "diabetics?|diabetes"),
          outcome("full-weight-bearing-reached", "full weight(?:[- ]bearing)?"),
          outcome("primary-union", "primary union|first attempt|planned operations alone"),
          outcome("final-union", "in the end|final union|finally (?:united|healed|joined)"),
          outcome("nonunion", "non-?unions?|not (?:unite|united|heal|healed|joined)"),
          outcome("union", "union|united|healed|joined|consolidated"),
          outcome("refracture", "refractures?|refractured"),
          outcome("secondary-amputation", "amputat(?:ed|ion|ions)"),
          outcome("infection-recurrence", "recurren(?:t|ce)|infection (?:came back|returned)"),
          outcome("pin-site-infection", "pin[- ](?:site|track|tract) infections?"),
          outcome("deep-infection", "deep infections?"),
          outcome("unplanned-reoperation", "reoperat(?:ed|ion|ions)|further operations?"));

  private record Subject(Wanted wanted, Pattern words) {}

  private Subjects() {}

  private static Subject arms(String column, String words) {
    return new Subject(Wanted.column("arms", column), pattern(words));
  }

  private static Subject outcome(String code, String words) {
    return new Subject(Wanted.outcome(Outcome.of(code)), pattern(words));
  }

  private static Pattern pattern(String words) {
    return Pattern.compile("(?i)\\b(?:" + words + ")\\b");
  }

  /** What a measured number of a sentence is about; empty where no word tells. */
  static Optional<Wanted> measured(String sentence, int from, int to) {
    return nearest(MEASURED, sentence, from, to);
  }

  /** What a count of a sentence is about. */
  static Optional<Wanted> counted(String sentence, int from, int to) {
    return nearest(COUNTED, sentence, from, to);
  }

  /** Of subjects equally near the first listed, which is the narrower. */
  private static Optional<Wanted> nearest(
      List<Subject> subjects, String sentence, int from, int to) {
    Optional<Wanted> best = Optional.empty();
    int least = NEAR_LETTERS;
    for (Subject subject : subjects) {
      Matcher words = subject.words().matcher(sentence);
      while (words.find()) {
        int away = Math.max(from - words.end(), words.start() - to);
        if (away >= 0 && away < least) {
          least = away;
          best = Optional.of(subject.wanted());
        }
      }
    }
    return best;
  }
}
