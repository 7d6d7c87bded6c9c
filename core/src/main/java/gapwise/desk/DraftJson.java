package gapwise.desk;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;

/** Drafts as JSON text and back, the form in which they are kept. */
final class DraftJson {
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .addModule(new Jdk8Module())
          .serializationInclusion(JsonInclude.Include.NON_ABSENT)
          .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .build();

  private DraftJson() {}

  static String write(Draft draft) {
    try {
      return MAPPER.writeValueAsString(draft);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("draft of " + draft.study() + " cannot be written", e);
    }
  }

  static Draft read(String json) {
    try {
      return MAPPER.readValue(json, Draft.class);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("not a draft: " + e.getOriginalMessage(), e);
    }
  }
}
