package gapwise.table;

import gapwise.problem.Problems;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;

/**
 * The second door of this room: reads sheets as they look, with merged cells, colours, comments and
 * what is hidden, for readers who do not know yet which row names the columns. Such sheets are made
 * by hand and small, so that they are held in memory, within limits.
 */
public final class WholeSheets {
  /** Most cells of one file. Our choice: a sheet of 2,000 patients with 50 columns has 100,000. */
  static final int MOST_CELLS = 200_000;

  /** Most columns that are read; people's tables have some tens. */
  static final int MOST_COLUMNS = 500;

  private static final byte[] ZIP = {'P', 'K', 3, 4};

  private WholeSheets() {}

  /**
   * Reads a workbook (.xlsx) or a text file with separators; what is wrong becomes a problem.
   *
   * @return its sheets in order; empty where the file could not be read
   */
  public static List<WholeSheet> read(TableFile file, Problems problems) {
    FileReading reading = new FileReading(problems, new NoRows(), rows -> {});
    try (InputStream bytes = file.opening().open()) {
      byte[] start = bytes.readNBytes(ZIP.length);
      if (java.util.Arrays.equals(start, ZIP)) {
        return new WholeWorkbook(file, reading).read();
      }
      if (start.length > 1 && start[0] == (byte) 0xD0 && start[1] == (byte) 0xCF) {
        CompoundFile.explain(file, reading);
        return List.of();
      }
      return WholeText.read(file, reading).map(List::of).orElse(List.of());
    } catch (FileReading.Stopped stopped) {
      return List.of();
    } catch (IOException unreadable) {
      reading.problem(
          file.name(),
          "unreadable-file",
          "The file cannot be read. Check that it exists and may be opened.");
      return List.of();
    }
  }

  /** Nobody takes rows here. */
  private static final class NoRows implements SheetConsumer {
    @Override
    public void begin(Header header) {}

    @Override
    public void row(Row row) {}
  }
}
