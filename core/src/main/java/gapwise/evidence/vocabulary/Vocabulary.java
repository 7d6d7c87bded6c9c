package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * An ordered list of coded entries read from a resource beside this package. A new entry in the
 * resource is all that it takes to add one.
 *
 * @param <T> the kind of entry
 */
public final class Vocabulary<T extends Coded> {
  private final Map<String, T> byCode;
  private final List<String> codes;
  private final List<T> all;
  private final Map<String, T> bySpelling;

  private Vocabulary(Map<String, T> byCode, Map<String, T> bySpelling) {
    this.byCode = Collections.unmodifiableMap(byCode);
    this.codes = List.copyOf(byCode.keySet());
    this.all = List.copyOf(byCode.values());
    this.bySpelling = Map.copyOf(bySpelling);
  }

  /**
   * Reads a resource: an array of objects with at least {@code code}, and optionally {@code
   * spellings}, further words under which people look for the entry.
   */
  static <T extends Coded> Vocabulary<T> read(String resource, Function<JsonNode, T> entry) {
    Map<String, T> byCode = new LinkedHashMap<>();
    Map<String, T> bySpelling = new LinkedHashMap<>();
    for (JsonNode node : tree(resource)) {
      T value = entry.apply(node);
      if (byCode.put(value.code(), value) != null) {
        throw new IllegalStateException(resource + " has the code " + value.code() + " twice");
      }
      bySpelling.put(folded(value.code()), value);
      bySpelling.put(folded(value.label()), value);
      node.path("spellings").forEach(word -> bySpelling.putIfAbsent(folded(word.asText()), value));
    }
    return new Vocabulary<>(byCode, bySpelling);
  }

  private static JsonNode tree(String resource) {
    try (InputStream stream = Vocabulary.class.getResourceAsStream(resource)) {
      if (stream == null) {
        throw new IllegalStateException("missing resource " + resource);
      }
      return JsonMapper.builder().build().readTree(stream);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String folded(String text) {
    return text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_/-]+", " ");
  }

  /** All entries in the order of the resource. */
  public List<T> all() {
    return all;
  }

  /** The entry with exactly this code. */
  public Optional<T> find(String code) {
    return Optional.ofNullable(byCode.get(code));
  }

  /** The entry with this code, name or other spelling, without regard to case and hyphens. */
  public Optional<T> parse(String text) {
    return Optional.ofNullable(bySpelling.get(folded(text)));
  }

  /** Every folded spelling with its entry, for reading plain words. */
  public Map<String, T> spellings() {
    return bySpelling;
  }

  /**
   * The entry with exactly this code.
   *
   * @throws IllegalArgumentException when there is none, naming the codes there are
   */
  public T get(String code) {
    return find(code)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "unknown code '" + code + "', expected one of " + String.join(", ", codes())));
  }

  /** All codes in order. */
  public List<String> codes() {
    return codes;
  }
}
