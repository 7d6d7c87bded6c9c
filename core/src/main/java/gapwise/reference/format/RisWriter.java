package gapwise.reference.format;

import gapwise.reference.Author;
import gapwise.reference.Identifiers;
import gapwise.reference.Kind;
import gapwise.reference.Link;
import gapwise.reference.OtherField;
import gapwise.reference.Published;
import gapwise.reference.Reference;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** Writes references as RIS, so that {@link ReferenceReader} reads them back. */
public final class RisWriter {
  private RisWriter() {}

  /** Writes one reference after another, each ended by ER. */
  public static void write(Iterable<Reference> references, Appendable target) throws IOException {
    for (Reference reference : references) {
      write(reference, target);
    }
  }

  private static void write(Reference reference, Appendable target) throws IOException {
    Published published = reference.published();
    Identifiers identifiers = reference.identifiers();
    line(target, "TY", reference.kind().orElse(Kind.OTHER).ris());
    line(target, "ID", reference.id());
    for (Author author : reference.authors()) {
      line(target, "AU", written(author));
    }
    line(target, "TI", reference.titles().main());
    for (String other : reference.titles().others()) {
      line(target, "ST", other);
    }
    line(target, "TT", reference.titles().original());
    line(target, "T2", published.journal());
    line(target, "J2", published.shortJournal());
    if (published.year().isPresent()) {
      line(target, "PY", "" + published.year().getAsInt());
    }
    line(target, "DA", published.date());
    line(target, "VL", published.volume());
    line(target, "IS", published.issue());
    pages(target, published.pages());
    line(target, "SN", published.issn());
    line(target, "PB", published.publisher());
    line(target, "DO", identifiers.doi());
    line(target, "AN", identifiers.pmid().map(number -> "PMID: " + number));
    line(target, "C2", identifiers.pmcid());
    line(target, "C6", identifiers.trial());
    line(target, "UR", identifiers.link());
    line(target, "AB", reference.summary());
    for (String keyword : reference.keywords()) {
      line(target, "KW", keyword);
    }
    line(target, "LA", reference.language());
    notes(reference, target);
    target.append("ER  - \n");
  }

  /** A person with the comma that RIS asks for; a group has none that could part it. */
  private static String written(Author author) {
    if (!(author instanceof Author.Person person)) {
      return author.line().replace(",", "");
    }
    if (!person.given().isEmpty()) {
      return person.line();
    }
    // Where the given names are missing, the commas still tell a person from a group.
    return person.suffix().isEmpty()
        ? person.fullFamily() + (person.fullFamily().contains(" ") ? "," : "")
        : person.fullFamily() + ", , " + person.suffix();
  }

  private static void pages(Appendable target, Optional<String> pages) throws IOException {
    if (pages.isPresent()) {
      String[] span = pages.get().split("-", 2);
      line(target, "SP", span[0]);
      line(target, "EP", span.length == 2 ? span[1] : "");
    }
  }

  /** Relations as notes, and fields of other formats under their names. */
  private static void notes(Reference reference, Appendable target) throws IOException {
    List<String> notes =
        reference.others().stream()
            .filter(other -> other.name().equals("N1"))
            .map(OtherField::value)
            .toList();
    for (String note : notes) {
      line(target, "N1", note);
    }
    for (Link link : reference.links()) {
      String text = capital(link.relation().words()) + ": " + link.text();
      if (notes.stream().noneMatch(note -> note.contains(link.text()))) {
        line(target, "N1", text);
      }
    }
    for (OtherField other : reference.others()) {
      boolean tag = other.name().matches("[A-Z][A-Z0-9]") && !other.name().equals("N1");
      if (tag && !SPOKEN_FOR.contains(" " + other.name() + " ")) {
        line(target, other.name(), other.value());
      } else if (!tag && !other.name().equals("N1")) {
        line(target, "U1", other.name() + ": " + other.value());
      }
    }
  }

  /** Tags that are written from the parts of a reference, and would be read twice. */
  private static final String SPOKEN_FOR =
      " TY ID AU A1 TI T1 ST TT T2 JO JF J2 JA PY Y1 DA VL IS SP EP SN PB DO AN C2 C6 UR AB N2 KW"
          + " LA ER ";

  private static String capital(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  private static void line(Appendable target, String tag, Optional<String> value)
      throws IOException {
    line(target, tag, value.orElse(""));
  }

  /** One line, since a line end within a value would start another field. */
  private static void line(Appendable target, String tag, String value) throws IOException {
    String text = value.replaceAll("\\s+", " ").strip();
    if (!text.isEmpty()) {
      target.append(tag).append("  - ").append(text).append('\n');
    }
  }
}
