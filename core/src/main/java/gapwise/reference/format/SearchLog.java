package gapwise.reference.format;

import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Reads the log of searches from a table with one row a search. */
public final class SearchLog {
  /** What each column is called; the first word is ours, the others are taken too. */
  private static final Map<String, List<String>> COLUMNS = columns();

  /** Searches of one review; more are no log of searches. */
  private static final int MOST_SEARCHES = 1_000;

  private SearchLog() {}

  private static Map<String, List<String>> columns() {
    Map<String, List<String>> columns = new LinkedHashMap<>();
    columns.put("database", List.of("database", "source", "register"));
    columns.put("date", List.of("date", "date_searched", "day"));
    columns.put("words", List.of("words", "query", "search", "strategy"));
    columns.put("count", List.of("count_reported", "count", "records", "hits", "number"));
    columns.put("file", List.of("file", "file_name"));
    columns.put("limits", List.of("limits", "filters"));
    columns.put("who", List.of("who", "searched_by", "person"));
    return columns;
  }

  /**
   * Reads a log (RFC 4180, commas or semicolons, UTF-8 or what {@link ReferenceReader} reads).
   *
   * @throws WrongInputException with every row and column that is wrong
   * @throws IOException if the file cannot be opened or read from its medium
   */
  public static List<SearchDone> read(ReferenceFile file) throws IOException {
    String text = text(file);
    Problems problems = new Problems();
    List<SearchDone> searches = new ArrayList<>();
    String first = text.lines().findFirst().orElse("");
    char separator =
        first.chars().filter(sign -> sign == ';').count()
                > first.chars().filter(sign -> sign == ',').count()
            ? ';'
            : ',';
    try (CSVParser table =
        CSVFormat.RFC4180
            .builder()
            .setDelimiter(separator)
            .setIgnoreEmptyLines(true)
            .get()
            .parse(new java.io.StringReader(text))) {
      Optional<Map<String, Integer>> header = Optional.empty();
      for (CSVRecord row : table) {
        if (header.isEmpty()) {
          header = Optional.of(header(file.name(), row, problems));
        } else if (problems.isEmpty() || header.get().containsKey("database")) {
          row(file.name(), row, header.get(), problems).ifPresent(searches::add);
        }
        if (searches.size() > MOST_SEARCHES) {
          problems.add(
              file.name(),
              "too-many-searches",
              "The log has more than " + MOST_SEARCHES + " rows; give one row a search.");
          break;
        }
      }
      if (header.isEmpty()) {
        problems.add(
            file.name(),
            "empty-file",
            "The log is empty; its first row must name the columns "
                + String.join(", ", COLUMNS.keySet())
                + ".");
      }
    } catch (UncheckedIOException | CSVException wrong) {
      problems.add(
          file.name(),
          "wrong-quotation-marks",
          "The log has a quotation mark that is not closed, or text after a closing one; double a"
              + " quotation mark that belongs to the text.");
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return List.copyOf(searches);
  }

  private static String text(ReferenceFile file) throws IOException {
    StringBuilder text = new StringBuilder();
    FileLook look = FileLook.at(file);
    boolean foreign =
        look.problems().stream()
            .anyMatch(
                problem ->
                    problem.code().equals("not-references")
                        && problem.message().startsWith("The file is"));
    if (foreign) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  file.name(),
                  "no-log",
                  look.problems().get(0).message().replaceFirst("Nothing was read.*", "")
                      + "The log of searches is a CSV file.")));
    }
    try (TextSource source = new TextSource(file, look.encoding())) {
      int letter = source.read();
      while (letter >= 0 && text.length() < Limits.RECORD) {
        text.append((char) letter);
        letter = source.read();
      }
    }
    return text.toString();
  }

  private static Map<String, Integer> header(String file, CSVRecord row, Problems problems) {
    Map<String, Integer> places = new LinkedHashMap<>();
    for (int at = 0; at < row.size(); at++) {
      String name = row.get(at).strip().toLowerCase(Locale.ROOT).replaceAll("[\\s-]+", "_");
      for (Map.Entry<String, List<String>> column : COLUMNS.entrySet()) {
        if (column.getValue().contains(name)) {
          places.putIfAbsent(column.getKey(), at);
        }
      }
    }
    for (String needed : List.of("database", "date", "words", "count")) {
      if (!places.containsKey(needed)) {
        problems.add(
            file + ", row 1",
            "missing-column",
            "The column "
                + needed
                + " is missing; it may be called "
                + String.join(" or ", COLUMNS.getOrDefault(needed, List.of()))
                + ". Found were "
                + Limits.quoted(String.join(", ", row.toList()))
                + ".");
      }
    }
    return places;
  }

  private static Optional<SearchDone> row(
      String file, CSVRecord row, Map<String, Integer> header, Problems problems) {
    String place = file + ", row " + row.getRecordNumber();
    return search(place + ", column ", column -> cell(row, header, column), problems);
  }

  /**
   * A search from its parts, as a row of a log or a form gives them.
   *
   * @param place where it stands, before the name of a part
   * @param part the text of a part (database, date, words, count, file, limits, who) if it has one
   * @param problems gets what is wrong; then there is no search
   */
  public static Optional<SearchDone> search(
      String place, Function<String, Optional<String>> part, Problems problems) {
    String database = part.apply("database").orElse("");
    if (database.isBlank()) {
      problems.add(place + "database", "missing-value", "The database is missing; name it.");
      return Optional.empty();
    }
    Optional<LocalDate> date = date(part.apply("date").orElse(""));
    if (date.isEmpty()) {
      problems.add(
          place + "date",
          "no-date",
          "Found "
              + Limits.quoted(part.apply("date").orElse(""))
              + " where a day was expected, written as 2026-03-31.");
      return Optional.empty();
    }
    String count =
        part.apply("count").orElse("").replaceAll("(?<=\\d)[ ,.'\u00a0](?=\\d{3}\\b)", "");
    if (!count.isEmpty() && !count.matches("\\d{1,8}")) {
      problems.add(
          place + "count",
          "no-count",
          "Found "
              + Limits.quoted(count)
              + " where the number of records that the database reported was expected, such as"
              + " 1204; leave it empty if it is not known.");
      return Optional.empty();
    }
    return Optional.of(
        new SearchDone(
            database,
            date.get(),
            part.apply("words").orElse(""),
            count.isEmpty() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(count)),
            part.apply("file"),
            part.apply("limits"),
            part.apply("who")));
  }

  private static Optional<LocalDate> date(String text) {
    try {
      return Optional.of(LocalDate.parse(text.strip()));
    } catch (DateTimeException none) {
      return Optional.empty();
    }
  }

  private static Optional<String> cell(CSVRecord row, Map<String, Integer> header, String column) {
    return Optional.ofNullable(header.get(column))
        .filter(at -> at < row.size())
        .map(at -> row.get(at).strip())
        // The apostrophe by which SearchLogCsv keeps a text from being computed.
        .map(text -> text.matches("(?s)'[=+@-].*") ? text.substring(1) : text)
        .filter(text -> !text.isEmpty());
  }
}
