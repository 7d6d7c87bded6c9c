package gapwise.cohort;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.time.Instant;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Decisions as JSON text and back, the form in which they are stored. */
public final class DecisionJson {
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .addModule(new Jdk8Module())
          .serializationInclusion(JsonInclude.Include.NON_EMPTY)
          .withConfigOverride(
              SortedMap.class,
              map -> map.setSetterInfo(JsonSetter.Value.forValueNulls(Nulls.AS_EMPTY)))
          .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .build();

  private DecisionJson() {}

  /** The form of a decision in text; the moment as ISO 8601. */
  private record Text(
      String first,
      String second,
      CohortDecision.Settled settled,
      String reason,
      String who,
      String when,
      Optional<String> counted,
      SortedMap<String, String> suppliers,
      String stoodOn) {}

  /** The decision as one line of JSON. */
  public static String write(CohortDecision decision) {
    try {
      return MAPPER.writeValueAsString(
          new Text(
              decision.first(),
              decision.second(),
              decision.settled(),
              decision.reason(),
              decision.who(),
              decision.when().toString(),
              decision.counted(),
              decision.suppliers(),
              decision.stoodOn()));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a decision cannot be written: " + decision.key(), e);
    }
  }

  /**
   * Reads what {@link #write} wrote.
   *
   * @throws IllegalArgumentException when the text is not a decision
   */
  public static CohortDecision read(String json) {
    try {
      ObjectNode node = (ObjectNode) MAPPER.readTree(json);
      Text text = MAPPER.treeToValue(node, Text.class);
      return new CohortDecision(
          text.first(),
          text.second(),
          text.settled(),
          text.reason(),
          text.who(),
          Instant.parse(text.when()),
          text.counted(),
          Optional.ofNullable(text.suppliers()).orElse(new TreeMap<>()),
          text.stoodOn());
    } catch (JsonProcessingException | RuntimeException e) {
      throw new IllegalArgumentException("not a decision about two records", e);
    }
  }
}
