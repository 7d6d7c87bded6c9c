package gapwise.reference.format;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.problem.Problem;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Parts a list of JSON objects into its items by counting brackets, so that a damaged item costs
 * itself alone; long texts are shortened before they are read.
 */
final class JsonItems {
  /** A comma too many and a tab within a text are forgiven, as nothing is lost by them. */
  private static final ObjectMapper JSON =
      JsonMapper.builder()
          .enable(JsonReadFeature.ALLOW_TRAILING_COMMA)
          .enable(JsonReadFeature.ALLOW_UNESCAPED_CONTROL_CHARS)
          .build();

  /** Takes one item: what it is, or why it is none. */
  interface Taker {
    /** A whole object. */
    void item(int number, int line, JsonNode object, List<String> oddities, boolean shortened);

    /** Something that cannot be read as an object. */
    void broken(int number, int line, String why);

    /** Something about the file as a whole. */
    void file(Problem problem);
  }

  private final TextSource source;
  private final Taker taker;
  private int number;
  private int depthOfList;
  private boolean closed;
  private boolean within;

  JsonItems(TextSource source, Taker taker) {
    this.source = source;
    this.taker = taker;
  }

  void read() throws IOException {
    StringBuilder indent = new StringBuilder();
    StringBuilder loose = new StringBuilder();
    int looseLine = 0;
    int letter = source.read();
    while (letter >= 0) {
      if (letter == '{') {
        loose = told(loose, looseLine);
        object(indent.toString());
        indent.append('x');
      } else if (letter == '[' && depthOfList == 0 && loose.isEmpty()) {
        depthOfList++;
      } else if (letter == ']' || letter == ',') {
        loose = told(loose, looseLine);
        closed |= letter == ']';
      } else if (!Character.isWhitespace(letter)) {
        looseLine = loose.isEmpty() ? source.line() : looseLine;
        loose.append(loose.length() < Limits.QUOTED ? String.valueOf((char) letter) : "");
      }
      if (letter == '\n') {
        indent.setLength(0);
      } else if (letter != '{') {
        indent.append(indent.length() < Limits.QUOTED ? String.valueOf((char) letter) : "");
      }
      letter = source.read();
    }
    told(loose, looseLine);
    if (depthOfList > 0 && !closed && !within) {
      taker.file(
          new Problem(
              "",
              "cut-off",
              "The list is not closed by a square bracket; the file may be cut off. Compare the"
                  + " number of records with that of the database."));
    }
    if (depthOfList == 0 && number == 1) {
      taker.file(
          new Problem(
              "",
              "single-item",
              "The file holds one item outside of a list; it was read as a list of one."));
    }
  }

  private StringBuilder told(StringBuilder loose, int line) {
    if (!loose.isEmpty()) {
      number++;
      taker.broken(
          number,
          line,
          "found "
              + Limits.quoted(loose.toString())
              + " where an object in braces was expected. It was left out.");
    }
    return new StringBuilder();
  }

  /** Reads to the brace that closes the object, or to where its next neighbour starts. */
  private void object(String indent) throws IOException {
    Item item = new Item(++number, source.line());
    source.takeOddities();
    int letter = '{';
    boolean alone = indent.isBlank();
    StringBuilder before = new StringBuilder("x");
    while (letter >= 0) {
      if (letter == '{'
          && alone
          && item.depth > 0
          && !item.quoted
          && before.toString().equals(indent)) {
        item.broken = "its brace is not closed before the next item starts";
        hand(item);
        item = new Item(++number, source.line());
        source.takeOddities();
      }
      item.add(letter);
      if (letter == '\n') {
        before.setLength(0);
      } else if (before.length() < Limits.QUOTED) {
        before.append((char) letter);
      }
      if (item.depth == 0) {
        hand(item);
        return;
      }
      letter = source.read();
    }
    item.broken = "its brace is not closed; the file ends within it and may be cut off";
    within = true;
    hand(item);
    taker.file(
        new Problem(
            "record " + number,
            "cut-off",
            "The file ends within its last item and may be cut off. Compare the number of records"
                + " with that of the database."));
  }

  private void hand(Item item) {
    List<String> oddities = new ArrayList<>(source.takeOddities());
    if (!item.broken.isEmpty()) {
      taker.broken(
          item.number, item.line, item.broken + ". The item stays out; mend it, or export again.");
      return;
    }
    try {
      JsonNode node = JSON.readTree(item.text.toString());
      taker.item(item.number, item.line, node, oddities, item.shortened);
    } catch (JsonProcessingException wrong) {
      int line = Optional.ofNullable(wrong.getLocation()).map(place -> place.getLineNr()).orElse(1);
      taker.broken(
          item.number,
          item.line,
          "it is not JSON from line "
              + (item.line + Math.max(1, line) - 1)
              + " on ("
              + firstSentence(wrong.getOriginalMessage())
              + "). The item stays out; mend it, or export again.");
    }
  }

  private static String firstSentence(String message) {
    String first = message.lines().findFirst().orElse("");
    return first.length() > 120 ? first.substring(0, 120) + "..." : first;
  }

  /** The text of one item as far as it has been read. */
  private static final class Item {
    private final int number;
    private final int line;
    private final StringBuilder text = new StringBuilder();
    private int depth;
    private boolean quoted;
    private boolean escaped;
    private int inText;
    private boolean shortened;
    private String broken = "";

    Item(int number, int line) {
      this.number = number;
      this.line = line;
    }

    void add(int letter) {
      if (quoted) {
        withinText(letter);
        return;
      }
      quoted = letter == '"';
      inText = 0;
      depth += letter == '{' || letter == '[' ? 1 : letter == '}' || letter == ']' ? -1 : 0;
      keep(letter);
    }

    private void withinText(int letter) {
      boolean ends = letter == '"' && !escaped;
      if (letter == '\n') {
        // A line end within a text is no JSON: a quotation mark was left open before it.
        broken = "a quotation mark is not closed in the line before line end";
        quoted = false;
        escaped = false;
        keep(letter);
        return;
      }
      boolean startsEscape = letter == '\\' && !escaped;
      inText++;
      if (ends || inText < Limits.FIELD || (escaped && inText == Limits.FIELD)) {
        keep(letter);
      } else {
        shortened = true;
      }
      escaped = startsEscape;
      quoted = !ends;
    }

    private void keep(int letter) {
      if (text.length() < Limits.RECORD) {
        text.append((char) letter);
      } else {
        broken = "it is longer than " + Limits.RECORD + " letters without a long text in it";
      }
    }
  }
}
