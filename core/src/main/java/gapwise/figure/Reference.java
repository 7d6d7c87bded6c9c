package gapwise.figure;

import gapwise.figure.value.Check;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * Where a study that a figure shows was published. Texts are empty where the record does not say.
 *
 * @param key identifier of the study, unique within a list
 * @param line the whole citation as one line
 * @param title title as printed
 * @param authors authors in their order
 * @param year year of publication
 * @param journal journal
 * @param volume volume
 * @param issue issue
 * @param pages pages, first and last with a dash
 * @param doi digital object identifier without a resolver before it
 * @param pmid PubMed number
 * @param invented whether the study is invented, which every list then says
 */
public record Reference(
    String key,
    String line,
    String title,
    List<Author> authors,
    OptionalInt year,
    String journal,
    String volume,
    String issue,
    String pages,
    String doi,
    String pmid,
    boolean invented) {

  /**
   * An author.
   *
   * @param name family name of a person, or the whole name of a group
   * @param given given names or initials of a person; may be empty
   * @param suffix what stands after a person's name, such as "Jr"; may be empty
   * @param isGroup whether it is a group, or a name that cannot be taken apart
   */
  public record Author(String name, String given, String suffix, boolean isGroup) {
    public Author {
      Check.words(name, "name");
      Objects.requireNonNull(given, "given");
      Objects.requireNonNull(suffix, "suffix");
    }

    /** A person. */
    public Author(String family, String given, String suffix) {
      this(family, given, suffix, false);
    }
  }

  public Reference {
    Check.words(key, "key");
    Check.words(line, "line");
    Check.words(title, "title");
    authors = List.copyOf(authors);
    Objects.requireNonNull(year, "year");
    for (String text : List.of(journal, volume, issue, pages, doi, pmid)) {
      Objects.requireNonNull(text, "a part of a reference");
    }
  }

  /** A reference of which only its line is known. */
  public static Reference ofLine(String line) {
    return new Reference(
        line, line, line, List.of(), OptionalInt.empty(), "", "", "", "", "", "", false);
  }
}
