package gapwise.reference.format;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.problem.Problem;
import gapwise.reference.Author;
import gapwise.reference.Identifiers;
import gapwise.reference.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes a reference of an item of CSL-JSON. */
final class CslReference {
  private final Draft draft;
  private final JsonNode item;
  private final int line;

  private CslReference(RawRecord raw, JsonNode item) {
    this.item = item;
    this.line = raw.line();
    this.draft = new Draft(raw, Optional.of(text(item.path("id"))));
  }

  static ReadRecord of(
      int number, int line, JsonNode item, List<String> oddities, boolean shortened) {
    List<Problem> doubts = new ArrayList<>();
    String place = Gathering.place(number, line, "");
    oddities.forEach(
        oddity ->
            doubts.add(
                new Problem(
                    place, "odd-bytes", "The item holds " + oddity + ". Look at its texts.")));
    if (shortened) {
      doubts.add(
          new Problem(
              place,
              "too-long",
              String.format(
                  java.util.Locale.ROOT,
                  "A text of the item is longer than %,d letters; what is beyond was left out.",
                  Limits.FIELD)));
    }
    RawRecord raw =
        new RawRecord(
            number, line, Optional.empty(), Optional.empty(), List.of(), doubts, Optional.empty());
    return new CslReference(raw, item).read();
  }

  private ReadRecord read() {
    for (Map.Entry<String, JsonNode> entry : item.properties()) {
      field(entry.getKey(), entry.getValue());
    }
    if (draft.kind().isPresent() && text(item.path("genre")).matches("(?i).*preprint.*")) {
      draft.kind(Kind.PREPRINT);
    }
    return draft.end("title");
  }

  private void field(String name, JsonNode value) {
    RawField field = new RawField(name, text(value), line);
    switch (name) {
      case "id" -> {}
      case "type" -> kind(field);
      case "title" -> draft.title(field);
      case "original-title" -> draft.once(Once.ORIGINAL_TITLE, field, field.value());
      case "author" -> authors(value);
      case "issued" -> issued(field, value);
      case "container-title" -> draft.once(Once.JOURNAL, field, field.value());
      case "container-title-short", "journalAbbreviation" ->
          draft.once(Once.SHORT_JOURNAL, field, field.value());
      case "volume" -> draft.once(Once.VOLUME, field, field.value());
      case "issue" -> draft.once(Once.ISSUE, field, field.value());
      case "page" -> draft.pages(field, field.value());
      case "number", "article-number" -> {
        if (item.path("page").isMissingNode() && name.startsWith("article")) {
          draft.pages(field, field.value());
        } else {
          draft.other(field);
        }
      }
      case "ISSN" -> draft.once(Once.ISSN, field, field.value());
      case "publisher" -> draft.once(Once.PUBLISHER, field, field.value());
      case "language" -> draft.once(Once.LANGUAGE, field, field.value());
      case "abstract" -> draft.once(Once.ABSTRACT, field, field.value());
      case "DOI" -> draft.doi(field);
      case "PMID" -> draft.pmid(field);
      case "PMCID" ->
          draft.once(Once.PMCID, field, Identifiers.pmcidIn(field.value()).orElse(field.value()));
      case "URL" -> {
        draft.numbersIn(field, field.value().matches("(?i).*doi\\.org.*"));
        draft.once(Once.LINK, field, field.value());
      }
      case "keyword" -> keywords(value, field);
      case "note", "annote" -> draft.note(field);
      case "status" -> {
        draft.other(field);
        draft.kindPrinted(field.value());
      }
      case "custom" -> custom(value, field);
      default -> draft.other(field);
    }
  }

  private void custom(JsonNode value, RawField field) {
    if (!value.isObject()) {
      draft.other(field);
      return;
    }
    for (Map.Entry<String, JsonNode> entry : value.properties()) {
      for (String part : text(entry.getValue()).split("\n")) {
        draft.other(new RawField(entry.getKey(), part, line));
      }
    }
  }

  private void keywords(JsonNode value, RawField field) {
    if (value.isArray()) {
      value.forEach(word -> draft.keyword(text(word)));
    } else {
      List.of(field.value().split("\\s*[;,]\\s*")).forEach(draft::keyword);
    }
  }

  private void kind(RawField field) {
    draft.kindPrinted(field.value());
    Kind.ofCsl(field.value())
        .ifPresentOrElse(
            draft::kind,
            () ->
                draft.doubt(
                    field,
                    "unknown-kind",
                    "The type "
                        + Limits.quoted(field.value())
                        + " is not known; the record was read as a publication of another kind."));
  }

  private void authors(JsonNode value) {
    if (!value.isArray()) {
      if (!value.isNull()) {
        draft.doubt(
            "author",
            "authors-not-read",
            "The authors are no list; " + Limits.quoted(text(value)) + " was taken as one name.");
        Names.withComma(text(value)).ifPresent(draft::author);
      }
      return;
    }
    for (JsonNode name : value) {
      Optional<Author> author = author(name);
      author.ifPresentOrElse(
          draft::author,
          () ->
              draft.doubt(
                  "author",
                  "empty-author",
                  "An author has no name and was left out. Look whether somebody is missing."));
    }
  }

  private static Optional<Author> author(JsonNode name) {
    if (!name.isObject()) {
      return Names.withComma(text(name));
    }
    String literal = text(name.path("literal"));
    String family = text(name.path("family"));
    String given = text(name.path("given"));
    if (family.isBlank()) {
      String whole = literal.isBlank() ? given : literal;
      return Optional.of(whole).filter(text -> !text.isBlank()).map(Author.Group::new);
    }
    String dropping = text(name.path("dropping-particle"));
    String particle = (dropping + " " + text(name.path("non-dropping-particle"))).strip();
    if (particle.isEmpty()) {
      return Optional.of(Names.person(family, given, text(name.path("suffix"))));
    }
    return Optional.of(new Author.Person(particle, family, given, text(name.path("suffix"))));
  }

  private void issued(RawField field, JsonNode value) {
    JsonNode first = value.path("date-parts").path(0);
    if (first.isArray() && !first.isEmpty() && !text(first.path(0)).isBlank()) {
      StringBuilder date = new StringBuilder(text(first.path(0)));
      for (int at = 1; at < first.size(); at++) {
        String part = text(first.path(at));
        date.append('-').append(part.length() == 1 ? "0" + part : part);
      }
      draft.date(new RawField("issued", date.toString(), line));
      return;
    }
    String loose =
        value.isObject()
            ? text(value.path("raw")) + " " + text(value.path("literal"))
            : field.value();
    if (loose.isBlank()) {
      draft.doubt(
          "issued",
          "no-year",
          "The record has no year: date-parts is empty. Copies of it are harder to find; add the"
              + " year.");
    } else {
      draft.date(new RawField("issued", loose, line));
    }
  }

  /** Text of a value: numbers as they are, the first text of a list, nothing for null. */
  private static String text(JsonNode value) {
    if (value.isNull() || value.isMissingNode()) {
      return "";
    }
    if (value.isArray()) {
      return value.isEmpty() ? "" : text(value.get(0));
    }
    return value.isValueNode() ? value.asText() : value.toString();
  }
}
