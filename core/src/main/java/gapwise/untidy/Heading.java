package gapwise.untidy;

import gapwise.evidence.unit.Unit;
import gapwise.printed.Said;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The words over a column or beside a row, from the outermost inwards.
 *
 * @param words joined for people
 * @param said what they say of the numbers
 * @param concept what they speak of; empty where nothing is understood
 */
record Heading(String words, Said said, Optional<Concept> concept) {
  /** "> 5 cm" picks patients and names no quantity. */
  private static final Pattern LIMIT = Pattern.compile("[<>≥≤]|\\b(?:over|under|above|below) \\d");

  Heading {
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(said, "said");
    Objects.requireNonNull(concept, "concept");
  }

  static Heading of(List<String> parts) {
    List<String> distinct = new ArrayList<>();
    parts.stream()
        .map(String::strip)
        .filter(
            part ->
                !part.isEmpty()
                    && (distinct.isEmpty() || !distinct.get(distinct.size() - 1).equals(part)))
        .forEach(distinct::add);
    String joined = String.join(", ", distinct);
    String inner = distinct.isEmpty() ? "" : distinct.get(distinct.size() - 1);
    Said said = Said.read(joined);
    boolean innerSaysHow = distinct.size() > 1 && Said.read(inner).rest().isEmpty();
    return new Heading(
        joined,
        said,
        (innerSaysHow ? Concepts.of(joined, said) : concept(joined, said, inner))
            .map(found -> limited(found, joined)));
  }

  /** The innermost words speak first; the outer ones where together they say more. */
  private static Optional<Concept> concept(String joined, Said said, String inner) {
    Optional<Concept> whole = Concepts.of(joined, said);
    Optional<Concept> alone = Concepts.of(inner, Said.read(inner));
    if (alone.isEmpty() || whole.isEmpty()) {
      return whole.isPresent() ? whole : alone;
    }
    return whole.get().words() > alone.get().words() ? whole : alone;
  }

  private static Concept limited(Concept concept, String joined) {
    return LIMIT.matcher(joined).find() && concept.over().isEmpty()
        ? new Concept(concept.target(), concept.words(), List.of(joined), concept.rivals())
        : concept;
  }

  /** The same with more that is said of the numbers. */
  Heading and(Said more) {
    return new Heading(words, more.and(said), concept);
  }

  /** The same in the unit of a neighbour that speaks of the same, where it names none. */
  Heading inUnitOf(Heading neighbour) {
    Optional<Unit> unit = said.unit().or(() -> neighbour.said.unit());
    return new Heading(
        words, new Said(said.statistics(), unit, said.timePoint(), said.rest()), concept);
  }

  /** The same where a column of its own says what its numbers are. */
  Heading narrowed(Said column) {
    Said all =
        new Said(
            column.statistics().isEmpty() ? said.statistics() : column.statistics(),
            said.unit().or(column::unit),
            said.timePoint().or(column::timePoint),
            said.rest());
    return new Heading(words, all, concept);
  }

  String target() {
    return concept.map(Concept::target).orElse("");
  }

  String folded() {
    return Words.folded(words);
  }

  /** The same with what a neighbour speaks of, for a heading that says "SD" alone. */
  Heading under(Heading neighbour) {
    return new Heading(
        neighbour.words + ", " + words,
        new Said(
            said.statistics(),
            said.unit().or(() -> neighbour.said.unit()),
            said.timePoint().or(() -> neighbour.said.timePoint()),
            neighbour.said.rest()),
        neighbour.concept);
  }
}
