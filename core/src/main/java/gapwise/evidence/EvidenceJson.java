package gapwise.evidence;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.util.List;
import java.util.SortedMap;

/**
 * Studies as JSON text and back, the form in which they are stored. What is empty is left out, so a
 * field that a later version adds reads as empty from older text.
 */
public final class EvidenceJson {
  private static final JsonSetter.Value ABSENT_IS_EMPTY =
      JsonSetter.Value.forValueNulls(Nulls.AS_EMPTY);
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .addModule(new Jdk8Module())
          .serializationInclusion(JsonInclude.Include.NON_EMPTY)
          .withConfigOverride(List.class, list -> list.setSetterInfo(ABSENT_IS_EMPTY))
          .withConfigOverride(SortedMap.class, map -> map.setSetterInfo(ABSENT_IS_EMPTY))
          .disable(MapperFeature.AUTO_DETECT_IS_GETTERS)
          .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
          .build();

  private EvidenceJson() {}

  /** The study as one line of JSON; the same study gives the same text. */
  public static String write(Study study) {
    try {
      return MAPPER.writeValueAsString(study);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("study " + study.id() + " cannot be written", e);
    }
  }

  /**
   * Reads what {@link #write} wrote.
   *
   * @throws IllegalArgumentException when the text is not a study
   */
  public static Study read(String json) {
    try {
      return MAPPER.readValue(json, Study.class);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException("not a study: " + e.getOriginalMessage(), e);
    }
  }
}
