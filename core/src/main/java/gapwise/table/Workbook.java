package gapwise.table;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.poi.openxml4j.exceptions.OpenXML4JException;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.openxml4j.opc.PackagePart;
import org.apache.poi.openxml4j.util.ZipFileZipEntrySource;
import org.apache.poi.openxml4j.util.ZipSecureFile;
import org.apache.poi.util.XMLHelper;
import org.apache.poi.xssf.eventusermodel.XSSFReader;
import org.apache.poi.xssf.usermodel.XSSFRelation;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.XMLReader;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Reads the sheets of one workbook (Office Open XML, ECMA-376) as a stream of XML events. Only the
 * table of distinct texts is held in memory, so it has a limit of its own.
 */
final class Workbook {
  /** Largest packed file. Our choice: 200,000 rows of 60 columns have some 60 MB. */
  private static final long MOST_BYTES_PACKED = 256L * 1024 * 1024;

  /** Largest table of distinct texts, for it is held in memory. */
  static final long MOST_BYTES_OF_TEXTS = 64L * 1024 * 1024;

  /** The library counts in blocks; ours must speak first, for it knows the better words. */
  private static final long SLACK = 1024L * 1024;

  static {
    // Limits of the library hold for the whole program: no other room reads workbooks.
    ZipSecureFile.setMaxEntrySize(Parts.MOST_BYTES + SLACK);
    ZipSecureFile.setMaxFileCount(1000);
  }

  /** What is done with the sheets of an opened workbook. */
  @FunctionalInterface
  interface Sheets {
    void read(OPCPackage parts, XSSFReader reader, NumberFormats formats, SharedTexts texts)
        throws IOException, SAXException, ParserConfigurationException, OpenXML4JException;
  }

  private final TableFile file;
  private final FileReading reading;
  private final Sheets sheetsReader;

  Workbook(TableFile file, FileReading reading) {
    this.file = file;
    this.reading = reading;
    this.sheetsReader = (parts, reader, formats, texts) -> readSheets(reader, formats, texts);
  }

  Workbook(TableFile file, FileReading reading, Sheets sheetsReader) {
    this.file = file;
    this.reading = reading;
    this.sheetsReader = sheetsReader;
  }

  /**
   * Works on a copy, for the parts of a packed file are not read in the order in which they lie.
   */
  void read() throws IOException {
    Path copy = Files.createTempFile("gapwise-table", ".xlsx");
    try {
      try (InputStream bytes = new Limited(file.opening().open(), MOST_BYTES_PACKED)) {
        Files.copy(bytes, copy, StandardCopyOption.REPLACE_EXISTING);
      } catch (Limited.TooLarge tooLarge) {
        tooLarge(file.name(), tooLarge);
        return;
      }
      readCopy(copy);
    } finally {
      Files.deleteIfExists(copy);
    }
  }

  private void readCopy(Path copy) {
    // Opened by its parts: given the file, the library would load a damaged one into memory whole.
    try (ZipSecureFile zip = new ZipSecureFile(copy.toFile());
        Parts parts = new Parts(new ZipFileZipEntrySource(zip));
        OPCPackage workbook = OPCPackage.open(parts)) {
      parts.opened();
      readParts(workbook);
    } catch (FileReading.Stopped | FileReading.ConsumerFailed passedOn) {
      throw passedOn;
    } catch (IOException
        | SAXException
        | ParserConfigurationException
        | OpenXML4JException
        | RuntimeException damaged) {
      // The library tells damage by many kinds of exception, unchecked ones among them.
      damaged(file.name(), damaged);
    }
  }

