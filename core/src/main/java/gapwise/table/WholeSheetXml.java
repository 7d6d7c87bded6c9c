package gapwise.table;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.xml.sax.Attributes;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/** Turns the XML events of one sheet into located cells with what is seen of them. */
final class WholeSheetXml extends DefaultHandler {
  private static final Pattern RANGE =
      Pattern.compile("([A-Z]{1,3})(\\d{1,7}):([A-Z]{1,3})(\\d{1,7})");
  private static final Pattern CELL = Pattern.compile("([A-Z]{1,3})(\\d{1,7})");

  private final NumberFormats formats;
  private final SharedTexts texts;
  private final CellStyles styles;
  private final int most;
  private final List<WholeCell> cells = new ArrayList<>();
  private final List<WholeSheet.Merged> merged = new ArrayList<>();
  private final Set<Integer> hiddenRows = new HashSet<>();
  private final Set<Integer> hiddenColumns = new HashSet<>();
  private final TextRuns inlineText = new TextRuns();
  private final TextRuns rawValue = new TextRuns();
  private int row;
  private int column;
  private String type = "n";
  private int style;
  private boolean inValue;
  private boolean formula;

  WholeSheetXml(NumberFormats formats, SharedTexts texts, CellStyles styles, int most) {
    this.formats = formats;
    this.texts = texts;
    this.styles = styles;
    this.most = most;
  }

  List<WholeCell> cells() {
    return cells;
  }

  List<WholeSheet.Merged> merged() {
    return merged;
  }

  Set<Integer> hiddenRows() {
    return hiddenRows;
  }

  Set<Integer> hiddenColumns() {
    return hiddenColumns;
  }

  @Override
  public void startElement(String uri, String name, String qualified, Attributes attributes) {
    switch (name) {
      case "row" -> startRow(attributes);
      case "c" -> startCell(attributes);
      case "col" -> column(attributes);
      case "mergeCell" -> merge(Objects.requireNonNullElse(attributes.getValue("ref"), ""));
      case "v" -> inValue = true;
      case "f" -> formula = true;
      default -> inlineText.start(name);
    }
  }

  @Override
  public void endElement(String uri, String name, String qualified) throws SAXException {
    switch (name) {
      case "c" -> endCell();
      case "v" -> inValue = false;
      default -> inlineText.end(name);
    }
  }

  @Override
  public void characters(char[] characters, int start, int length) {
    if (inValue) {
      rawValue.append(characters, start, length);
    } else {
      inlineText.characters(characters, start, length);
    }
  }

  private void startRow(Attributes attributes) {
    String number = attributes.getValue("r");
    row = number == null ? row + 1 : Integer.parseInt(number);
    column = -1;
    if (isTrue(attributes.getValue("hidden"))) {
      hiddenRows.add(row);
    }
  }

  private void column(Attributes attributes) {
    if (isTrue(attributes.getValue("hidden"))) {
      int first = Integer.parseInt(Objects.requireNonNullElse(attributes.getValue("min"), "1"));
      int last = Integer.parseInt(Objects.requireNonNullElse(attributes.getValue("max"), "1"));
      for (int at = first; at <= Math.min(last, WholeSheets.MOST_COLUMNS); at++) {
        hiddenColumns.add(at - 1);
      }
    }
  }

  private static boolean isTrue(String flag) {
    return "1".equals(flag) || "true".equals(flag);
  }

  private void startCell(Attributes attributes) {
    String reference = attributes.getValue("r");
    Matcher cell = CELL.matcher(reference == null ? "" : reference);
    column = cell.matches() ? SheetXml.columnOf(cell.group(1)) : column + 1;
    type = Objects.requireNonNullElse(attributes.getValue("t"), "n");
    style = Integer.parseInt(Objects.requireNonNullElse(attributes.getValue("s"), "0"));
    formula = false;
    inlineText.clear();
    rawValue.clear();
  }

  private void endCell() throws SAXException {
    Value value = value();
    boolean seen = !value.isBlank() || styles.fill(style).isPresent();
    if (!seen) {
      return;
    }
    if (column >= WholeSheets.MOST_COLUMNS || cells.size() >= most) {
      if (value.isBlank()) {
        return;
      }
      throw new TooMany();
    }
    Optional<String> none = Optional.empty();
    cells.add(
        new WholeCell(
            row,
            column,
            Blank.strip(value.text()),
            value.stored(),
            formula,
            none,
            styles.fill(style),
            styles.struck(style)));
  }

  /** A cell that shows an error, or a formula without a result, holds nothing that can be read. */
  private Value value() {
    if (type.equals("inlineStr")) {
      return Value.text(inlineText.text());
    }
    String raw = rawValue.text();
    if (raw.isEmpty()) {
      return Value.BLANK;
    }
    return switch (type) {
      case "s" -> Value.text(texts.at(Integer.parseInt(raw.strip())));
      case "str" -> Value.text(raw);
      case "b" -> new Value(raw.strip().equals("1") ? "TRUE" : "FALSE", Stored.TRUTH_VALUE);
      case "d" -> new Value(raw, Stored.DATE);
      case "e" -> Value.text("#error " + raw);
      default -> {
        Value number = formats.value(raw, style);
        yield number.stored() == Stored.NUMBER
            ? new Value(number.text() + styles.wordsAfter(style), Stored.NUMBER)
            : number;
      }
    };
  }

  private void merge(String reference) {
    Matcher range = RANGE.matcher(reference);
    if (range.matches() && merged.size() < most) {
      merged.add(
          new WholeSheet.Merged(
              Integer.parseInt(range.group(2)),
              SheetXml.columnOf(range.group(1)),
              Integer.parseInt(range.group(4)),
              SheetXml.columnOf(range.group(3))));
    }
  }

  /** More cells than are read. */
  static final class TooMany extends SAXException {
    private static final long serialVersionUID = 1L;
  }
}
