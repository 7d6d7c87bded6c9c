package gapwise.reference.format;

import gapwise.reference.Identifiers;
import gapwise.reference.Kind;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Makes a reference of a record of RIS. */
final class RisReference {
  private static final Set<String> AUTHORS = Set.of("AU", "A1");
  private static final Set<String> JOURNALS = Set.of("JO", "JF", "T2", "BT");
  private static final Set<String> SHORT_JOURNALS = Set.of("JA", "J2", "J1", "TA");

  private RisReference() {}

  static ReadRecord of(RawRecord raw) {
    Optional<String> id = first(raw, "ID").or(() -> first(raw, "LB"));
    Draft draft = new Draft(raw, id);
    String first = "";
    String last = "";
    for (RawField field : raw.fields()) {
      switch (field.name()) {
        case "SP" -> first = first.isEmpty() ? field.value() : first;
        case "EP" -> last = last.isEmpty() ? field.value() : last;
        default -> field(draft, field, raw);
      }
    }
    pages(draft, raw, first, last);
    bookTitle(draft, raw);
    return draft.end("TI or T1");
  }

  /** A whole book may have its title where its chapters name their book. */
  private static void bookTitle(Draft draft, RawRecord raw) {
    if (!draft.hasTitle() && draft.kind().filter(kind -> kind == Kind.BOOK).isPresent()) {
      raw.fields().stream().filter(field -> field.name().equals("BT")).forEach(draft::title);
    }
  }

  private static void field(Draft draft, RawField field, RawRecord raw) {
    String name = field.name();
    if (AUTHORS.contains(name)) {
      author(draft, field);
    } else if (JOURNALS.contains(name)) {
      draft.once(Once.JOURNAL, field, field.value());
    } else if (SHORT_JOURNALS.contains(name)) {
      draft.once(Once.SHORT_JOURNAL, field, field.value());
    } else {
      other(draft, field, raw);
    }
  }

  private static void other(Draft draft, RawField field, RawRecord raw) {
    switch (field.name()) {
      case "TY" -> kind(draft, field);
      case "ID", "LB" -> {}
      case "TI", "T1", "CT" -> draft.title(field);
      case "TT", "OP" -> draft.once(Once.ORIGINAL_TITLE, field, field.value());
      case "PY", "Y1", "DA" -> draft.date(field);
      case "VL" -> draft.once(Once.VOLUME, field, field.value());
      case "IS" -> draft.once(Once.ISSUE, field, field.value());
      case "SN" -> draft.once(Once.ISSN, field, field.value());
      case "PB" -> draft.once(Once.PUBLISHER, field, field.value());
      case "LA" -> draft.once(Once.LANGUAGE, field, field.value());
      case "AB", "N2" -> draft.once(Once.ABSTRACT, field, field.value());
      case "KW" -> draft.keyword(field.value());
      case "DO" -> draft.doi(field);
      case "AN" -> accession(draft, field, raw);
      case "UR", "L1", "L2", "L3" -> link(draft, field);
      case "N1" -> draft.note(field);
      case "M1", "M2", "M3", "C1", "C2", "C3", "C4", "C5", "C6", "C7", "C8", "U1", "U2" -> {
        draft.numbersIn(field, true);
        draft.other(field);
      }
      default -> draft.other(field);
    }
  }

  private static void kind(Draft draft, RawField field) {
    draft.kindPrinted(field.value());
    Kind.ofRis(field.value())
        .ifPresentOrElse(
            draft::kind,
            () ->
                draft.doubt(
                    field,
                    "unknown-kind",
                    "The kind "
                        + Limits.quoted(field.value())
                        + " is not known; the record was read as a publication of another kind."));
  }

  private static void author(Draft draft, RawField field) {
    List<String> several =
        field.value().contains(";")
            ? List.of(field.value().split("\\s*;\\s*"))
            : List.of(field.value());
    if (field.value().isBlank()) {
      draft.doubt(
          field,
          "empty-author",
          "An author is empty and was left out. Look whether somebody is missing.");
    }
    several.forEach(name -> Names.withComma(name).ifPresent(draft::author));
  }

  /** A number of a database is a PubMed number if the record says so. */
  private static void accession(Draft draft, RawField field, RawRecord raw) {
    boolean named =
        first(raw, "DB").or(() -> first(raw, "DP")).map(RisReference::isPubMed).orElse(false);
    if (Identifiers.pmidIn(field.value()).isPresent()
        || (named && Identifiers.pmidOf(field.value()).isPresent())) {
      draft.pmid(field);
    } else {
      draft.other(field);
    }
  }

  private static boolean isPubMed(String database) {
    return database.matches("(?i).*(pubmed|medline|national library of medicine|\\bnlm\\b).*");
  }

  private static void link(Draft draft, RawField field) {
    draft.numbersIn(field, field.value().matches("(?i).*doi.*"));
    draft.once(Once.LINK, field, field.value());
  }

  private static void pages(Draft draft, RawRecord raw, String first, String last) {
    if (first.isBlank() && last.isBlank()) {
      return;
    }
    String start = first.replaceFirst("^(?i)(pages?|pp?\\.?)\\s*(?=\\d)", "");
    String span =
        last.isBlank() || first.isBlank() || start.matches(".*\\d\\s*[-\\u2013]\\s*\\w+.*")
            ? start + (first.isBlank() ? last : "")
            : start + "-" + last;
    draft.pages(new RawField("SP", span, raw.line()), span);
  }

  static Optional<String> first(RawRecord raw, String name) {
    return raw.fields().stream()
        .filter(field -> field.name().equals(name))
        .map(RawField::value)
        .findFirst();
  }
}
