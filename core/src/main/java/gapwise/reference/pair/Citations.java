package gapwise.reference.pair;

import gapwise.evidence.AuthorName;
import gapwise.evidence.Citation;
import gapwise.reference.Author;
import gapwise.reference.Identifiers;
import gapwise.reference.Published;
import gapwise.reference.Reference;
import gapwise.reference.Titles;
import gapwise.reference.likeness.PersonName;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Citations of the evidence base as references. */
public final class Citations {
  private Citations() {}

  /** A citation of the base under the id of its study. */
  public static FiledReference filed(String study, Citation citation, int number) {
    return new FiledReference(
        new RecordKey(RecordKey.BASE, RecordKey.BASE, number, 0, Optional.of(study)),
        reference(study, citation));
  }

  /** The reference that a citation is of. */
  public static Reference reference(String study, Citation citation) {
    Published published =
        new Published(
            citation.journal(),
            Optional.empty(),
            Optional.empty(),
            citation.year(),
            citation.volume(),
            citation.issue(),
            citation.pages(),
            Optional.empty(),
            Optional.empty());
    Identifiers identifiers =
        new Identifiers(
            citation.doi().flatMap(Identifiers::doiIn),
            citation.pmid().flatMap(Identifiers::pmidOf),
            Optional.empty(),
            citation.register().flatMap(Identifiers::trialIn),
            Optional.empty());
    return new Reference(
        Optional.of(study),
        Optional.empty(),
        List.of(),
        new Titles(citation.title(), Optional.empty(), citation.otherSpellings()),
        authors(citation),
        published,
        identifiers,
        Optional.empty(),
        List.of(),
        Optional.empty(),
        List.of(),
        List.of());
  }

  /** People by their parts; a name that was kept as it is printed, as near as it can be read. */
  private static List<Author> authors(Citation citation) {
    List<Author> authors = new ArrayList<>();
    for (AuthorName name : citation.people()) {
      if (name instanceof AuthorName.Person person) {
        authors.add(new Author.Person("", person.family(), person.given(), person.suffix()));
      } else {
        PersonName read = PersonName.of(name.line().replaceAll("(?i)\\bet al\\.?", ""));
        if (!read.family().isBlank()) {
          authors.add(new Author.Person("", read.family(), read.given(), ""));
        }
      }
    }
    return authors;
  }
}
