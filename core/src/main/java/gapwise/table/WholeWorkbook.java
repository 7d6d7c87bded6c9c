package gapwise.table;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.poi.openxml4j.exceptions.OpenXML4JException;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.openxml4j.opc.PackagePart;
import org.apache.poi.openxml4j.opc.PackageRelationship;
import org.apache.poi.xssf.eventusermodel.XSSFReader;
import org.apache.poi.xssf.usermodel.XSSFRelation;
import org.xml.sax.Attributes;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/** Reads every sheet of a workbook as it looks, behind the guards of {@link Workbook}. */
final class WholeWorkbook {
  private final TableFile file;
  private final FileReading reading;
  private final List<WholeSheet> sheets = new ArrayList<>();

  WholeWorkbook(TableFile file, FileReading reading) {
    this.file = file;
    this.reading = reading;
  }

  List<WholeSheet> read() throws IOException {
    new Workbook(file, reading, this::sheets).read();
    return sheets;
  }

  private void sheets(OPCPackage parts, XSSFReader reader, NumberFormats formats, SharedTexts texts)
      throws IOException, SAXException, ParserConfigurationException, OpenXML4JException {
    CellStyles styles = new CellStyles();
    for (PackagePart part : Workbook.ofKind(parts, XSSFRelation.STYLES)) {
      Workbook.parse(part.getInputStream(), Workbook.MOST_BYTES_OF_TEXTS, styles);
    }
    Hidden hidden = new Hidden();
    Workbook.parse(reader.getWorkbookData(), Parts.MOST_BYTES_OF_LISTS, hidden);
    XSSFReader.SheetIterator iterator = reader.getSheetIterator();
    int cells = 0;
    while (iterator.hasNext()) {
      try (InputStream bytes = iterator.next()) {
        String name = iterator.getSheetName();
        WholeSheetXml rows =
            new WholeSheetXml(formats, texts, styles, WholeSheets.MOST_CELLS - cells);
        try {
          Workbook.parse(bytes, Parts.MOST_BYTES, rows);
        } catch (WholeSheetXml.TooMany tooMany) {
          tooMany(name);
        }
        cells += rows.cells().size();
        sheets.add(sheet(name, hidden, rows, comments(iterator.getSheetPart())));
      }
    }
  }

  private void tooMany(String sheet) {
    reading.problem(
        "sheet " + sheet,
        "too-many-cells",
        "The sheet holds more than "
            + WholeSheets.MOST_CELLS
            + " cells or "
            + WholeSheets.MOST_COLUMNS
            + " columns; what lies beyond was not read. Delete what does not belong to the table.");
  }

  private static WholeSheet sheet(
      String name, Hidden hidden, WholeSheetXml rows, Map<String, String> comments) {
    List<WholeCell> cells =
        rows.cells().stream()
            .map(
                cell -> {
                  String words = comments.get(cell.reference());
                  return words == null ? cell : cell.withComment(words);
                })
            .toList();
    return new WholeSheet(
        name,
        hidden.names.contains(name),
        cells,
        rows.merged(),
        rows.hiddenRows(),
        rows.hiddenColumns());
  }

  private static Map<String, String> comments(PackagePart sheet)
      throws IOException, SAXException, ParserConfigurationException, OpenXML4JException {
    Comments comments = new Comments();
    for (PackageRelationship to :
        sheet.getRelationshipsByType(XSSFRelation.SHEET_COMMENTS.getRelation())) {
      PackagePart part = sheet.getRelatedPart(to);
      Workbook.parse(part.getInputStream(), Workbook.MOST_BYTES_OF_TEXTS, comments);
    }
    return comments.words;
  }

  /** Names of hidden sheets. */
  private static final class Hidden extends DefaultHandler {
    private final Set<String> names = new HashSet<>();

    @Override
    public void startElement(String uri, String name, String qualified, Attributes attributes) {
      String state = attributes.getValue("state");
      String sheet = attributes.getValue("name");
      if (name.equals("sheet") && sheet != null && state != null && state.contains("idden")) {
        names.add(sheet);
      }
    }
  }

  /** Comments by cell. */
  private static final class Comments extends DefaultHandler {
    private final Map<String, String> words = new HashMap<>();
    private final TextRuns runs = new TextRuns();
    private String cell = "";

    @Override
    public void startElement(String uri, String name, String qualified, Attributes attributes) {
      String reference = attributes.getValue("ref");
      if (name.equals("comment") && reference != null) {
        cell = reference;
        runs.clear();
      }
      runs.start(name);
    }

    @Override
    public void endElement(String uri, String name, String qualified) {
      runs.end(name);
      if (name.equals("comment")) {
        words.put(cell, runs.text().strip());
      }
    }

    @Override
    public void characters(char[] characters, int start, int length) {
      runs.characters(characters, start, length);
    }
  }
}
