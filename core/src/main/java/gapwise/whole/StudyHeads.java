package gapwise.whole;

import gapwise.curation.VersionStamp;
import gapwise.figure.file.CsvCell;
import java.io.IOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Which versions of the studies an export holds, so that each number can be followed back to who
 * wrote it in the base that it came from. An import writes versions of its own and reads none of
 * this.
 */
public final class StudyHeads {
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180
          .builder()
          .setHeader("study_id", "version", "change", "written", "who", "why")
          .get();

  private StudyHeads() {}

  /** The last version of a study. */
  public record Head(String study, VersionStamp stamp) {}

  /** Writes a row for each study; the target stays open. */
  public static void write(List<Head> heads, Appendable target) throws IOException {
    CSVPrinter printer = new CSVPrinter(target, FORMAT);
    for (Head head : heads) {
      VersionStamp stamp = head.stamp();
      printer.printRecord(
          head.study(),
          stamp.version(),
          stamp.change(),
          stamp.when(),
          CsvCell.text(stamp.who()),
          CsvCell.text(stamp.why()));
    }
    printer.flush();
  }
}
