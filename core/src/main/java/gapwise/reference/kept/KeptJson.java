package gapwise.reference.kept;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.deser.std.FromStringDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import gapwise.reference.Author;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * What is kept of references as JSON text and back, one line each. What is empty is left out, so a
 * field that a later version adds reads as empty from older text.
 */
public final class KeptJson {
  private static final JsonSetter.Value ABSENT_IS_EMPTY =
      JsonSetter.Value.forValueNulls(Nulls.AS_EMPTY);

  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .addModule(new Jdk8Module())
          .addModule(days())
          .addMixIn(Author.class, AuthorForm.class)
          .serializationInclusion(JsonInclude.Include.NON_EMPTY)
          .withConfigOverride(List.class, list -> list.setSetterInfo(ABSENT_IS_EMPTY))
          .withConfigOverride(String.class, text -> text.setSetterInfo(ABSENT_IS_EMPTY))
          .disable(MapperFeature.AUTO_DETECT_IS_GETTERS)
          .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private KeptJson() {}

  /** A person and a group are told apart by their fields. */
  @JsonTypeInfo(use = JsonTypeInfo.Id.DEDUCTION)
  @JsonSubTypes({@JsonSubTypes.Type(Author.Person.class), @JsonSubTypes.Type(Author.Group.class)})
  private interface AuthorForm {}

  private static SimpleModule days() {
    SimpleModule module = new SimpleModule("days");
    module.addSerializer(LocalDate.class, ToStringSerializer.instance);
    module.addSerializer(Instant.class, ToStringSerializer.instance);
    module.addDeserializer(
        LocalDate.class,
        new FromStringDeserializer<LocalDate>(LocalDate.class) {
          private static final long serialVersionUID = 1L;

          @Override
          protected LocalDate _deserialize(
              String text, com.fasterxml.jackson.databind.DeserializationContext context) {
            return LocalDate.parse(text);
          }
        });
    module.addDeserializer(
        Instant.class,
        new FromStringDeserializer<Instant>(Instant.class) {
          private static final long serialVersionUID = 1L;

          @Override
          protected Instant _deserialize(
              String text, com.fasterxml.jackson.databind.DeserializationContext context) {
            return Instant.parse(text);
          }
        });
    return module;
  }

  /** A reference, load, search or decision as one line of JSON. */
  public static String write(Object kept) {
    try {
      return MAPPER.writeValueAsString(kept);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("it cannot be written as JSON", e);
    }
  }

  /**
   * Reads what {@link #write} wrote.
   *
   * @throws IllegalArgumentException when the text is none
   */
  public static <T> T read(String json, Class<T> kind) {
    try {
      T value = MAPPER.readValue(json, kind);
      if (value == null) {
        throw new IllegalArgumentException("not a " + kind.getSimpleName());
      }
      return value;
    } catch (JsonProcessingException | RuntimeException e) {
      throw new IllegalArgumentException("not a " + kind.getSimpleName(), e);
    }
  }
}
