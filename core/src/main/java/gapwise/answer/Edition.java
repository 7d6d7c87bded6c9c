package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import java.time.LocalDate;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * The state of program and evidence base that a figure was made from; it travels in the figure.
 *
 * @param program version of the program
 * @param change number of the last change of the evidence base; empty for data from elsewhere
 * @param date day of that change, in universal time; empty for data from elsewhere and where
 *     nothing was changed yet
 */
public record Edition(String program, OptionalLong change, Optional<LocalDate> date) {
  private static final int DIGITS_OF_HASH = 12;

  public Edition {
    Objects.requireNonNull(program, "program");
    Objects.requireNonNull(change, "change");
    Objects.requireNonNull(date, "date");
  }

  /** A program whose data come from elsewhere than an evidence base. */
  public static Edition ofProgram(String version) {
    return new Edition(version, OptionalLong.empty(), Optional.empty());
  }

  /**
   * Program and evidence base in words: the day for people, and the number that finds the state
   * again. Both are of the evidence and not of the moment, so that a figure of it stays the same.
   */
  public String words() {
    if (change.isEmpty()) {
      return say("answer.edition", Map.of("program", program));
    }
    String number = String.valueOf(change.getAsLong());
    return date.map(
            day ->
                say(
                    "answer.edition-of-day",
                    Map.of("program", program, "date", day.toString(), "change", number)))
        .orElseGet(
            () -> say("answer.edition-at-change", Map.of("program", program, "change", number)));
  }

  /** The same with the beginning of the hash of the records that were read. */
  public String words(String sha256) {
    return wordsOfData(sha256.substring(0, Math.min(DIGITS_OF_HASH, sha256.length())));
  }

  /** The same with what tells the records apart that were read. */
  public String wordsOfData(String data) {
    return say("answer.edition-of-data", Map.of("edition", words(), "data", data));
  }
}
