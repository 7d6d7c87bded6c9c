package gapwise.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A paper or book that a method is taken from.
 *
 * @param authors as a list of references prints them
 * @param source journal, or place and publisher
 * @param volume empty for a book
 * @param pages first and last, or the article's number; empty for a whole book
 * @param doi empty where it was not confirmed
 */
public record Citation(
    String authors,
    String title,
    String source,
    int year,
    Optional<String> volume,
    Optional<String> pages,
    Optional<String> doi) {
  private static final Map<String, Citation> ALL = read();

  private static Map<String, Citation> read() {
    Map<String, Citation> all = new LinkedHashMap<>();
    try (InputStream in = Citation.class.getResourceAsStream("references.json")) {
      for (JsonNode one : JsonMapper.builder().build().readTree(in)) {
        Citation citation =
            new Citation(
                one.get("authors").asText(),
                one.get("title").asText(),
                one.get("source").asText(),
                one.get("year").asInt(),
                text(one, "volume"),
                text(one, "pages"),
                text(one, "doi"));
        if (all.put(one.get("key").asText(), citation) != null) {
          throw new IllegalStateException("two references are called " + one.get("key").asText());
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException("the list of references cannot be read", e);
    }
    return Collections.unmodifiableMap(all);
  }

  private static Optional<String> text(JsonNode one, String field) {
    return Optional.ofNullable(one.get(field)).map(JsonNode::asText);
  }

  /** All of them by name, such as "egger-1997". */
  static Map<String, Citation> all() {
    return ALL;
  }

  /** The one of a name that there is. */
  static Citation named(String key) {
    return Objects.requireNonNull(ALL.get(key), key);
  }

  /** The one that a list of references prints so; empty where none is. */
  public static Optional<Citation> ofLine(String line) {
    return ALL.values().stream().filter(one -> one.line().equals(line)).findFirst();
  }

  /** Its name in lists: letters of the first author, and the year. */
  public String key() {
    return authors.split("[ ,]", 2)[0].toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "")
        + "-"
        + year;
  }

  /** As a list of references prints it, without its number. */
  public String line() {
    StringBuilder line = new StringBuilder(authors + ". " + title + ". " + source);
    if (volume.isPresent()) {
      line.append(". ").append(year).append(';').append(volume.get());
      pages.ifPresent(p -> line.append(':').append(p));
    } else {
      line.append("; ").append(year);
      pages.ifPresent(p -> line.append(". p. ").append(p));
    }
    line.append('.');
    doi.ifPresent(d -> line.append(" doi:").append(d));
    return line.toString();
  }
}
