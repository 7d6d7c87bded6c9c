package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;

/**
 * A way in which papers say when an outcome counts as reached; one paper may ask for several at
 * once. The vocabulary is the resource {@code definition-kinds.json}, where {@code signs} are the
 * words by which a kind is recognised in a paper's own definition (common practice, no source).
 *
 * @param code stable kebab-case code
 * @param label name in full
 * @param families families of outcomes that it can define
 * @param signs any of them proposes it
 * @param unless none of them may stand beside a sign
 */
public record DefinitionKind(
    String code, String label, Set<String> families, List<Pattern> signs, List<Pattern> unless)
    implements Coded {
  private static final Vocabulary<DefinitionKind> VOCABULARY =
      Vocabulary.read("definition-kinds.json", DefinitionKind::read);

  public DefinitionKind {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(label, "label");
    families = Set.copyOf(families);
    signs = List.copyOf(signs);
    unless = List.copyOf(unless);
  }

  private static DefinitionKind read(JsonNode node) {
    return new DefinitionKind(
        node.required("code").asText(),
        node.required("label").asText(),
        Set.copyOf(texts(node.required("families"))),
        patterns(node.required("signs")),
        patterns(node.path("unless")));
  }

  private static List<String> texts(JsonNode list) {
    return StreamSupport.stream(list.spliterator(), false).map(JsonNode::asText).toList();
  }

  private static List<Pattern> patterns(JsonNode list) {
    return texts(list).stream().map(Pattern::compile).toList();
  }

  /** All kinds in the order in which lists show them. */
  public static Vocabulary<DefinitionKind> vocabulary() {
    return VOCABULARY;
  }

  @JsonCreator
  public static DefinitionKind of(String code) {
    return VOCABULARY.get(code);
  }

  /** The kinds that can define an outcome, in the order of the vocabulary. */
  public static List<DefinitionKind> of(Outcome outcome) {
    return VOCABULARY.all().stream()
        .filter(kind -> kind.families().contains(outcome.family()))
        .toList();
  }

  /**
   * What a paper's own words seem to ask for, to be confirmed by a person; empty where nothing is
   * recognised.
   *
   * @param family of the outcome that the words define
   */
  public static List<DefinitionKind> proposed(String family, String words) {
    String text = words.toLowerCase(Locale.ROOT);
    return VOCABULARY.all().stream()
        .filter(kind -> kind.families().contains(family) && kind.isMeantBy(text))
        .toList();
  }

  private boolean isMeantBy(String text) {
    return signs.stream().anyMatch(sign -> sign.matcher(text).find())
        && unless.stream().noneMatch(other -> other.matcher(text).find());
  }

  @Override
  @JsonValue
  public String code() {
    return code;
  }

  /** By the code alone, which no two entries share. */
  @Override
  public boolean equals(Object other) {
    return other instanceof DefinitionKind kind && kind.code.equals(code);
  }

  @Override
  public int hashCode() {
    return code.hashCode();
  }
}
