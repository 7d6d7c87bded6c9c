package gapwise.reference.format;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A search of one database, as its log tells it.
 *
 * @param database database or register
 * @param date day of the search
 * @param words what was searched for, in the words of the database
 * @param count records that the database reported
 * @param file name of the file with the records; empty if none is named
 * @param limits limits of language, years or kind; empty if none
 * @param who who searched; empty if not told
 */
public record SearchDone(
    String database,
    LocalDate date,
    String words,
    OptionalInt count,
    Optional<String> file,
    Optional<String> limits,
    Optional<String> who) {
  public SearchDone {
    Objects.requireNonNull(date, "date");
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(count, "count");
    Objects.requireNonNull(file, "file");
    Objects.requireNonNull(limits, "limits");
    Objects.requireNonNull(who, "who");
    if (database.isBlank()) {
      throw new IllegalArgumentException("a search needs its database");
    }
  }

  /**
   * What is to be told when the files that were read are held against the log: a file with another
   * number of records than was reported, a file that was not read, a file that no search names.
   */
  public static List<String> heldAgainst(List<SearchDone> searches, List<FileAnswer> files) {
    return CountCheck.of(searches, files);
  }
}
