package gapwise.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.xml.sax.Attributes;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/** Turns the XML events of one sheet (ECMA-376 part 1, 18.3) into rows of values. */
final class SheetXml extends DefaultHandler {
  /** Sheets end at column XFD and row 1,048,576 (ECMA-376; every spreadsheet program agrees). */
  static final int MOST_COLUMNS = 16_384;

  private static final int MOST_ROWS = 1_048_576;

  private final FileReading reading;
  private final SheetAssembler assembler;
  private final NumberFormats formats;
  private final SharedTexts texts;

  private final TextRuns inlineText = new TextRuns();
  private final TextRuns rawValue = new TextRuns();
  private List<Value> values = new ArrayList<>();
  private int row;
  private int column;
  private boolean sound;
  private String type = "n";
  private int style;
  private boolean inCell;
  private boolean inValue;
  private boolean hasValue;
  private boolean hasFormula;

  SheetXml(
      FileReading reading, SheetAssembler assembler, NumberFormats formats, SharedTexts texts) {
    this.reading = reading;
    this.assembler = assembler;
    this.formats = formats;
    this.texts = texts;
  }

  /** How far the sheet was read, for what cannot be read further. */
  String where() {
    int reached = Math.max(row, 1);
    return inCell ? assembler.where(reached, column) : assembler.where(reached);
  }

  @Override
  public void startElement(String uri, String name, String qualified, Attributes attributes) {
    switch (name) {
      case "row" -> startRow(attributes);
      case "c" -> startCell(attributes);
      case "v" -> {
        inValue = true;
        hasValue = true;
      }
      case "f" -> hasFormula = true;
      default -> inlineText.start(name);
    }
  }

  @Override
  public void endElement(String uri, String name, String qualified) throws SAXException {
    switch (name) {
      case "row" -> endRow();
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
    int next = number == null ? row + 1 : Integer.parseInt(number);
    if (next <= row || next > MOST_ROWS) {
      throw new IllegalArgumentException("row " + next + " after row " + row);
    }
    row = next;
    column = -1;
    sound = true;
    values = new ArrayList<>();
  }

  private void startCell(Attributes attributes) {
    String reference = attributes.getValue("r");
    int next = reference == null ? column + 1 : columnOf(reference);
    if (next <= column || next >= MOST_COLUMNS) {
      throw new IllegalArgumentException("column " + next + " after column " + column);
    }
    column = next;
    inCell = true;
    type = Objects.requireNonNullElse(attributes.getValue("t"), "n");
    String styleNumber = attributes.getValue("s");
    style = styleNumber == null ? 0 : Integer.parseInt(styleNumber);
    hasValue = false;
    hasFormula = false;
    inlineText.clear();
    rawValue.clear();
  }

  private void endCell() {
    Value value = value();
    inCell = false;
    if (!value.isBlank()) {
      while (values.size() < column) {
        values.add(Value.BLANK);
      }
      values.add(value);
    }
  }

  private void endRow() throws NoMoreNeeded {
    if (sound) {
      assembler.row(row, values);
    } else if (assembler.isEmpty()) {
      assembler.headerLost();
    }
    if (!assembler.takesRows()) {
      throw new NoMoreNeeded();
    }
  }

  private Value value() {
    if (type.equals("inlineStr")) {
      return Value.text(inlineText.text());
    }
    String raw = rawValue.text();
    if (raw.isEmpty()) {
      if (hasFormula && !(hasValue && type.equals("str"))) {
        cellProblem(
            "formula-without-value",
            "The cell has a formula whose result is not in the file. Open the file in a spreadsheet"
                + " program, save it, and try again.");
      }
      return Value.BLANK;
    }
    return switch (type) {
      case "s" -> Value.text(texts.at(Integer.parseInt(raw.strip())));
      case "str" -> Value.text(raw);
      case "b" -> new Value(raw.strip().equals("1") ? "TRUE" : "FALSE", Stored.TRUTH_VALUE);
      case "d" -> new Value(raw, Stored.DATE);
      case "e" -> {
        cellProblem(
            "cell-error",
            "The cell shows the error "
                + Excerpt.of(raw)
                + ". Mend its formula or clear the cell.");
        yield Value.BLANK;
      }
      default -> formats.value(raw, style);
    };
  }

  private void cellProblem(String code, String message) {
    sound = false;
    reading.problem(assembler.where(row, column), code, message);
  }

  /** The column of a reference such as AB12, 0 for A. */
  static int columnOf(String reference) {
    int number = 0;
    int at = 0;
    while (at < reference.length() && Character.isLetter(reference.charAt(at))) {
      number = number * 26 + (Character.toUpperCase(reference.charAt(at)) - 'A' + 1);
      if (number > MOST_COLUMNS) {
        break;
      }
      at++;
    }
    return number - 1;
  }

  /** The rest of the sheet is of no use, for its header is wrong. */
  static final class NoMoreNeeded extends SAXException {
    private static final long serialVersionUID = 1L;
  }
}
