package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.StreamSupport;

/**
 * A published instrument by which people judge how a study was made; the vocabulary is the resource
 * {@code instruments.json}. Its items stand here in short words of our own, never in the text of
 * the instrument, which is read beside.
 *
 * @param code stable kebab-case code
 * @param label its published short name
 * @param about what it is for, in a line
 * @param version the version that the items belong to
 * @param citation where it was published
 * @param designs designs that it is made for
 * @param perOutcome whether it is answered for one outcome, not for the study as a whole
 * @param points what its answers are counted in, such as points or stars; empty where it has none
 * @param overallBy how an overall judgement comes about
 * @param items what is judged, in its order
 * @param judgements the answers that it allows, from best to worst
 * @param overall the overall judgements that it allows, from best to worst
 */
public record Instrument(
    String code,
    String label,
    String about,
    String version,
    String citation,
    Set<Design> designs,
    boolean perOutcome,
    Optional<String> points,
    OverallBy overallBy,
    List<Item> items,
    List<Judgement> judgements,
    List<Judgement> overall)
    implements Coded {

  /** How an overall judgement comes about. */
  public enum OverallBy {
    /**
     * At least as bad as the worst domain, by the publication; several domains together may make it
     * worse, which people decide (Sterne et al., BMJ 2016;355:i4919; BMJ 2019;366:l4898).
     */
    WORST_DOMAIN,
    /** The publication has no bands: what the reviewers say overall, in words of risk. */
    REVIEWERS
  }

  /**
   * One item or domain.
   *
   * @param code kebab-case, unique in the instrument
   * @param label short words of our own
   * @param comparative whether it is asked only where groups are compared
   */
  public record Item(String code, String label, boolean comparative) {}

  /**
   * One answer.
   *
   * @param code kebab-case, unique in its list
   * @param label its words
   * @param letter one or two letters for a mark
   * @param points what it counts; empty where nothing is counted
   * @param risk the risk of bias that it stands for as an overall judgement; empty where the answer
   *     is not about risk
   * @param notAsked whether it says that the item does not apply
   * @param only codes of the items that allow it; empty for all
   */
  public record Judgement(
      String code,
      String label,
      String letter,
      OptionalInt points,
      Optional<Risk> risk,
      boolean notAsked,
      Set<String> only) {
    public Judgement {
      Objects.requireNonNull(points, "points");
      Objects.requireNonNull(risk, "risk");
      only = Set.copyOf(only);
    }

    private static Judgement read(JsonNode node) {
      return new Judgement(
          node.required("code").asText(),
          node.required("label").asText(),
          node.required("letter").asText(),
          node.has("points") ? OptionalInt.of(node.get("points").asInt()) : OptionalInt.empty(),
          Optional.ofNullable(node.get("risk")).map(risk -> Risk.ofCode(risk.asText())),
          node.path("notAsked").asBoolean(),
          Set.copyOf(list(node.path("only"), JsonNode::asText)));
    }

    private static Judgement ofRisk(Risk risk) {
      return new Judgement(
          risk.code(),
          risk.label(),
          risk.letter(),
          OptionalInt.empty(),
          Optional.of(risk),
          false,
          Set.of());
    }
  }

  private static final Vocabulary<Instrument> VOCABULARY =
      Vocabulary.read("instruments.json", Instrument::read);

  public Instrument {
    designs = Set.copyOf(designs);
    Objects.requireNonNull(points, "points");
    items = List.copyOf(items);
    judgements = List.copyOf(judgements);
    overall = List.copyOf(overall);
  }

  private static Instrument read(JsonNode node) {
    List<Judgement> judgements = list(node.required("judgements"), Judgement::read);
    return new Instrument(
        node.required("code").asText(),
        node.required("label").asText(),
        node.required("about").asText(),
        node.required("version").asText(),
        node.required("citation").asText(),
        Set.copyOf(list(node.required("designs"), one -> Design.ofCode(one.asText()))),
        node.required("perOutcome").asBoolean(),
        Optional.ofNullable(node.get("points")).map(JsonNode::asText),
        node.required("overallBy").asText().equals("worst-domain")
            ? OverallBy.WORST_DOMAIN
            : OverallBy.REVIEWERS,
        list(
            node.required("items"),
            item ->
                new Item(
                    item.required("code").asText(),
                    item.required("label").asText(),
                    item.path("comparative").asBoolean())),
        judgements,
        node.has("overall")
            ? list(node.get("overall"), risk -> Judgement.ofRisk(Risk.ofCode(risk.asText())))
            : judgements);
  }

  private static <T> List<T> list(JsonNode node, Function<JsonNode, T> entry) {
    return StreamSupport.stream(node.spliterator(), false).map(entry).toList();
  }

  /** All instruments in the order in which lists show them. */
  public static Vocabulary<Instrument> vocabulary() {
    return VOCABULARY;
  }

  @JsonCreator
  public static Instrument of(String code) {
    return VOCABULARY.get(code);
  }

  @Override
  @JsonValue
  public String code() {
    return code;
  }

  /** The item with this code, if the instrument has it. */
  public Optional<Item> item(String item) {
    return items.stream().filter(one -> one.code().equals(item)).findFirst();
  }

  /** The answers that an item allows, from best to worst. */
  public List<Judgement> allowed(Item item) {
    return judgements.stream()
        .filter(one -> one.only().isEmpty() || one.only().contains(item.code()))
        .toList();
  }

  /** The answer with this code that an item allows. */
  public Optional<Judgement> judgement(Item item, String judgement) {
    return allowed(item).stream().filter(one -> one.code().equals(judgement)).findFirst();
  }

  /** The overall judgement with this code. */
  public Optional<Judgement> overall(String judgement) {
    return overall.stream().filter(one -> one.code().equals(judgement)).findFirst();
  }

  /** How bad an overall judgement is beside the others: 0 is best. */
  public int worseness(Judgement judgement) {
    return overall.indexOf(judgement);
  }

  /** The most that an item can count; 0 where nothing is counted. */
  public int most(Item item) {
    return allowed(item).stream().mapToInt(one -> one.points().orElse(0)).max().orElse(0);
  }

  /** Every code that any item or the overall judgement allows, without repeats. */
  public Set<String> judgementCodes() {
    Set<String> codes = new LinkedHashSet<>();
    judgements.forEach(one -> codes.add(one.code()));
    overall.forEach(one -> codes.add(one.code()));
    return codes;
  }

  /** By the code alone, which no two entries share. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Instrument instrument && instrument.code.equals(code);
  }

  @Override
  public int hashCode() {
    return code.hashCode();
  }
}
