package gapwise.reference;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A reference to a paper.
 *
 * @param id the name by which its file knows it; empty where it has none
 * @param kind kind of publication; empty where the file does not tell
 * @param kindsPrinted all words for the kind as printed
 * @param titles titles
 * @param authors authors in their order
 * @param published where and when
 * @param identifiers numbers
 * @param summary abstract
 * @param keywords keywords
 * @param language language of the paper as printed
 * @param links what it says of other papers
 * @param others fields that have no place here
 */
public record Reference(
    Optional<String> id,
    Optional<Kind> kind,
    List<String> kindsPrinted,
    Titles titles,
    List<Author> authors,
    Published published,
    Identifiers identifiers,
    Optional<String> summary,
    List<String> keywords,
    Optional<String> language,
    List<Link> links,
    List<OtherField> others) {
  public Reference {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(kind, "kind");
    kindsPrinted = List.copyOf(kindsPrinted);
    Objects.requireNonNull(titles, "titles");
    authors = List.copyOf(authors);
    Objects.requireNonNull(published, "published");
    Objects.requireNonNull(identifiers, "identifiers");
    Objects.requireNonNull(summary, "summary");
    keywords = List.copyOf(keywords);
    Objects.requireNonNull(language, "language");
    links = List.copyOf(links);
    others = List.copyOf(others);
  }

  /**
   * The same without what is long and not compared: abstract, keywords and other fields. Thousands
   * of references stay small so, whatever their file holds.
   */
  public Reference withoutTexts() {
    return new Reference(
        id,
        kind,
        kindsPrinted,
        titles,
        authors,
        published,
        identifiers,
        Optional.empty(),
        List.of(),
        language,
        links,
        List.of());
  }

  /** The same under another id, as where references of several files stand in one list. */
  public Reference under(String name) {
    return new Reference(
        Optional.of(name),
        kind,
        kindsPrinted,
        titles,
        authors,
        published,
        identifiers,
        summary,
        keywords,
        language,
        links,
        others);
  }

  /** The reference as one line of text. */
  public String line() {
    StringBuilder line = new StringBuilder();
    authors.stream().limit(3).forEach(author -> line.append(author.line()).append("; "));
    if (authors.size() > 3) {
      line.append("and ").append(authors.size() - 3).append(" more; ");
    }
    line.append(titles.main()).append(". ").append(published.line());
    return line.toString().strip();
  }
}
