package gapwise.decision.sheet;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Reads the plain words that stand as data beside this room. */
final class Plain {
  private Plain() {}

  static <T> Map<String, T> read(String resource, String key, Function<JsonNode, T> entry) {
    try (InputStream stream = Plain.class.getResourceAsStream(resource)) {
      if (stream == null) {
        throw new IllegalStateException("missing resource " + resource);
      }
      Map<String, T> all = new HashMap<>();
      for (JsonNode node : JsonMapper.builder().build().readTree(stream)) {
        if (all.put(node.required(key).asText(), entry.apply(node)) != null) {
          throw new IllegalStateException(resource + " has an entry twice: " + node);
        }
      }
      return Map.copyOf(all);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static <T> T get(Map<String, T> all, String code) {
    return Optional.ofNullable(all.get(code))
        .orElseThrow(() -> new IllegalArgumentException("no plain words are written for " + code));
  }
}
