package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.databind.JsonNode;
import gapwise.evidence.unit.Unit;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Something that can become of a patient; the vocabulary is the resource {@code outcomes.json}.
 *
 * @param code stable kebab-case code
 * @param label name in full
 * @param family heading under which lists show it
 * @param kind what sort of numbers it has
 * @param better which direction is better for the patient
 * @param amount in what it is compared; empty for events and categories
 * @param event for events, who is counted and what became of them; empty for others
 * @param reached for times, what patients have done when it ends, as in "57 of 100 had united by
 *     month 12": "had united"; empty for others
 * @param leastFollowUpMonths follow-up below which a result is not to be believed (common practice,
 *     no source, unless the resource says otherwise)
 * @param needsClock whether a time means nothing without its origin
 * @param needsFrame whether it exists only for methods with an external frame
 * @param explained what it means
 */
public record Outcome(
    String code,
    String label,
    String family,
    Kind kind,
    Better better,
    Optional<Amount> amount,
    Optional<Event> event,
    Optional<String> reached,
    OptionalDouble leastFollowUpMonths,
    boolean needsClock,
    boolean needsFrame,
    Explained explained)
    implements Coded {

  /**
   * What an outcome means, and what is different about it from paper to paper.
   *
   * @param meaning what it is, in one sentence
   * @param differs how papers differ in what they count or measure under its name, in whole
   *     sentences (common practice, no source)
   * @param caution what a reader must know beside a result; may be empty
   */
  public record Explained(String meaning, String differs, Optional<String> caution) {
    public Explained {
      Objects.requireNonNull(caution, "caution");
      if (meaning.isBlank() || differs.isBlank()) {
        throw new IllegalArgumentException("an outcome needs its meaning and how papers differ");
      }
    }
  }

  /**
   * What is measured of one patient.
   *
   * @param unit the unit in which it is compared
   * @param neverNegative whether it can be 0 or more and nothing else, however it is measured. A
   *     difference in the length of legs may be given with its sign; a distance walked has none
   */
  public record Amount(Unit unit, boolean neverNegative) {
    /** What is below 0 in no unit. */
    private static final Set<Unit.Dimension> NEVER =
        Set.of(Unit.Dimension.TIME, Unit.Dimension.TIME_PER_LENGTH, Unit.Dimension.VOLUME);

    private static Amount read(JsonNode node, Kind kind) {
      Unit unit = Unit.ofSymbol(node.required("unit").asText());
      return new Amount(
          unit,
          node.path("neverNegative").asBoolean()
              || kind == Kind.COST
              || kind == Kind.COUNT
              || NEVER.contains(unit.dimension()));
    }
  }

  /**
   * Who is counted and what became of them.
   *
   * @param counted who, as a plural: "docking sites"
   * @param such which of them, as in "88 of 100 docking sites not united": "not united"
   * @param became what they did, as in "none of 20 docking sites failed to unite": "failed to
   *     unite"
   * @param complement code of the outcome that counts the rest of the same patients, as not united
   *     is the rest of united; empty where no outcome does
   */
  public record Event(String counted, String such, String became, Optional<String> complement) {
    private static Event read(JsonNode node, Optional<String> complement) {
      return new Event(
          node.required("counted").asText(),
          node.required("such").asText(),
          node.required("became").asText(),
          complement);
    }
  }

  /** What sort of numbers an outcome has. */
  public enum Kind {
    EVENT,
    TIME,
    QUANTITY,
    COUNT,
    SCORE,
    CATEGORIES,
    COST,
    PHASE
  }

  /** Direction of benefit. */
  public enum Better {
    MORE,
    LESS,
    NEITHER
  }

  private static final Vocabulary<Outcome> VOCABULARY =
      Vocabulary.read("outcomes.json", Outcome::read);

  private static Outcome read(JsonNode node) {
    Kind kind = Kind.valueOf(node.required("kind").asText().toUpperCase(Locale.ROOT));
    return new Outcome(
        node.required("code").asText(),
        node.required("label").asText(),
        node.required("family").asText(),
        kind,
        Better.valueOf(node.required("better").asText().toUpperCase(Locale.ROOT)),
        node.has("unit") ? Optional.of(Amount.read(node, kind)) : Optional.empty(),
        Optional.ofNullable(node.get("event"))
            .map(event -> Event.read(event, text(node, "complement"))),
        kind == Kind.TIME ? Optional.of(node.required("reached").asText()) : Optional.empty(),
        node.has("leastFollowUpMonths")
            ? OptionalDouble.of(node.get("leastFollowUpMonths").asDouble())
            : OptionalDouble.empty(),
        node.path("needsClock").asBoolean(),
        node.path("needsFrame").asBoolean(),
        new Explained(
            node.required("meaning").asText(),
            node.required("differs").asText(),
            text(node, "caution")));
  }

  private static Optional<String> text(JsonNode node, String field) {
    return Optional.ofNullable(node.get(field)).map(JsonNode::asText);
  }

  /** All outcomes in the order in which lists show them. */
  public static Vocabulary<Outcome> vocabulary() {
    return VOCABULARY;
  }

  @JsonCreator
  public static Outcome of(String code) {
    return VOCABULARY.get(code);
  }

  @Override
  @JsonValue
  public String code() {
    return code;
  }

  /** What it is, in one sentence. */
  public String meaning() {
    return explained.meaning();
  }

  /** How papers differ in what they count or measure under its name, in whole sentences. */
  public String differs() {
    return explained.differs();
  }

  /** What a reader must know beside a result; may be empty. */
  public Optional<String> caution() {
    return explained.caution();
  }

  /** The unit in which it is compared; empty for events and categories. */
  public Optional<Unit> unit() {
    return amount.map(Amount::unit);
  }

  /**
   * Whether means of it are told on the log scale, where no limit reaches below 0: what cannot be
   * negative and has no upper end. Scores, which have both, are not among them.
   */
  public boolean isNeverNegative() {
    return amount.map(Amount::neverNegative).orElse(false);
  }

  /** Whether it is counted as events of a total. */
  public boolean isEvent() {
    return kind == Kind.EVENT;
  }

  /** Whether it is given as a mean or median of patients: neither counted of all nor in grades. */
  public boolean isMeasured() {
    return kind != Kind.EVENT && kind != Kind.CATEGORIES && kind != Kind.PHASE;
  }

  /** For events, who is counted with what became of them: "limbs united"; empty for others. */
  public Optional<String> happened() {
    return event.map(one -> one.counted() + " " + one.such());
  }

  /** The outcome that counts the rest of the same patients; empty where none does. */
  public Optional<Outcome> otherSide() {
    return event.flatMap(Event::complement).map(Outcome::of);
  }

  /** By the code alone, which no two entries share: entries are looked up again and again. */
  @Override
  public int hashCode() {
    return code.hashCode();
  }
}
