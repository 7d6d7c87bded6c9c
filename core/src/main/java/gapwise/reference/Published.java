package gapwise.reference;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Where and when a paper was published.
 *
 * @param journal journal, book or meeting, in full
 * @param shortJournal its abbreviation
 * @param date date as printed, such as "2009 Oct"
 * @param year year of publication
 * @param volume volume
 * @param issue issue
 * @param pages pages in full, such as 123-128
 * @param issn number of the journal
 * @param publisher publisher
 */
public record Published(
    Optional<String> journal,
    Optional<String> shortJournal,
    Optional<String> date,
    OptionalInt year,
    Optional<String> volume,
    Optional<String> issue,
    Optional<String> pages,
    Optional<String> issn,
    Optional<String> publisher) {
  public Published {
    Objects.requireNonNull(journal, "journal");
    Objects.requireNonNull(shortJournal, "shortJournal");
    Objects.requireNonNull(date, "date");
    Objects.requireNonNull(year, "year");
    Objects.requireNonNull(volume, "volume");
    Objects.requireNonNull(issue, "issue");
    Objects.requireNonNull(pages, "pages");
    Objects.requireNonNull(issn, "issn");
    Objects.requireNonNull(publisher, "publisher");
  }

  /** As "Journal. 2009;12(3):45-67", of what is told. */
  public String line() {
    StringBuilder line = new StringBuilder();
    journal.or(() -> shortJournal).ifPresent(line::append);
    year.ifPresent(number -> line.append(line.isEmpty() ? "" : ". ").append(number));
    volume.ifPresent(text -> line.append(';').append(text));
    issue.ifPresent(text -> line.append('(').append(text).append(')'));
    pages.ifPresent(text -> line.append(':').append(text));
    return line.toString();
  }
}
