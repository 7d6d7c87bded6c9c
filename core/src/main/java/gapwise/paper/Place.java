package gapwise.paper;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Where in a paper something stands.
 *
 * @param page from 1
 * @param boxes one for each line of it, at least one, at most {@link #MOST_BOXES}
 * @param words as printed, without raised marks, with single spaces
 */
public record Place(int page, List<Box> boxes, String words) {
  /** More lines than a page has. */
  public static final int MOST_BOXES = 500;

  private static final int MOST_LETTERS = 32_767;

  public Place {
    boxes = List.copyOf(boxes);
    Objects.requireNonNull(words, "words");
    if (page < 1 || boxes.isEmpty() || boxes.size() > MOST_BOXES) {
      throw new IllegalArgumentException("a place needs a page from 1 and 1 to 500 boxes");
    }
  }

  /** As JSON: {@code {"page": 2, "boxes": [[left, top, right, bottom]], "words": "26 of 32"}}. */
  public ObjectNode toJson() {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("page", page);
    ArrayNode all = node.putArray("boxes");
    for (Box box : boxes) {
      ArrayNode one = all.addArray();
      one.add(tenths(box.left())).add(tenths(box.top()));
      one.add(tenths(box.right())).add(tenths(box.bottom()));
    }
    node.put("words", words);
    return node;
  }

  private static double tenths(double points) {
    return Math.rint(points * 10) / 10;
  }

  /**
   * From JSON.
   *
   * @throws WrongInputException if it is no place
   */
  public static Place of(JsonNode node) {
    JsonNode page = node.path("page");
    JsonNode boxes = node.path("boxes");
    JsonNode words = node.path("words");
    boolean whole =
        page.isInt()
            && page.intValue() >= 1
            && boxes.isArray()
            && boxes.size() >= 1
            && boxes.size() <= MOST_BOXES
            && words.isTextual()
            && words.textValue().length() <= MOST_LETTERS;
    if (!whole) {
      throw wrong();
    }
    List<Box> read = new ArrayList<>();
    for (JsonNode box : boxes) {
      read.add(box(box));
    }
    return new Place(page.intValue(), read, words.textValue());
  }

  private static Box box(JsonNode box) {
    double[] edges = new double[4];
    for (int i = 0; i < 4; i++) {
      JsonNode edge = box.path(i);
      if (!box.isArray()
          || box.size() != 4
          || !edge.isNumber()
          || !Double.isFinite(edge.doubleValue())) {
        throw wrong();
      }
      edges[i] = edge.doubleValue();
    }
    if (edges[0] > edges[2] || edges[1] > edges[3]) {
      throw wrong();
    }
    return new Box(edges[0], edges[1], edges[2], edges[3]);
  }

  private static WrongInputException wrong() {
    return new WrongInputException(
        List.of(
            new Problem(
                "place",
                "no-place",
                "A place needs a page from 1, boxes of four numbers each (left, top, right,"
                    + " bottom), and words.")));
  }
}
