package gapwise.server.page.reference;

import static gapwise.sentence.Sentences.say;

import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.reference.format.SearchDone;
import gapwise.reference.format.SearchLog;
import gapwise.reference.kept.LoadedFile;
import gapwise.server.job.PostedForm;
import gapwise.server.job.reference.Waiting;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The form by which a load is accepted: who accepts it, and the log of its searches.
 *
 * @param who the person
 * @param searches the searches, those lines of which something was typed
 */
public record KeepForm(String who, List<SearchDone> searches) {
  private static final int LONGEST_NAME = 80;

  /** Lines that are taken; more come as a CSV file. */
  private static final int MOST_ROWS = 200;

  /** Letters of a search; the longest strategies fill some pages. */
  private static final int LONGEST_WORDS = 20_000;

  private static final List<String> PARTS = List.of("database", "date", "words", "count", "limits");

  public KeepForm {
    searches = List.copyOf(searches);
  }

  /**
   * A line of the form.
   *
   * @param file name of the file with the records; may be empty
   */
  public record Row(
      String file, String database, String date, String words, String count, String limits) {
    static Row of(SearchDone search) {
      return new Row(
          search.file().orElse(""),
          search.database(),
          search.date().toString(),
          search.words(),
          search.count().isPresent() ? Integer.toString(search.count().getAsInt()) : "",
          search.limits().orElse(""));
    }
  }

  /** A line for each search of the log that was handed in, and for each file that none names. */
  static List<Row> rows(Waiting waiting) {
    List<Row> rows = new ArrayList<>();
    waiting.searches().stream().limit(MOST_ROWS).map(Row::of).forEach(rows::add);
    for (LoadedFile file : waiting.files()) {
      boolean named = rows.stream().anyMatch(row -> row.file().equalsIgnoreCase(file.file()));
      if (!named && rows.size() < MOST_ROWS) {
        rows.add(new Row(file.file(), "", "", "", "", ""));
      }
    }
    return List.copyOf(rows);
  }

  /**
   * Reads what was sent.
   *
   * @param today no search was made after this day
   * @throws WrongInputException with everything that is missing or wrong
   */
  static KeepForm read(PostedForm form, LocalDate today) {
    Problems problems = new Problems();
    String who = form.first("who");
    if (who.isBlank() || who.length() > LONGEST_NAME) {
      problems.add("who", "missing-value", say("references.who", Map.of("most", LONGEST_NAME)));
    }
    List<SearchDone> searches = new ArrayList<>();
    int rows = form.first("rows").matches("\\d{1,3}") ? Integer.parseInt(form.first("rows")) : 0;
    for (int row = 0; row < Math.min(rows, MOST_ROWS); row++) {
      String end = "-" + row;
      boolean typed = PARTS.stream().anyMatch(part -> !form.first(part + end).isBlank());
      if (typed) {
        search(form, row, who, today, problems).ifPresent(searches::add);
      }
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return new KeepForm(who, searches);
  }

  private static Optional<SearchDone> search(
      PostedForm form, int row, String who, LocalDate today, Problems problems) {
    String place = say("references.search-line", Map.of("line", row + 1));
    Optional<SearchDone> search =
        SearchLog.search(
            place + ", ",
            part ->
                Optional.of(part.equals("who") ? who : form.first(part + "-" + row))
                    .filter(text -> !text.isBlank()),
            problems);
    if (search.filter(one -> one.date().isAfter(today)).isPresent()) {
      problems.add(place + ", date", "future-date", say("references.future"));
    }
    if (search.filter(one -> one.words().isBlank()).isPresent()) {
      problems.add(place + ", words", "missing-value", say("references.no-words"));
    }
    if (search.filter(one -> one.words().length() > LONGEST_WORDS).isPresent()) {
      problems.add(
          place + ", words",
          "too-long",
          say("references.long-words", Map.of("most", LONGEST_WORDS)));
    }
    return search;
  }
}
