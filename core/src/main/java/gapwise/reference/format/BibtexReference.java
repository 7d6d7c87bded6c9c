package gapwise.reference.format;

import gapwise.reference.Identifiers;
import gapwise.reference.Kind;
import java.util.Optional;
import java.util.Set;

/** Makes a reference of an entry of BibTeX. */
final class BibtexReference {
  private static final Set<String> BRIEF = Set.of("doi", "pmid", "pmcid", "url", "eprint", "issn");

  private BibtexReference() {}

  static ReadRecord of(RawRecord raw, boolean repeatedKey) {
    Draft draft = new Draft(raw, raw.id());
    raw.kind().ifPresent(word -> kind(draft, word));
    if (raw.id().isEmpty() && raw.broken().isEmpty()) {
      draft.doubt("key", "no-key", "The entry has no key; it is known by its number alone.");
    }
    if (repeatedKey) {
      draft.doubt(
          "key",
          "key-twice",
          "Another entry of the file has the key "
              + Limits.quoted(raw.id().orElse(""))
              + " too. Both were read and are told apart by their numbers; give each its own key.");
    }
    title(draft, raw);
    for (RawField field : raw.fields()) {
      String value = BRIEF.contains(field.name()) ? address(field.value()) : field.value();
      field(draft, new RawField(field.name(), value, field.line()));
    }
    return draft.end("title");
  }

  /** The title, and the subtitle where it has a field of its own. */
  private static void title(Draft draft, RawRecord raw) {
    String subtitle =
        RisReference.first(raw, "subtitle")
            .map(text -> ": " + Tex.plain(text))
            .filter(text -> text.length() > 2)
            .orElse("");
    for (RawField field : raw.fields()) {
      if (field.name().equals("title")) {
        String main = Tex.plain(field.value());
        String whole = main.isEmpty() ? "" : main + subtitle;
        draft.title(new RawField("title", whole, field.line()));
      }
    }
  }

  private static String address(String value) {
    return value
        .replace("\\_", "_")
        .replace("\\%", "%")
        .replace("\\&", "&")
        .replace("\\#", "#")
        .replaceAll("[{}]", "");
  }

  private static void kind(Draft draft, String word) {
    draft.kindPrinted(word);
    switch (word) {
      case "article" -> draft.kind(Kind.ARTICLE);
      case "inproceedings", "conference", "proceedings" -> draft.kind(Kind.MEETING);
      case "unpublished" -> draft.kind(Kind.PREPRINT);
      case "book", "mvbook", "booklet" -> draft.kind(Kind.BOOK);
      case "incollection", "inbook" -> draft.kind(Kind.CHAPTER);
      case "phdthesis", "mastersthesis", "thesis" -> draft.kind(Kind.THESIS);
      case "techreport", "report", "manual" -> draft.kind(Kind.REPORT);
      case "dataset", "software" -> draft.kind(Kind.DATASET);
      case "online", "electronic", "www" -> draft.kind(Kind.WEB);
      case "misc", "patent", "periodical", "collection" -> draft.kind(Kind.OTHER);
      default -> {
        draft.kind(Kind.OTHER);
        draft.doubt(
            "@" + word,
            "unknown-kind",
            "The kind "
                + Limits.quoted(word)
                + " is not known; the entry was read as a publication of another kind.");
      }
    }
  }

  private static void field(Draft draft, RawField field) {
    RawField plain = new RawField(field.name(), Tex.plain(field.value()), field.line());
    switch (field.name()) {
      case "author" -> authors(draft, field);
      case "title", "subtitle" -> {}
      case "origtitle", "titleaddon" -> draft.once(Once.ORIGINAL_TITLE, plain, plain.value());
      case "journal", "journaltitle", "booktitle" -> draft.once(Once.JOURNAL, plain, plain.value());
      case "howpublished" -> {
        if (!plain.value().contains("://")) {
          draft.once(Once.JOURNAL, plain, plain.value());
        } else {
          draft.other(plain);
        }
      }
      case "shortjournal" -> draft.once(Once.SHORT_JOURNAL, plain, plain.value());
      case "year", "date" -> draft.date(plain);
      case "volume" -> draft.once(Once.VOLUME, plain, plain.value());
      case "number", "issue" -> draft.once(Once.ISSUE, plain, plain.value());
      case "pages", "eid", "articleno" -> draft.pages(plain, plain.value());
      case "issn" -> draft.once(Once.ISSN, plain, plain.value());
      case "publisher", "school", "institution", "organization" ->
          draft.once(Once.PUBLISHER, plain, plain.value());
      case "abstract" -> draft.once(Once.ABSTRACT, plain, plain.value());
      case "language", "langid" -> draft.once(Once.LANGUAGE, plain, plain.value());
      case "keywords", "keyword" ->
          java.util.List.of(plain.value().split("\\s*[;,]\\s*")).forEach(draft::keyword);
      case "doi" -> draft.doi(field);
      case "pmid" -> draft.pmid(field);
      case "pmcid" ->
          draft.once(Once.PMCID, field, Identifiers.pmcidIn(field.value()).orElse(field.value()));
      case "url" -> {
        draft.numbersIn(field, field.value().matches("(?i).*doi\\.org.*"));
        draft.once(Once.LINK, field, field.value());
      }
      case "eprint" -> eprint(draft, field);
      case "note", "annote", "addendum" -> draft.note(plain);
      default -> draft.other(plain);
    }
  }

  private static void eprint(Draft draft, RawField field) {
    draft.other(field);
    if (field.value().matches("\\d{6,8}")) {
      Optional<String> number = Identifiers.pmidOf(field.value());
      // Some exports give the PubMed number as eprint; nothing else has so many bare digits.
      number.ifPresent(found -> draft.once(Once.PMID, field, found));
    }
  }

  private static void authors(Draft draft, RawField field) {
    BibtexNames.Result names = BibtexNames.of(field.value());
    names.authors().forEach(draft::author);
    if (names.empty() > 0) {
      draft.doubt(
          field,
          "empty-author",
          "An author between two \"and\" is empty and was left out. Look whether somebody is"
              + " missing.");
    }
    if (names.shortened()) {
      draft.other(new RawField("authors", "and others", field.line()));
    }
  }
}
