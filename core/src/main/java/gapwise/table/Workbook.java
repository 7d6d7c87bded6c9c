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

  /** Largest part unpacked: 200,000 rows of 60 columns have some 400 MB, and are streamed. */
  private static final long MOST_BYTES_A_PART = 512L * 1024 * 1024;

  /** Largest table of distinct texts, for it is held in memory. */
  private static final long MOST_BYTES_OF_TEXTS = 64L * 1024 * 1024;

  /** The library counts in blocks; ours must speak first, for it knows the better words. */
  private static final long SLACK = 1024L * 1024;

  static {
    // Limits of the library hold for the whole program: no other room reads workbooks.
    ZipSecureFile.setMaxEntrySize(MOST_BYTES_A_PART + SLACK);
    ZipSecureFile.setMaxFileCount(1000);
  }

  private final TableFile file;
  private final Reading reading;

  Workbook(TableFile file, Reading reading) {
    this.file = file;
    this.reading = reading;
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
        tooLarge(tooLarge);
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
        OPCPackage parts = OPCPackage.open(new ZipFileZipEntrySource(zip))) {
      readParts(parts);
    } catch (Reading.Stopped | Reading.ConsumerFailed passedOn) {
      throw passedOn;
    } catch (Limited.TooLarge tooLarge) {
      tooLarge(tooLarge);
    } catch (IOException
        | SAXException
        | ParserConfigurationException
        | OpenXML4JException
        | RuntimeException damaged) {
      // The library tells damage by many kinds of exception, unchecked ones among them.
      reading.problem(
          file.name(),
          "damaged-workbook",
          "The file is no sound workbook (.xlsx), or one packed far more tightly than people's data"
              + " are. Open it in a spreadsheet program, save it as .xlsx and try again.");
    }
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
    XSSFReader.SheetIterator sheets = reader.getSheetIterator();
    while (sheets.hasNext()) {
      try (InputStream bytes = sheets.next()) {
        String sheet = sheets.getSheetName();
        if (reading.wants(sheet)) {
          readSheet(sheet, bytes, formats, texts);
        }
      }
    }
  }

  private void readSheet(String sheet, InputStream bytes, NumberFormats formats, SharedTexts texts)
      throws IOException, SAXException, ParserConfigurationException {
    SheetAssembler assembler = new SheetAssembler(sheet, reading);
    try {
      parse(bytes, MOST_BYTES_A_PART, new SheetXml(reading, assembler, formats, texts));
    } catch (SheetXml.NoMoreNeeded enough) {
      return;
    }
    assembler.end();
  }

  private static boolean startsIn1904(XSSFReader reader)
      throws IOException, SAXException, ParserConfigurationException, OpenXML4JException {
    WorkbookXml workbook = new WorkbookXml();
    parse(reader.getWorkbookData(), MOST_BYTES_OF_TEXTS, workbook);
    return workbook.startsIn1904();
  }

  private static List<PackagePart> ofKind(OPCPackage parts, XSSFRelation kind) {
    return parts.getPartsByContentType(kind.getContentType());
  }

  private static void parse(InputStream bytes, long mostBytes, DefaultHandler handler)
      throws IOException, SAXException, ParserConfigurationException {
    try (InputStream limited = new Limited(bytes, mostBytes)) {
      XMLReader xml = XMLHelper.newXMLReader();
      xml.setContentHandler(handler);
      // Damage is told to the person; the library's own handler would log it as our error.
      xml.setErrorHandler(handler);
      xml.parse(new InputSource(limited));
    }
  }

  private void tooLarge(Limited.TooLarge tooLarge) {
    reading.problem(
        file.name(),
        "workbook-too-large",
        "A part of the workbook is larger than "
            + tooLarge.mostBytes() / (1024 * 1024)
            + " MB. Split it, or save its sheets as CSV files and read those.");
  }
}
