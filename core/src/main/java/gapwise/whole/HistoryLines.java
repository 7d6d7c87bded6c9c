package gapwise.whole;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.MinimalPrettyPrinter;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.store.DocumentStore;
import gapwise.store.DocumentVersion;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A history as lines of JSON, one version of one document a line in the order of the change log:
 * change, kind, key, version, when, who, why, and where it is no deletion the SHA-256 of its
 * content and the content itself, as text, so that not a byte of it changes.
 */
final class HistoryLines {
  /** The file. */
  static final String FILE = "history.jsonl";

  private static final JsonFactory JSON = new JsonFactory();

  private HistoryLines() {}

  /**
   * Writes all versions up to a change.
   *
   * @param target stays open
   * @return how many versions of each kind
   * @throws WrongInputException at a version that is damaged
   */
  static Map<String, Long> write(DocumentStore store, long upTo, OutputStream target)
      throws IOException {
    Map<String, Long> kinds = new TreeMap<>();
    try (JsonGenerator json = JSON.createGenerator(target)) {
      json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
      json.setPrettyPrinter(new MinimalPrettyPrinter("\n"));
      store.changesAfter(
          0,
          version -> {
            if (version.change() <= upTo) {
              line(json, version);
              kinds.merge(version.id().kind(), 1L, Long::sum);
            }
          });
      json.writeRaw(kinds.isEmpty() ? "" : "\n");
    } catch (UncheckedIOException unwritten) {
      throw new IOException("the history could not be written", unwritten);
    }
    return kinds;
  }

  private static void line(JsonGenerator json, DocumentVersion version) {
    if (version.damaged()) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  version.id() + ", version " + version.version(),
                  "record-damaged",
                  "This record is not as it was written, so the history cannot be taken along whole."
                      + " Restore a backup that is sound, or export the studies as they stand with"
                      + " --csv.",
                  version.id().key())));
    }
    try {
      json.writeStartObject();
      json.writeNumberField("change", version.change());
      json.writeStringField("kind", version.id().kind());
      json.writeStringField("key", version.id().key());
      json.writeNumberField("version", version.version());
      json.writeStringField("when", version.when().toString());
      json.writeStringField("who", version.who());
      json.writeStringField("why", version.why());
      Optional<String> content = version.json();
      if (content.isPresent()) {
        json.writeStringField("sha256", sha256(content.get()));
        json.writeStringField("content", content.get());
      }
      json.writeEndObject();
    } catch (IOException unwritten) {
      throw new UncheckedIOException(unwritten);
    }
  }

  /** SHA-256 (FIPS 180-4) of a text in UTF-8. */
  static String sha256(String text) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest);
    } catch (NoSuchAlgorithmException missing) {
      throw new IllegalStateException("every Java has SHA-256", missing);
    }
  }
}
