package gapwise.reference.format;

import java.io.IOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** The log of searches as a table with one row a search, which {@link SearchLog} reads back. */
public final class SearchLogCsv {
  private SearchLogCsv() {}

  /** Writes the table (RFC 4180). */
  public static void write(List<SearchDone> searches, Appendable target) throws IOException {
    CSVPrinter table = CSVFormat.RFC4180.print(target);
    table.printRecord("database", "date", "words", "count_reported", "file", "limits", "who");
    for (SearchDone search : searches) {
      table.printRecord(
          harmless(search.database()),
          search.date(),
          harmless(search.words()),
          search.count().isPresent() ? search.count().getAsInt() : "",
          harmless(search.file().orElse("")),
          harmless(search.limits().orElse("")),
          harmless(search.who().orElse("")));
    }
  }

  /** A text that starts like a formula gets an apostrophe, so that no spreadsheet computes it. */
  private static String harmless(String value) {
    return value.matches("(?s)[=+@\\t\\r-].*") ? "'" + value : value;
  }
}
