package gapwise.whole;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.carried.KnownKinds;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.store.DocumentId;
import gapwise.store.DocumentVersion;
import java.io.IOException;
import java.io.InputStream;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Reads {@link HistoryLines} again, one version at a time in memory, and holds each against its
 * checksum, its place in the change log, and the room that it belongs to.
 */
final class HistoryReading implements Iterator<DocumentVersion> {
  /** Letters of one content: some hundred times the largest study that the template takes in. */
  private static final int MOST_LETTERS = 50_000_000;

  private static final JsonMapper MAPPER =
      JsonMapper.builder(
              JsonFactory.builder()
                  .streamReadConstraints(
                      StreamReadConstraints.builder().maxStringLength(MOST_LETTERS).build())
                  .build())
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .build();

  private final MappingIterator<JsonNode> lines;
  private final Map<DocumentId, Integer> versions = new HashMap<>();
  private final Map<String, Long> kinds = new TreeMap<>();
  private long last;

  /**
   * @param source closed by whoever opened it
   */
  HistoryReading(InputStream source) throws IOException {
    lines = MAPPER.readerFor(JsonNode.class).readValues(source);
  }

  @Override
  public boolean hasNext() {
    try {
      return lines.hasNextValue();
    } catch (IOException unread) {
      throw noLine();
    }
  }

  @Override
  public DocumentVersion next() {
    if (!hasNext()) {
      throw new NoSuchElementException("the whole history was read");
    }
    JsonNode line;
    try {
      line = lines.nextValue();
    } catch (IOException unread) {
      throw noLine();
    }
    DocumentVersion version = version(line);
    requireNext(version);
    requireKnown(version, line);
    last = version.change();
    versions.put(version.id(), version.version());
    kinds.merge(version.id().kind(), 1L, Long::sum);
    return version;
  }

  private DocumentVersion version(JsonNode line) {
    try {
      String who = line.path("who").asText();
      String why = line.path("why").asText();
      if (who.isBlank() || why.isBlank()) {
        throw noLine();
      }
      return new DocumentVersion(
          new DocumentId(line.path("kind").asText(), line.path("key").asText()),
          line.path("version").asInt(),
          line.path("change").asLong(),
          Instant.parse(line.path("when").asText()),
          who,
          why,
          Optional.of(line.path("content")).filter(JsonNode::isTextual).map(JsonNode::asText));
    } catch (IllegalArgumentException | DateTimeException wrong) {
      throw noLine();
    }
  }

  private void requireNext(DocumentVersion version) {
    int before = versions.getOrDefault(version.id(), 0);
    if (version.change() != last + 1 || version.version() != before + 1) {
      throw wrong(
          "history-gap",
          "Found change "
              + version.change()
              + " with version "
              + version.version()
              + " of "
              + version.id()
              + ", and expected change "
              + (last + 1)
              + " and version "
              + (before + 1)
              + ". Lines are missing or stand in another order.",
          version.id().key());
    }
  }

  private void requireKnown(DocumentVersion version, JsonNode line) {
    DocumentId id = version.id();
    if (!KnownKinds.has(id.kind())) {
      throw wrong(
          "unknown-kind",
          "This program keeps no documents of the kind '"
              + id.kind()
              + "'. It knows "
              + KnownKinds.words()
              + ". A newer version may know it.",
          id.key());
    }
    String sha256 = version.json().map(HistoryLines::sha256).orElse("");
    if (!sha256.equals(line.path("sha256").asText())) {
      throw wrong(
          "content-changed",
          "The content of "
              + id
              + ", version "
              + version.version()
              + ", is not the one that its checksum (SHA-256) is of.",
          id.key());
    }
    if (version.json().filter(json -> !KnownKinds.reads(id.kind(), id.key(), json)).isPresent()) {
      throw wrong(
          "content-unreadable",
          "The content of "
              + id
              + ", version "
              + version.version()
              + ", cannot be read as one of its kind and key.",
          id.key());
    }
  }

  /** Number of the last change read, 0 for none. */
  long last() {
    return last;
  }

  /** How many versions of each kind were read. */
  Map<String, Long> kinds() {
    return Map.copyOf(kinds);
  }

  private WrongInputException noLine() {
    return wrong("no-history-line", "This is no version of a document as an export writes it.", "");
  }

  private WrongInputException wrong(String code, String message, String about) {
    return new WrongInputException(
        List.of(
            new Problem(
                HistoryLines.FILE + ", line " + (last + 1),
                code,
                message + " Nothing was stored. Export the other evidence base again.",
                about)));
  }
}
