package gapwise.decision.sheet;

import java.util.List;
import java.util.regex.Pattern;

/**
 * How hard an English text is to read, from its counts. A number in digits is one word of one
 * syllable, a hyphenated word is one word (common practice, no source).
 *
 * @param words 1 or more
 * @param sentences 1 or more
 * @param syllables of all words
 * @param polysyllables words of three syllables or more
 */
record ReadingLevel(int words, int sentences, int syllables, int polysyllables) {
  private static final Pattern SENTENCE_ENDS = Pattern.compile("[.!?:]+(?:\\s+|$)");
  private static final Pattern BETWEEN_WORDS = Pattern.compile("[^A-Za-z0-9'-]+");
  private static final int MANY = 3;
  private static final int SENTENCES_OF_SMOG = 30;

  ReadingLevel {
    if (words < 1 || sentences < 1) {
      throw new IllegalArgumentException(
          "a text has words and sentences, had " + words + " and " + sentences);
    }
  }

  /**
   * Counts a text.
   *
   * @throws IllegalArgumentException naming a word whose syllables are not listed
   */
  static ReadingLevel of(String text, Syllables syllables) {
    int words = 0;
    int all = 0;
    int many = 0;
    List<String> sentences =
        SENTENCE_ENDS.splitAsStream(text).filter(one -> !one.isBlank()).toList();
    for (String sentence : sentences) {
      for (String word : BETWEEN_WORDS.split(sentence.strip())) {
        if (!word.isEmpty()) {
          int count = syllables.of(word);
          words++;
          all += count;
          many += count >= MANY ? 1 : 0;
        }
      }
    }
    return new ReadingLevel(words, sentences.size(), all, many);
  }

  /** School grade (Kincaid, Fishburne, Rogers &amp; Chissom, Navy Training Command 1975). */
  double kincaid() {
    return 0.39 * words / sentences + 11.8 * syllables / words - 15.59;
  }

  /** School grade for full understanding (McLaughlin, J Reading 1969;12:639). */
  double smog() {
    return 1.0430 * Math.sqrt((double) SENTENCES_OF_SMOG * polysyllables / sentences) + 3.1291;
  }
}
