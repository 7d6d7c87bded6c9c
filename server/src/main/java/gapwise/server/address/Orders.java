package gapwise.server.address;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.search.StudySearch.Order;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The orders of a list: their words, and their codes in addresses. */
public final class Orders {
  /** Orders with their words, as pages offer them. */
  public static final Map<Order, String> OFFERED = offered();

  private Orders() {}

  private static Map<Order, String> offered() {
    Map<Order, String> words = new EnumMap<>(Order.class);
    words.put(Order.RELEVANCE, "Best fit first");
    words.put(Order.YEAR_DESCENDING, "Newest first");
    words.put(Order.YEAR_ASCENDING, "Oldest first");
    words.put(Order.DEFECT_ASCENDING, "Shortest missing bone first");
    words.put(Order.DEFECT_DESCENDING, "Longest missing bone first");
    words.put(Order.PATIENTS_DESCENDING, "Most patients first");
    words.put(Order.TITLE, "By title");
    return Collections.unmodifiableMap(words);
  }

  public static String code(Order order) {
    return order.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * The order that an address asks for: best fit first when there are words, else newest first.
   *
   * @throws WrongInputException when it is none
   */
  public static Order read(Address address) {
    String text = address.first("order");
    if (text.isEmpty()) {
      return address.first("q").isEmpty() ? Order.YEAR_DESCENDING : Order.RELEVANCE;
    }
    return OFFERED.keySet().stream()
        .filter(order -> code(order).equals(text))
        .findFirst()
        .orElseThrow(() -> new WrongInputException(List.of(unknown(text))));
  }

  private static Problem unknown(String text) {
    String known = OFFERED.keySet().stream().map(Orders::code).collect(Collectors.joining(", "));
    return new Problem(
        "order", "unknown-code", "'" + text + "' is unknown; expected one of " + known);
  }
}