  /** Says of a failure of the file what it is, by what the library has wrapped up in it. */
  private void damaged(String where, Throwable failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof Limited.TooLarge tooLarge) {
        tooLarge(where, tooLarge);
        return;
      }
      if (cause instanceof MarkupGuard.TooLong || cause instanceof TextRuns.TooLong) {
        reading.problem(
            where,
            "text-too-long",
            "Found a text, or a piece of the file's own markup, far longer than the 32,767 letters"
                + " that a cell can hold; nothing from here on was read. Shorten the text, or open"
                + " the file in a spreadsheet program and save it as .xlsx again.");
        return;
      }
    }
    reading.problem(
        where,
        "damaged-workbook",
        "The file is no sound workbook (.xlsx), or one packed far more tightly than people's data"
            + " are. Open it in a spreadsheet program, save it as .xlsx and try again.");
  }

  private void readParts(OPCPackage parts)
      throws IOException, SAXException, ParserConfigurationException, OpenXML4JException {
    XSSFReader reader = new XSSFReader(parts, true);
    NumberFormats formats = new NumberFormats(startsIn1904(reader));
    for (PackagePart styles : ofKind(parts, XSSFRelation.STYLES)) {
      parse(styles.getInputStream(), MOST_BYTES_OF_TEXTS, formats);
    }
    SharedTexts texts = new SharedTexts();
    for (PackagePart strings : ofKind(parts, XSSFRelation.SHARED_STRINGS)) {
      parse(strings.getInputStream(), MOST_BYTES_OF_TEXTS, texts);
    }
    sheetsReader.read(parts, reader, formats, texts);
  }

  private void readSheets(XSSFReader reader, NumberFormats formats, SharedTexts texts)
      throws IOException, SAXException, ParserConfigurationException, OpenXML4JException {
    XSSFReader.SheetIterator sheets = reader.getSheetIterator();
    while (sheets.hasNext()) {
      try (InputStream bytes = sheets.next()) {
        String sheet = sheets.getSheetName();
        if (reading.wants(sheet) && !readSheet(sheet, bytes, formats, texts)) {
          return;
        }
      }
    }
  }

  /** Whether the sheet could be read; if not, that has been said. */
  private boolean readSheet(
      String sheet, InputStream bytes, NumberFormats formats, SharedTexts texts)
      throws IOException, SAXException, ParserConfigurationException {
    SheetAssembler assembler = new SheetAssembler(sheet, reading);
    SheetXml rows = new SheetXml(reading, assembler, formats, texts);
    try {
      parse(bytes, Parts.MOST_BYTES, rows);
    } catch (SheetXml.NoMoreNeeded enough) {
      return true;
    } catch (FileReading.Stopped | FileReading.ConsumerFailed passedOn) {
      throw passedOn;
    } catch (IOException | SAXException | RuntimeException damaged) {
      damaged(file.name() + ", " + rows.where(), damaged);
      return false;
    }
    assembler.end();
    return true;
  }

  private static boolean startsIn1904(XSSFReader reader)
      throws IOException, SAXException, ParserConfigurationException, OpenXML4JException {
    WorkbookXml workbook = new WorkbookXml();
    parse(reader.getWorkbookData(), Parts.MOST_BYTES_OF_LISTS, workbook);
    return workbook.startsIn1904();
  }

  static List<PackagePart> ofKind(OPCPackage parts, XSSFRelation kind) {
    return parts.getPartsByContentType(kind.getContentType());
  }

  static void parse(InputStream bytes, long mostBytes, DefaultHandler handler)
      throws IOException, SAXException, ParserConfigurationException {
    try (InputStream limited = new Limited(bytes, mostBytes)) {
      XMLReader xml = XMLHelper.newXMLReader();
      xml.setContentHandler(handler);
      // Damage is told to the person; the library's own handler would log it as our error.
      xml.setErrorHandler(handler);
      InputSource source = new InputSource(limited);
      // The guard of the parts knows this encoding alone, whatever a part says of itself.
      source.setEncoding("UTF-8");
      xml.parse(source);
    }
  }

  private void tooLarge(String where, Limited.TooLarge tooLarge) {
    reading.problem(
        where,
        "workbook-too-large",
        "A part of the workbook is larger than "
            + tooLarge.mostBytes() / (1024 * 1024)
            + " MB. Split it, or save its sheets as CSV files and read those.");
  }
}
