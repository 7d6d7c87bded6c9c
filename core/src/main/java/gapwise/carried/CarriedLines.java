package gapwise.carried;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
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
 * What stands beside the studies of an evidence base as one file, and from such a file into another
 * base: references, loads, searches, what persons settled of pairs and of shared patients, what
 * they chose while they screened, the review and the questions that they keep, and papers that two
 * people extracted apart once what differs is being settled; before that neither may see the
 * other's, and no file carries it. One JSON object a line with the kind, the key and the content of
 * a document. Judgements of certainty stay behind: they rest on versions of the studies of their
 * base.
 */
public final class CarriedLines {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  private final DocumentStore store;

  public CarriedLines(DocumentStore store) {
    this.store = store;
  }

  /**
   * Writes them; the writer stays open.
   *
   * @return how many lines there are
   * @throws IOException if they cannot be written
   */
  public int write(Writer target) throws IOException {
    return write(Long.MAX_VALUE, target);
  }

  /** The same as it stood after one change. */
  public int write(long change, Writer target) throws IOException {
    int[] lines = {0};
    SettledPapers settled = SettledPapers.of(store);
    try {
      for (CarriedKind kind : CarriedKind.values()) {
        store.forEachAt(
            change,
            kind.word(),
            document -> {
              if (!document.damaged() && settled.carries(kind, document)) {
                line(target, document);
                lines[0]++;
              }
            });
      }
    } catch (UncheckedIOException unwritten) {
      throw new IOException("what stands beside the studies could not be written", unwritten);
    }
    return lines[0];
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
   * is; of two decisions or choices about one thing the later one counts.
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
        throw new UncheckedIOException("the file cannot be read", unread);
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
        String key = node.path("key").asText();
        String json = node.path("content").toString();
        CarriedKind kind =
            CarriedKind.find(node.path("kind").asText())
                .orElseThrow(() -> new IllegalArgumentException("an unknown kind"));
        CarriedKind.Read read = kind.read(json);
        if (!read.key().equals(key)) {
          throw new IllegalArgumentException("the key of another");
        }
        boolean stays =
            store
                .latest(kind.word(), key)
                .filter(version -> !version.damaged())
                .flatMap(DocumentVersion::json)
                .filter(there -> there.equals(json) || read.isBefore(kind.read(there)))
                .isPresent();
        return stays ? Optional.empty() : Optional.of(Write.put(kind.word(), key, json));
      } catch (JsonProcessingException | IllegalArgumentException wrong) {
        throw new WrongInputException(
            List.of(
                new Problem(
                    name + ", line " + number,
                    "no-carried-line",
                    "The line is nothing that the export writes beside the studies."
                        + " Nothing was stored. Export the other evidence base again.")));
      }
    }
  }
}
