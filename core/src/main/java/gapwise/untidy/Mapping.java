package gapwise.untidy;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.evidence.unit.Unit;
import gapwise.printed.Said;
import gapwise.printed.Statistic;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What the columns of one kind of sheet hold, as a person accepted it. It is found again for the
 * next sheet with the same words in its header, and applied in place of what is proposed.
 *
 * @param columns one for each column, or row of a table that lies on its side
 */
public record Mapping(List<Column> columns) {
  private static final JsonMapper JSON =
      JsonMapper.builder().addModule(new com.fasterxml.jackson.datatype.jdk8.Jdk8Module()).build();

  /** Most columns that a mapping holds; a sheet has no more. */
  private static final int MOST_COLUMNS = 2_000;

  public Mapping {
    columns = List.copyOf(columns);
    if (columns.size() > MOST_COLUMNS) {
      throw new IllegalArgumentException("a mapping has at most " + MOST_COLUMNS + " columns");
    }
  }

  /**
   * What one column holds.
   *
   * @param header its words, folded: small letters, single spaces
   * @param target what it speaks of, a target of {@code concepts.txt}; empty to leave the column
   * @param statistics what its numbers are, which tells too how its cells are split
   * @param unit of numbers that name none
   */
  @JsonInclude(JsonInclude.Include.NON_EMPTY)
  public record Column(
      String header, String target, List<Statistic> statistics, Optional<Unit> unit) {
    public Column {
      Objects.requireNonNull(header, "header");
      target = Objects.requireNonNullElse(target, "");
      statistics = statistics == null ? List.of() : List.copyOf(statistics);
      unit = Objects.requireNonNullElse(unit, Optional.empty());
    }
  }

  /** The mapping as JSON. */
  public String toJson() {
    try {
      return JSON.writeValueAsString(this);
    } catch (JsonProcessingException impossible) {
      throw new IllegalStateException("a mapping can be written", impossible);
    }
  }

  /** The mapping as a tree of JSON. */
  JsonNode toTree() {
    return JSON.valueToTree(this);
  }

  /**
   * Reads what {@link #toJson} wrote.
   *
   * @throws IllegalArgumentException for any other text
   */
  public static Mapping ofJson(String json) {
    try {
      return JSON.readValue(json, Mapping.class);
    } catch (JsonProcessingException wrong) {
      throw new IllegalArgumentException("not a mapping of columns", wrong);
    }
  }

  /**
   * Whether it was made for a table with these headers: all its columns are there, in any order.
   */
  boolean isFor(Logical table) {
    List<String> headers = table.variables().stream().map(one -> one.heading().folded()).toList();
    return !columns.isEmpty()
        && headers.size() == columns.size()
        && columns.stream().allMatch(column -> headers.contains(column.header()));
  }

  /**
   * The table with what the mapping says of its columns: of those with the same words, of the first
   * what it says of the first, and so on.
   */
  Logical applied(Logical table) {
    List<Column> left = new ArrayList<>(columns);
    return table.with(table.variables().stream().map(variable -> applied(variable, left)).toList());
  }

  private static Variable applied(Variable variable, List<Column> left) {
    Optional<Column> own =
        left.stream()
            .filter(column -> column.header().equals(variable.heading().folded()))
            .findFirst();
    own.ifPresent(left::remove);
    return own.map(column -> variable.with(heading(variable.heading(), column))).orElse(variable);
  }

  /** The same with another column in place of one. */
  public Mapping with(int index, Column column) {
    List<Column> others = new ArrayList<>(columns);
    others.set(index, column);
    return new Mapping(others);
  }

  private static Heading heading(Heading before, Column column) {
    Optional<Concept> concept =
        column.target().isEmpty()
            ? Optional.empty()
            : Optional.of(new Concept(column.target(), 1, List.of(), List.of()));
    Said said =
        new Said(
            column.statistics(), column.unit(), before.said().timePoint(), before.said().rest());
    return new Heading(before.words(), said, concept);
  }

  /** What is proposed for a table. */
  static Mapping proposed(Logical table) {
    return new Mapping(
        table.variables().stream()
            .map(
                one ->
                    new Column(
                        one.heading().folded(),
                        one.target(),
                        one.heading().said().statistics(),
                        one.heading().said().unit()))
            .toList());
  }
}
