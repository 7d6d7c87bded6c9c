package gapwise.curation;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.reference.kept.KeptJson;
import gapwise.reference.kept.KeptLoad;
import gapwise.reference.kept.KeptReference;
import gapwise.reference.kept.KeptSearch;
import gapwise.reference.kept.ReferenceDecision;
import gapwise.store.DocumentStore;
import gapwise.store.DocumentVersion;
import gapwise.store.Write;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;

/**
 * References, loads, searches and decisions of an evidence base as one file, and from such a file
 * into another base: one JSON object a line with the kind, the key and the content of a document.
 */
public final class ReferenceLines {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  private static final List<String> KINDS =
      List.of(
          ReferenceBase.REFERENCE,
          ReferenceBase.LOAD,
          ReferenceBase.SEARCH,
          ReferenceBase.DECISION);

  private final DocumentStore store;

  public ReferenceLines(DocumentStore store) {
    this.store = store;
  }

  /**
   * Writes them; the writer stays open.
   *
   * @return how many references there are
   * @throws IOException if they cannot be written
   */
  public int write(Writer target) throws IOException {
    int[] references = {0};
    try {
      for (String kind : KINDS) {
        store.forEachLatest(
            kind,
            document -> {
              if (!document.damaged()) {
                line(target, document);
                references[0] += kind.equals(ReferenceBase.REFERENCE) ? 1 : 0;
              }
            });
      }
    } catch (UncheckedIOException unwritten) {
      throw new IOException("references could not be written", unwritten);
    }
    return references[0];
  }

  private static void line(Writer target, DocumentVersion document) {
    try {
      ObjectNode line = MAPPER.createObjectNode();
      line.put("kind", document.id().kind());
      line.put("key", document.id().key());
      line.set("content", MAPPER.readTree(document.json().orElseThrow()));
      target.write(MAPPER.writeValueAsString(line));
      target.write('\n');
    } catch (IOException unwritten) {
      throw new UncheckedIOException(unwritten);
    }
  }

  /**
   * Keeps all that the lines hold, or nothing. What stands there with the same content stays as it
   * is; of two decisions about one pair the later one counts.
   *
   * @param name name of the file for people
   * @return how many documents were new or changed
   * @throws WrongInputException at the first line that is none of these; nothing was stored then
   */
  public long read(BufferedReader lines, String name, String who, String why) {
    return store
        .writeAll(new Reading(lines, name), who, why)
        .written()
        .orElseThrow(
            () -> new IllegalStateException("nothing was expected, yet there is a conflict"))
        .count();
  }

  private final class Reading implements Iterator<Write> {
    private final BufferedReader lines;
    private final String name;
    private int number;
    private Optional<Write> next = Optional.empty();

    Reading(BufferedReader lines, String name) {
      this.lines = lines;
      this.name = name;
    }

    @Override
    public boolean hasNext() {
      try {
        while (next.isEmpty()) {
          Optional<String> line = Optional.ofNullable(lines.readLine());
          if (line.isEmpty()) {
            return false;
          }
          number++;
          if (!line.get().isBlank()) {
            next = write(line.get());
          }
        }
        return true;
      } catch (IOException unread) {
        throw new UncheckedIOException("the file of references cannot be read", unread);
      }
    }

    @Override
    public Write next() {
      if (!hasNext()) {
        throw new NoSuchElementException("all lines were read");
      }
      Write write = next.orElseThrow();
      next = Optional.empty();
      return write;
    }

    private Optional<Write> write(String line) {
      try {
        JsonNode node = MAPPER.readTree(line);
        String kind = node.path("kind").asText();
        String key = node.path("key").asText();
        String json = node.path("content").toString();
        if (!KINDS.contains(kind) || !isKeyOf(kind, key, json)) {
          throw new IllegalArgumentException("kind " + kind);
        }
        Optional<String> before =
            store
                .latest(kind, key)
                .filter(version -> !version.damaged())
                .flatMap(DocumentVersion::json);
        boolean stays =
            before.filter(there -> there.equals(json) || isLater(kind, there, json)).isPresent();
        return stays ? Optional.empty() : Optional.of(Write.put(kind, key, json));
      } catch (JsonProcessingException | IllegalArgumentException wrong) {
        throw new WrongInputException(
            List.of(
                new Problem(
                    name + ", line " + number,
                    "no-reference-line",
                    "The line is no reference, load, search or decision as the export writes them."
                        + " Nothing was stored. Export the other evidence base again.")));
      }
    }

    private boolean isKeyOf(String kind, String key, String json) {
      return switch (kind) {
        case ReferenceBase.REFERENCE -> KeptJson.read(json, KeptReference.class).id().equals(key);
        case ReferenceBase.LOAD -> KeptJson.read(json, KeptLoad.class).file().load().equals(key);
        case ReferenceBase.SEARCH -> KeptJson.read(json, KeptSearch.class).key().equals(key);
        default -> KeptJson.read(json, ReferenceDecision.class).key().equals(key);
      };
    }

    private boolean isLater(String kind, String there, String json) {
      return kind.equals(ReferenceBase.DECISION)
          && KeptJson.read(there, ReferenceDecision.class)
              .when()
              .isAfter(KeptJson.read(json, ReferenceDecision.class).when());
    }
  }
}
