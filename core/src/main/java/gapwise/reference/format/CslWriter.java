package gapwise.reference.format;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import gapwise.reference.Author;
import gapwise.reference.Identifiers;
import gapwise.reference.Kind;
import gapwise.reference.Link;
import gapwise.reference.OtherField;
import gapwise.reference.Published;
import gapwise.reference.Reference;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Writes references as CSL-JSON, so that {@link ReferenceReader} reads them back. */
public final class CslWriter {
  private CslWriter() {}

  /** Writes a list; the writer stays open. */
  public static void write(Iterable<Reference> references, Writer target) throws IOException {
    try (Items items = new Items(target)) {
      for (Reference reference : references) {
        items.add(reference);
      }
    }
  }

  /**
   * A list that is written one reference at a time, so that it never lies in memory as a whole; the
   * writer stays open. Not thread-safe.
   */
  public static final class Items implements AutoCloseable {
    private final JsonGenerator json;
    private int number;

    /** Opens the list. */
    public Items(Writer target) throws IOException {
      json =
          new JsonFactory()
              .createGenerator(target)
              .disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
      json.useDefaultPrettyPrinter();
      json.writeStartArray();
    }

    /** Adds a reference. */
    public void add(Reference reference) throws IOException {
      item(json, reference, ++number);
    }

    /** Ends the list. */
    @Override
    public void close() throws IOException {
      json.close();
    }
  }

  private static void item(JsonGenerator json, Reference reference, int number) throws IOException {
    Published published = reference.published();
    Identifiers identifiers = reference.identifiers();
    json.writeStartObject();
    json.writeStringField("id", reference.id().orElse("item-" + number));
    Kind kind = reference.kind().orElse(Kind.OTHER);
    json.writeStringField("type", kind.csl());
    if (kind == Kind.PREPRINT) {
      json.writeStringField("genre", "Preprint");
    }
    json.writeStringField("title", reference.titles().main());
    field(json, "original-title", reference.titles().original());
    authors(json, reference.authors());
    issued(json, published);
    field(json, "container-title", published.journal());
    field(json, "container-title-short", published.shortJournal());
    field(json, "volume", published.volume());
    field(json, "issue", published.issue());
    field(json, "page", published.pages());
    field(json, "ISSN", published.issn());
    field(json, "publisher", published.publisher());
    field(json, "DOI", identifiers.doi());
    field(json, "PMID", identifiers.pmid());
    field(json, "PMCID", identifiers.pmcid());
    field(json, "URL", identifiers.link());
    field(json, "abstract", reference.summary());
    if (!reference.keywords().isEmpty()) {
      json.writeStringField("keyword", String.join("; ", reference.keywords()));
    }
    field(json, "language", reference.language());
    field(json, "note", note(reference));
    custom(json, reference);
    json.writeEndObject();
  }

  private static void authors(JsonGenerator json, List<Author> authors) throws IOException {
    if (authors.isEmpty()) {
      return;
    }
    json.writeArrayFieldStart("author");
    for (Author author : authors) {
      json.writeStartObject();
      if (author instanceof Author.Person person) {
        json.writeStringField("family", person.family());
        text(json, "given", person.given());
        text(json, "non-dropping-particle", person.particle());
        text(json, "suffix", person.suffix());
      } else {
        json.writeStringField("literal", author.line());
      }
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  /** Year, month and day if the date has them as numbers; else the year and the words beside it. */
  private static void issued(JsonGenerator json, Published published) throws IOException {
    if (published.year().isEmpty()) {
      return;
    }
    json.writeObjectFieldStart("issued");
    json.writeArrayFieldStart("date-parts");
    json.writeStartArray();
    json.writeNumber(published.year().getAsInt());
    String[] parts = published.date().orElse("").split("[-/]");
    for (int at = 1; at < parts.length && at < 3 && parts[at].matches("\\d{1,2}"); at++) {
      json.writeNumber(Integer.parseInt(parts[at]));
    }
    json.writeEndArray();
    json.writeEndArray();
    json.writeEndObject();
  }

  /** Notes as read, and relations that stand in none of them. */
  private static Optional<String> note(Reference reference) {
    List<String> notes = new ArrayList<>();
    reference.others().stream()
        .filter(other -> other.name().equals("note") || other.name().equals("N1"))
        .map(OtherField::value)
        .forEach(notes::add);
    for (Link link : reference.links()) {
      if (notes.stream().noneMatch(note -> note.contains(link.text()))) {
        String words = link.relation().words();
        notes.add(Character.toUpperCase(words.charAt(0)) + words.substring(1) + ": " + link.text());
      }
    }
    reference
        .identifiers()
        .trial()
        .filter(trial -> notes.stream().noneMatch(note -> note.contains(trial)))
        .ifPresent(notes::add);
    return notes.isEmpty() ? Optional.empty() : Optional.of(String.join("\n", notes));
  }

  /** Fields of other formats, under the name that CSL-JSON has for what it does not know. */
  private static void custom(JsonGenerator json, Reference reference) throws IOException {
    java.util.Map<String, String> custom = new java.util.LinkedHashMap<>();
    for (OtherField other : reference.others()) {
      if (!other.name().equals("note") && !other.name().equals("N1")) {
        custom.merge(other.name(), other.value(), (before, more) -> before + "\n" + more);
      }
    }
    for (String title : reference.titles().others()) {
      custom.merge("other title", title, (before, more) -> before + "\n" + more);
    }
    if (custom.isEmpty()) {
      return;
    }
    json.writeObjectFieldStart("custom");
    for (java.util.Map.Entry<String, String> entry : custom.entrySet()) {
      json.writeStringField(entry.getKey(), entry.getValue());
    }
    json.writeEndObject();
  }

  private static void field(JsonGenerator json, String name, Optional<String> value)
      throws IOException {
    if (value.isPresent()) {
      json.writeStringField(name, value.get());
    }
  }

  private static void text(JsonGenerator json, String name, String value) throws IOException {
    if (!value.isEmpty()) {
      json.writeStringField(name, value);
    }
  }
}
