package gapwise.exchange;

import gapwise.exchange.form.CellForm;
import gapwise.exchange.form.WorkbookText;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.ClientAnchor;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.CreationHelper;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.DataValidationHelper;
import org.apache.poi.ss.usermodel.Drawing;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * Writes the template as a workbook: a readme, the sheets with frozen named columns, a row of
 * descriptions, notes and drop-down lists, and rows below where there are any. Rows are streamed.
 */
final class WorkbookWriter {
  static final String README = "readme";
  static final String LISTS = "lists";

  /** Rows that drop-down lists reach; more than anyone types by hand. Our choice. */
  private static final int LAST_LISTED_ROW = 20_000;

  /** Spreadsheets compute with 15 significant digits; a longer number is written as text. */
  private static final int MOST_DIGITS = 15;

  private static final int CHARACTER = 256;
  private static final int NARROWEST = 9;
  private static final int WIDEST = 40;

  static {
    OwnTemporaryFiles.use();
  }

  private final XSSFWorkbook book = new XSSFWorkbook();
  private final CellStyle nameStyle = book.createCellStyle();
  private final CellStyle requiredStyle = book.createCellStyle();
  private final CellStyle remarkStyle = book.createCellStyle();
  private final CellStyle textStyle = book.createCellStyle();
  private final CellStyle wrapped = book.createCellStyle();
  private int lists;

  WorkbookWriter() {
    Font bold = book.createFont();
    bold.setBold(true);
    nameStyle.setFont(bold);
    nameStyle.setBorderBottom(BorderStyle.THIN);
    Font required = book.createFont();
    required.setBold(true);
    required.setUnderline(Font.U_SINGLE);
    requiredStyle.setFont(required);
    requiredStyle.setBorderBottom(BorderStyle.THIN);
    Font italic = book.createFont();
    italic.setItalic(true);
    remarkStyle.setFont(italic);
    remarkStyle.setWrapText(true);
    remarkStyle.setVerticalAlignment(VerticalAlignment.TOP);
    textStyle.setDataFormat(book.createDataFormat().getFormat("@"));
    wrapped.setWrapText(true);
    wrapped.setVerticalAlignment(VerticalAlignment.TOP);
  }

  /**
   * Writes the sheets.
   *
   * @param notes lines at the head of the first page
   * @param sheets in their order
   * @param rows the rows of each sheet by its name; a sheet that is not there has none
   */
  void write(
      List<String> notes,
      List<Sheet> sheets,
      Map<String, Stream<RowWriter>> rows,
      OutputStream target)
      throws IOException {
    readme(notes, sheets);
    sheets.forEach(sheet -> head(sheet, book.createSheet(sheet.name())));
    XSSFSheet listSheet = book.createSheet(LISTS);
    sheets.forEach(sheet -> lists(sheet, listSheet));
    book.setSheetHidden(book.getSheetIndex(LISTS), true);
    try (SXSSFWorkbook streamed = new SXSSFWorkbook(book, 200)) {
      for (Sheet sheet : sheets) {
        org.apache.poi.ss.usermodel.Sheet page = streamed.getSheet(sheet.name());
        int[] next = {2};
        rows.getOrDefault(sheet.name(), Stream.empty())
            .forEach(row -> body(sheet, row, page.createRow(next[0]++)));
      }
      streamed.write(target);
    }
  }

  private void readme(List<String> notes, List<Sheet> sheets) {
    XSSFSheet page = book.createSheet(README);
    int at = 0;
    List<String> lines = new ArrayList<>(notes);
    lines.addAll(Readme.lines(sheets));
    for (String line : lines) {
      XSSFCell cell = page.createRow(at++).createCell(0);
      cell.setCellValue(line);
      cell.setCellStyle(wrapped);
    }
    page.setColumnWidth(0, 110 * CHARACTER);
  }

  private void head(Sheet sheet, XSSFSheet page) {
    CreationHelper create = book.getCreationHelper();
    Drawing<?> drawing = page.createDrawingPatriarch();
    XSSFRow names = page.createRow(0);
    XSSFRow remarks = page.createRow(1);
    for (int index = 0; index < sheet.fields().size(); index++) {
      Field<?> field = sheet.fields().get(index);
      XSSFCell name = names.createCell(index);
      name.setCellValue(field.name());
      name.setCellStyle(field.required() ? requiredStyle : nameStyle);
      ClientAnchor anchor = create.createClientAnchor();
      anchor.setCol1(index);
      anchor.setCol2(index + 4);
      anchor.setRow1(0);
      anchor.setRow2(6);
      Comment note = drawing.createCellComment(anchor);
      note.setString(create.createRichTextString(Readme.note(field)));
      XSSFCell remark = remarks.createCell(index);
      remark.setCellValue(Readme.remark(field, index == 0));
      remark.setCellStyle(remarkStyle);
      boolean number =
          field.form().type() == CellForm.Type.NUMBER
              || field.form().type() == CellForm.Type.INTEGER;
      if (!number) {
        page.setDefaultColumnStyle(index, textStyle);
      }
      int width = Math.max(NARROWEST, Math.min(WIDEST, field.name().length() + 3));
      page.setColumnWidth(index, width * CHARACTER);
    }
    remarks.setHeightInPoints(60);
    page.createFreezePane(2, 1);
  }

  /** Drop-down lists suggest and do not bar, for a cell may also say that a value is missing. */
  private void lists(Sheet sheet, XSSFSheet listSheet) {
    XSSFSheet page = book.getSheet(sheet.name());
    DataValidationHelper helper = page.getDataValidationHelper();
    for (int index = 0; index < sheet.fields().size(); index++) {
      Field<?> field = sheet.fields().get(index);
      List<String> allowed = field.form().allowed();
      if (allowed.isEmpty()) {
        continue;
      }
      String name = list(sheet.name() + "_" + field.name(), allowed, listSheet);
      DataValidation validation =
          helper.createValidation(
              helper.createFormulaListConstraint(name),
              new CellRangeAddressList(2, LAST_LISTED_ROW, index, index));
      validation.setShowErrorBox(false);
      page.addValidationData(validation);
    }
  }

  private String list(String name, List<String> words, XSSFSheet listSheet) {
    int column = lists++;
    for (int index = 0; index <= words.size(); index++) {
      XSSFRow row = listSheet.getRow(index);
      XSSFRow present = row == null ? listSheet.createRow(index) : row;
      present.createCell(column).setCellValue(index == 0 ? name : words.get(index - 1));
    }
    String letter = CellReference.convertNumToColString(column);
    Name range = book.createName();
    range.setNameName("list_" + name);
    range.setRefersToFormula(LISTS + "!$" + letter + "$2:$" + letter + "$" + (words.size() + 1));
    return "list_" + name;
  }

  private void body(Sheet sheet, RowWriter row, org.apache.poi.ss.usermodel.Row target) {
    for (int index = 0; index < sheet.fields().size(); index++) {
      RowWriter.Written written = row.cells().get(sheet.fields().get(index).name());
      if (written == null) {
        continue;
      }
      org.apache.poi.ss.usermodel.Cell cell = target.createCell(index);
      if (written.number() && fits(written.text())) {
        cell.setCellValue(Double.parseDouble(written.text()));
      } else {
        cell.setCellValue(WorkbookText.of(written.text()));
        cell.setCellStyle(textStyle);
      }
    }
  }

  private static boolean fits(String number) {
    return new BigDecimal(number).stripTrailingZeros().precision() <= MOST_DIGITS;
  }
}
