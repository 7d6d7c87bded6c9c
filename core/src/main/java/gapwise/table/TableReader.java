package gapwise.table;

import gapwise.problem.Problems;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.LongConsumer;

/**
 * The door of this room: reads a workbook (.xlsx), a CSV file, a folder of CSV files or several
 * files, sheet after sheet and row after row, holding one row at a time.
 *
 * <p>A workbook is known by its content, whatever its name. A CSV file is one sheet, named as the
 * file without ".csv". Whatever is wrong with a file becomes a problem; an exception comes only out
 * of the caller's own consumer. Reading stops after {@value Reading#MOST_PROBLEMS} problems.
 * Immutable; may be shared between threads.
 */
public final class TableReader {
  private static final byte[] ZIP = {'P', 'K', 3, 4};
  private static final byte[] COMPOUND_FILE = {
    (byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0, (byte) 0xA1, (byte) 0xB1, 0x1A, (byte) 0xE1
  };

  private final LongConsumer progress;

  /** A reader that tells no progress. */
  public TableReader() {
    this(rows -> {});
  }

  /**
   * @param progress told the number of rows read so far, every {@value
   *     Reading#ROWS_BETWEEN_PROGRESS} rows and at the end of each sheet
   */
  public TableReader(LongConsumer progress) {
    this.progress = progress;
  }

  /**
   * Reads a file, or the CSV files of a folder in the order of their names (not those whose name
   * starts with a dot, nor folders within).
   *
   * @return how many rows the consumer was given
   */
  public long read(Path path, Problems problems, SheetConsumer consumer) {
    if (!Files.isDirectory(path)) {
      return read(List.of(TableFile.of(path)), problems, consumer);
    }
    String folder = String.valueOf(path.getFileName());
    List<TableFile> files = new ArrayList<>();
    try (DirectoryStream<Path> entries = Files.newDirectoryStream(path)) {
      for (Path entry : entries) {
        TableFile file = TableFile.of(entry);
        if (Files.isRegularFile(entry) && file.endsWith(".csv") && !file.name().startsWith(".")) {
          files.add(file);
        }
      }
    } catch (IOException | DirectoryIteratorException unreadable) {
      problems.add(folder, "unreadable-file", "The folder cannot be read; check who may open it.");
      return 0;
    }
    if (files.isEmpty()) {
      problems.add(
          folder, "no-tables", "The folder holds no CSV file. Give the folder with the CSV files.");
    }
    files.sort(Comparator.comparing(TableFile::name));
    return read(files, problems, consumer);
  }

  /**
   * Reads files in the order given. Sheets of one name in two CSV files are a problem.
   *
   * @return how many rows the consumer was given
   */
  public long read(List<TableFile> files, Problems problems, SheetConsumer consumer) {
    FileReading reading = new FileReading(problems, consumer, progress);
    Set<String> sheets = new HashSet<>();
    try {
      for (TableFile file : files) {
        if (sheets.add(file.sheet())) {
          read(file, reading);
        } else {
          reading.problem(
              file.name(),
              "duplicate-sheet",
              "A file of this name has been read already. Give each sheet once.");
        }
      }
    } catch (FileReading.Stopped stopped) {
      return reading.rows();
    } catch (FileReading.ConsumerFailed failed) {
      throw failed.failure();
    }
    return reading.rows();
  }

  private static void read(TableFile file, FileReading reading) {
    try {
      byte[] start = start(file);
      if (startsWith(start, ZIP)) {
        new Workbook(file, reading).read();
      } else if (startsWith(start, COMPOUND_FILE)) {
        CompoundFile.explain(file, reading);
      } else if (file.endsWith(".xlsx")) {
        reading.problem(
            file.name(),
            "not-a-workbook",
            "The file is named .xlsx but is no workbook. Open it in the program that made it and"
                + " save it as .xlsx again.");
      } else if (reading.wants(file.sheet())) {
        try (InputStream bytes = file.opening().open()) {
          new CsvTable(file.sheet(), reading).read(bytes);
        }
      }
    } catch (IOException unreadable) {
      reading.problem(
          file.name(),
          "unreadable-file",
          "The file cannot be read ("
              + unreadable
                  .getClass()
                  .getSimpleName()
                  .replace("Exception", "")
                  .toLowerCase(Locale.ROOT)
              + "). Check that it exists and may be opened.");
    }
  }

  private static byte[] start(TableFile file) throws IOException {
    try (InputStream bytes = file.opening().open()) {
      return bytes.readNBytes(COMPOUND_FILE.length);
    }
  }

  private static boolean startsWith(byte[] bytes, byte[] mark) {
    if (bytes.length < mark.length) {
      return false;
    }
    for (int index = 0; index < mark.length; index++) {
      if (bytes[index] != mark[index]) {
        return false;
      }
    }
    return true;
  }
}
