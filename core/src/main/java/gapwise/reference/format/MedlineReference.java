package gapwise.reference.format;

import gapwise.reference.Author;
import gapwise.reference.Identifiers;
import gapwise.reference.Kind;
import gapwise.reference.Link;
import java.util.Locale;
import java.util.Optional;

/** Makes a reference of a record of MEDLINE text. */
final class MedlineReference {
  private MedlineReference() {}

  static ReadRecord of(RawRecord raw) {
    long numbers = raw.fields().stream().filter(field -> field.name().equals("PMID")).count();
    // Of two numbers neither names the record for sure.
    Optional<String> id = numbers == 1 ? RisReference.first(raw, "PMID") : Optional.empty();
    Draft draft = new Draft(raw, id);
    boolean fullBefore = false;
    for (RawField field : raw.fields()) {
      if (field.name().equals("AU")) {
        if (!fullBefore) {
          Names.medline(field.value()).ifPresent(draft::author);
        }
        fullBefore = false;
      } else {
        fullBefore =
            field.name().equals("FAU")
                ? full(draft, field)
                : fullBefore && isOfAuthor(field.name());
        field(draft, field);
      }
    }
    if (!draft.kind().isPresent()) {
      draft.kind(Kind.ARTICLE);
    }
    if (RisReference.first(raw, "PMID").isEmpty()) {
      draft.doubt(
          "PMID",
          "no-pmid",
          "The record has no PMID, which every record of this form has. Look whether it is whole.");
    }
    return draft.end("TI");
  }

  private static boolean isOfAuthor(String tag) {
    return tag.equals("AD") || tag.equals("AUID");
  }

  private static boolean full(Draft draft, RawField field) {
    Optional<Author> author =
        field.value().contains(",")
            ? Names.withComma(field.value())
            : Optional.of(field.value().strip())
                .filter(text -> !text.isEmpty())
                .map(text -> Names.person(text, "", ""));
    author.ifPresent(draft::author);
    return author.isPresent();
  }

  private static void field(Draft draft, RawField field) {
    for (Link.Relation relation : Link.Relation.values()) {
      if (relation.tag().equals(field.name())) {
        draft.link(Link.to(relation, field.value()));
        return;
      }
    }
    switch (field.name()) {
      case "FAU" -> {}
      case "PMID" -> draft.pmid(field);
      case "TI", "BTI" -> title(draft, field);
      case "TT" -> draft.once(Once.ORIGINAL_TITLE, field, field.value().replaceFirst("\\.$", ""));
      case "CN" ->
          Optional.of(field.value())
              .filter(text -> !text.isBlank())
              .map(Author.Group::new)
              .ifPresent(draft::author);
      case "JT" -> draft.once(Once.JOURNAL, field, field.value());
      case "TA" -> draft.once(Once.SHORT_JOURNAL, field, field.value());
      case "DP" -> draft.date(field);
      case "VI" -> draft.once(Once.VOLUME, field, field.value());
      case "IP" -> draft.once(Once.ISSUE, field, field.value());
      case "PG" -> draft.pages(field, field.value().split("[,;]")[0]);
      case "IS" -> draft.once(Once.ISSN, field, field.value());
      case "AB" -> draft.once(Once.ABSTRACT, field, field.value());
      case "LA" -> draft.once(Once.LANGUAGE, field, field.value());
      case "MH", "OT" -> draft.keyword(field.value());
      case "PMC" ->
          draft.once(Once.PMCID, field, Identifiers.pmcidIn(field.value()).orElse(field.value()));
      case "LID", "AID" -> place(draft, field);
      case "SI" -> register(draft, field);
      case "PT" -> kind(draft, field);
      case "GN" -> draft.note(field);
      default -> draft.other(field);
    }
  }

  private static void title(Draft draft, RawField field) {
    if (field.name().equals("BTI") && draft.hasTitle()) {
      draft.once(Once.JOURNAL, field, field.value());
    } else {
      draft.title(field);
    }
  }

  private static void place(Draft draft, RawField field) {
    if (field.value().strip().endsWith("[doi]")) {
      draft.doi(new RawField(field.name(), field.value().replace("[doi]", ""), field.line()));
    } else {
      draft.other(field);
    }
  }

  private static void register(Draft draft, RawField field) {
    Identifiers.trialIn(field.value()).ifPresent(trial -> draft.once(Once.TRIAL, field, trial));
    draft.other(field);
  }

  private static void kind(Draft draft, RawField field) {
    draft.kindPrinted(field.value());
    String small = field.value().toLowerCase(Locale.ROOT);
    if (small.equals("preprint")) {
      draft.kind(Kind.PREPRINT);
    } else if (small.contains("congress") || small.contains("meeting abstract")) {
      draft.kind(Kind.MEETING);
    } else if (small.equals("book") || small.equals("monograph")) {
      draft.kind(Kind.BOOK);
    }
  }
}
