package gapwise.server.report;

import gapwise.figure.drawing.Picture;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.poi.openxml4j.exceptions.InvalidFormatException;
import org.apache.poi.util.Units;
import org.apache.poi.xwpf.usermodel.ParagraphAlignment;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFPicture;
import org.apache.poi.xwpf.usermodel.XWPFRun;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.apache.poi.xwpf.usermodel.XWPFTableCell;
import org.apache.poi.xwpf.usermodel.XWPFTableRow;

/**
 * Writes a text document (Office Open XML, ECMA-376) with headings, tables with head rows and
 * drawings with alternative text.
 */
final class WordWriter {
  /** Sizes of letters in points. */
  static final int SMALL = 8;

  static final int PLAIN = 10;

  private static final double PIXELS_PER_POINT = 96.0 / 72;

  private final XWPFDocument document = new XWPFDocument();

  WordWriter(String title) {
    SheetStyles.addTo(document);
    document.getProperties().getCoreProperties().setTitle(title);
  }

  /** The document, which takes nothing more after it. */
  byte[] bytes() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (document) {
      document.write(bytes);
    } catch (IOException e) {
      throw new UncheckedIOException("the document could not be written to memory", e);
    }
    return bytes.toByteArray();
  }

  /** A paragraph without words yet. */
  XWPFParagraph paragraph() {
    return document.createParagraph();
  }

  /** A heading in one of the styles "Heading1" and "Heading2". */
  XWPFParagraph head(String words, String style) {
    XWPFParagraph paragraph = document.createParagraph();
    paragraph.setStyle(style);
    paragraph.createRun().setText(words);
    return paragraph;
  }

  /** A paragraph. */
  void say(String words, int size) {
    write(document.createParagraph(), words, size);
  }

  /** Lines of a cell that is empty so far. */
  static void say(XWPFTableCell cell, String... lines) {
    write(cell.getParagraphs().get(0), lines[0], SMALL);
    for (int i = 1; i < lines.length; i++) {
      add(cell, lines[i]);
    }
  }

  /** Further lines of a cell. */
  static void add(XWPFTableCell cell, String... lines) {
    for (String line : lines) {
      write(cell.addParagraph(), line, SMALL);
    }
  }

  private static void write(XWPFParagraph paragraph, String words, int size) {
    paragraph.setAlignment(ParagraphAlignment.LEFT);
    paragraph.setSpacingAfter(40);
    XWPFRun run = paragraph.createRun();
    run.setFontFamily("Arial");
    run.setFontSize(size);
    run.setText(words);
  }

  /**
   * A table with a head row that is repeated on every page.
   *
   * @param lines rows below it
   */
  XWPFTable table(int lines, List<String> heads) {
    XWPFTable table = document.createTable(lines + 1, heads.size());
    table.setWidth("100%");
    XWPFTableRow head = table.getRow(0);
    head.setRepeatHeader(true);
    for (int i = 0; i < heads.size(); i++) {
      XWPFRun run = head.getCell(i).getParagraphs().get(0).createRun();
      run.setFontFamily("Arial");
      run.setFontSize(SMALL);
      run.setBold(true);
      run.setText(heads.get(i));
    }
    return table;
  }

  /** A drawing with its alternative text. */
  static void picture(XWPFParagraph paragraph, Picture drawn, String alternative) {
    try {
      XWPFPicture picture =
          paragraph
              .createRun()
              .addPicture(
                  new ByteArrayInputStream(Drawn.of(drawn.svg()).png()),
                  org.apache.poi.common.usermodel.PictureType.PNG,
                  "drawing.png",
                  Units.toEMU(drawn.width() / PIXELS_PER_POINT),
                  Units.toEMU(drawn.height() / PIXELS_PER_POINT));
      picture.getCTPicture().getNvPicPr().getCNvPr().setDescr(alternative);
      paragraph
          .getRuns()
          .get(paragraph.getRuns().size() - 1)
          .getCTR()
          .getDrawingArray(0)
          .getInlineArray(0)
          .getDocPr()
          .setDescr(alternative);
    } catch (InvalidFormatException | IOException e) {
      throw new IllegalStateException("a drawing of ours cannot be put into a document", e);
    }
  }
}
