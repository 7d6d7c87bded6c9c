package gapwise.analysis.plan;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.JsonNode;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.Set;

/**
 * How much a plan holds, counted token by token and held against the budget before a tree is made
 * of it, defaults are filled in or its form is checked, all of which take many times the memory of
 * the text.
 */
public final class PlanSize {
  /** Where rows of data may stand. */
  private static final Set<String> ROWS =
      Set.of("source.rows", "summaries.rows", "numbersAtRisk.rows");

  private static final String ADVICE =
      "Leave out what the question does not need, or run the plan on the command line with --limit ";

  private final Deque<Container> open = new ArrayDeque<>();
  private long values;

  private PlanSize() {}

  /** An object or a list that is being read. */
  private static final class Container {
    private final boolean list;
    private String field = "";
    private long count;

    Container(boolean list) {
      this.list = list;
    }
  }

  /**
   * Counts a plan that is a tree already.
   *
   * @throws gapwise.problem.WrongInputException when it holds more than the budget allows
   */
  public static void check(JsonNode plan) {
    try (JsonParser tokens = plan.traverse()) {
      check(tokens);
    } catch (IOException e) {
      throw new UncheckedIOException("a tree in memory cannot be read", e);
    }
  }

  /**
   * Counts to the end of the tokens.
   *
   * @throws gapwise.problem.WrongInputException when there is more than the budget allows
   * @throws IOException if the tokens are no JSON
   */
  public static void check(JsonParser tokens) throws IOException {
    PlanSize size = new PlanSize();
    for (JsonToken token = tokens.nextToken(); token != null; token = tokens.nextToken()) {
      size.take(token, tokens);
    }
    require(Limit.CELLS, size.values, "");
  }

  private void take(JsonToken token, JsonParser tokens) throws IOException {
    switch (token) {
      case FIELD_NAME -> {
        Container object = open.element();
        object.field = tokens.currentName();
        object.count++;
        hold(Limit.LETTERS, object.field.length());
      }
      case START_OBJECT, START_ARRAY -> {
        entry();
        open.push(new Container(token == JsonToken.START_ARRAY));
      }
      case END_OBJECT, END_ARRAY -> close();
      case VALUE_STRING -> {
        entry();
        hold(Limit.LETTERS, tokens.getTextLength());
      }
      default -> entry();
    }
  }

  /** A value begins: one more of its list, if it stands in one. */
  private void entry() {
    values++;
    Container around = open.peek();
    if (around != null && around.list) {
      around.count++;
    }
    if (values % 1_000 == 0) {
      Work.check();
    }
  }

  private void close() {
    Container closed = open.pop();
    if (!closed.list) {
      hold(Limit.COLUMNS, closed.count);
    } else if (open.size() == 2 && ROWS.contains(place())) {
      hold(Limit.ROWS, closed.count);
    } else {
      hold(Limit.ENTRIES, closed.count);
    }
  }

  /** Places are put into words only where there is something to tell. */
  private void hold(Limit limit, long found) {
    if (found > Work.current().budget().most(limit)) {
      require(limit, found, place());
    }
  }

  private static void require(Limit limit, long found, String where) {
    Work.require(limit, found, where, ADVICE + limit.code() + "=" + found + ".");
  }

  /** Where the value is that is being read or was closed last. */
  private String place() {
    StringBuilder place = new StringBuilder();
    for (Iterator<Container> from = open.descendingIterator(); from.hasNext(); ) {
      Container container = from.next();
      if (container.list) {
        place.append('[').append(container.count - 1).append(']');
      } else {
        place.append(place.length() == 0 ? "" : ".").append(container.field);
      }
    }
    return place.toString();
  }
}
