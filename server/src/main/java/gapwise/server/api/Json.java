package gapwise.server.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.evidence.vocabulary.Coded;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;

/** JSON answers of the API. */
final class Json {
  private Json() {}

  static void answer(Context context, JsonNode json) {
    context
        .contentType("application/json")
        .result(json.toString().getBytes(StandardCharsets.UTF_8));
  }

  static ObjectNode object() {
    return JsonNodeFactory.instance.objectNode();
  }

  /** A word of a vocabulary with its code and name. */
  static ObjectNode word(Coded word) {
    return object().put("code", word.code()).put("label", word.label());
  }
}
