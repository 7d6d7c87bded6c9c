package gapwise.evidence;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Where a study was published.
 *
 * @param title title as printed
 * @param authors authors: one text for people to read, and who they are
 * @param firstAuthor family name of the first author
 * @param year year of publication
 * @param journal journal
 * @param volume volume
 * @param issue issue
 * @param pages pages
 * @param doi digital object identifier without a resolver before it
 * @param pmid PubMed number
 * @param register number in a trial register
 * @param otherSpellings other spellings of author or title under which it is found
 */
public record Citation(
    String title,
    Optional<Authors> authors,
    Optional<String> firstAuthor,
    OptionalInt year,
    Optional<String> journal,
    Optional<String> volume,
    Optional<String> issue,
    Optional<String> pages,
    Optional<String> doi,
    Optional<String> pmid,
    Optional<String> register,
    List<String> otherSpellings) {

  public Citation {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(authors, "authors");
    Objects.requireNonNull(firstAuthor, "firstAuthor");
    Objects.requireNonNull(year, "year");
    Objects.requireNonNull(journal, "journal");
    Objects.requireNonNull(volume, "volume");
    Objects.requireNonNull(issue, "issue");
    Objects.requireNonNull(pages, "pages");
    Objects.requireNonNull(doi, "doi");
    Objects.requireNonNull(pmid, "pmid");
    Objects.requireNonNull(register, "register");
    otherSpellings = List.copyOf(otherSpellings);
    if (title.isBlank()) {
      throw new IllegalArgumentException("a citation needs a title");
    }
  }

  /** Letters of a title that stands for authors who are not known. */
  private static final int SHORT_TITLE = 32;

  /**
   * A short name for lists and plots: first author and year; the first words of the title, in
   * quotation marks, where no author is known.
   */
  @JsonIgnore
  public String label() {
    String name = firstAuthor.or(this::firstOfAuthors).orElseGet(this::shortTitle);
    return year.isPresent() ? name + " " + year.getAsInt() : name;
  }

  /** The family name that the list of authors starts with, as in "Example, A.; Other, B.". */
  private Optional<String> firstOfAuthors() {
    return authors
        .map(all -> all.text().split("[;,]", 2)[0].strip())
        .filter(name -> !name.isEmpty() && name.length() <= SHORT_TITLE);
  }

  private String shortTitle() {
    if (title.length() <= SHORT_TITLE) {
      return "\u201c" + title + "\u201d";
    }
    int end = title.lastIndexOf(' ', SHORT_TITLE);
    return "\u201c" + title.substring(0, end > 0 ? end : SHORT_TITLE).strip() + "\u2026\u201d";
  }

  /** The authors as one text; the first alone where no more are known. */
  @JsonIgnore
  public Optional<String> authorLine() {
    return authors.map(Authors::text).or(() -> firstAuthor);
  }

  /** The authors one by one; the first alone, by the family name, where no more are known. */
  @JsonIgnore
  public List<AuthorName> people() {
    return authors
        .map(Authors::names)
        .orElseGet(
            () ->
                firstAuthor
                    .filter(name -> !name.isBlank())
                    .map(name -> List.<AuthorName>of(new AuthorName.Person(name.strip(), "", "")))
                    .orElse(List.of()));
  }

  /** The citation as one line of text. */
  @JsonIgnore
  public String line() {
    StringBuilder line = new StringBuilder();
    authorLine().ifPresent(text -> line.append(text).append(". "));
    line.append(title).append('.');
    journal.ifPresent(text -> line.append(' ').append(text).append('.'));
    year.ifPresent(number -> line.append(' ').append(number));
    volume.ifPresent(text -> line.append(';').append(text));
    issue.ifPresent(text -> line.append('(').append(text).append(')'));
    pages.ifPresent(text -> line.append(':').append(text));
    doi.ifPresent(text -> line.append(". doi:").append(text));
    return line.toString();
  }

  /** Starts a value of which only the given parts are known. */
  public static Builder with(String title) {
    return new Builder(title);
  }

  /** Collects the parts that a paper gives. Not thread-safe. */
  public static final class Builder {
    private final String title;
    private Optional<Authors> authors = Optional.empty();
    private Optional<String> firstAuthor = Optional.empty();
    private OptionalInt year = OptionalInt.empty();
    private Optional<String> journal = Optional.empty();
    private Optional<String> volume = Optional.empty();
    private Optional<String> issue = Optional.empty();
    private Optional<String> pages = Optional.empty();
    private Optional<String> doi = Optional.empty();
    private Optional<String> pmid = Optional.empty();
    private Optional<String> register = Optional.empty();
    private List<String> otherSpellings = List.of();

    private Builder(String title) {
      this.title = title;
    }

    /** The authors in one text, as {@link Authors#of} reads it; blank for none. */
    public Builder authors(String value) {
      authors = value.isBlank() ? Optional.empty() : Optional.of(Authors.of(value));
      return this;
    }

    public Builder firstAuthor(String value) {
      firstAuthor = Optional.of(value);
      return this;
    }

    public Builder year(int value) {
      year = OptionalInt.of(value);
      return this;
    }

    public Builder journal(String value) {
      journal = Optional.of(value);
      return this;
    }

    public Builder volume(String value) {
      volume = Optional.of(value);
      return this;
    }

    public Builder issue(String value) {
      issue = Optional.of(value);
      return this;
    }

    public Builder pages(String value) {
      pages = Optional.of(value);
      return this;
    }

    public Builder doi(String value) {
      doi = Optional.of(value);
      return this;
    }

    public Builder pmid(String value) {
      pmid = Optional.of(value);
      return this;
    }

    public Builder register(String value) {
      register = Optional.of(value);
      return this;
    }

    public Builder otherSpellings(List<String> value) {
      otherSpellings = value;
      return this;
    }

    /** The value, checked. */
    public Citation build() {
      return new Citation(
          title,
          authors,
          firstAuthor,
          year,
          journal,
          volume,
          issue,
          pages,
          doi,
          pmid,
          register,
          otherSpellings);
    }
  }
}
