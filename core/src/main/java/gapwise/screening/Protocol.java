package gapwise.screening;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * What a team agreed on before it screens.
 *
 * @param question what the review asks; may be empty
 * @param reasons why a paper can stay out, in the order in which they are asked; the first that
 *     holds is the reason
 * @param wordsFor words that speak for a paper, marked in titles and abstracts
 * @param wordsAgainst words that speak against it
 */
public record Protocol(
    String question, List<String> reasons, List<String> wordsFor, List<String> wordsAgainst) {
  /** Most reasons: each has one digit as its key. */
  public static final int MOST_REASONS = 9;

  /** Most words of a list. */
  public static final int MOST_WORDS = 60;

  /** Longest reason and word, in letters. */
  public static final int LONGEST = 80;

  /** Longest question. */
  public static final int LONGEST_QUESTION = 600;

  /** To begin with; common practice, no source. */
  public static final Protocol USUAL =
      new Protocol(
          "",
          List.of(
              "No missing bone of the lower limb",
              "Not after an injury",
              "No reconstruction or amputation studied",
              "No result of patients",
              "Single case or fewer patients than agreed",
              "Review, comment or protocol",
              "The same patients as another paper"),
          List.of(
              "bone defect*", "segmental", "bone loss", "nonunion*", "tibia*", "femur", "femoral"),
          List.of(
              "tumour*", "tumor*", "mandib*", "rat", "rats", "rabbit*", "sheep", "finite element"));

  public Protocol {
    reasons = List.copyOf(reasons);
    wordsFor = List.copyOf(wordsFor);
    wordsAgainst = List.copyOf(wordsAgainst);
    if (question.length() > LONGEST_QUESTION) {
      throw new IllegalArgumentException("the question is longer than " + LONGEST_QUESTION);
    }
    check(reasons, MOST_REASONS, "reasons");
    check(wordsFor, MOST_WORDS, "words for a paper");
    check(wordsAgainst, MOST_WORDS, "words against a paper");
  }

  private static void check(List<String> all, int most, String what) {
    Set<String> seen = new HashSet<>();
    for (String one : all) {
      if (one.isBlank() || one.length() > LONGEST || !seen.add(one)) {
        throw new IllegalArgumentException(what + " must differ and be short, had '" + one + "'");
      }
    }
    if (all.size() > most) {
      throw new IllegalArgumentException("at most " + most + " " + what);
    }
  }
}
