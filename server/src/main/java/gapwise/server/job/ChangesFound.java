package gapwise.server.job;

import gapwise.desk.StudyDifference;
import gapwise.intake.ChangeListener;
import gapwise.intake.StudyChange;
import gapwise.store.OwnerOnly;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * What an import would change, field by field: all of it in a file as it is found, and so much of
 * it in memory as a person reads at once, however many studies change.
 */
public final class ChangesFound implements ChangeListener, AutoCloseable {
  /** Fields of one study that are shown; a person who sees more looks at the file. */
  private static final int MOST_OF_ONE = 20;

  /** Fields of all studies that are kept in memory, some two megabytes. */
  private static final int MOST_OF_ALL = 10_000;

  /** Letters of a text that are shown; the file has it whole. */
  private static final int LONGEST_TEXT = 300;

  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'").withZone(ZoneOffset.UTC);

  private final Optional<Path> file;
  private final List<ChangedStudy> open = new ArrayList<>();
  private final List<ChangedStudy> agreed = new ArrayList<>();
  private Optional<CSVPrinter> table = Optional.empty();
  private int kept;

  /**
   * @param file where all of it goes; what lay there of an earlier comparison is written over
   */
  public ChangesFound(Optional<Path> file) {
    this.file = file;
  }

  @Override
  public void begin() {
    try {
      close();
      open.clear();
      agreed.clear();
      kept = 0;
      if (file.isPresent()) {
        Files.deleteIfExists(file.get());
      }
    } catch (IOException unwritten) {
      throw new UncheckedIOException(unwritten);
    }
  }

  @Override
  public void change(StudyChange change, boolean isAgreed) {
    List<StudyDifference.Change> fields =
        change
            .before()
            .map(before -> StudyDifference.between(before, change.after()))
            .orElse(List.of());
    try {
      write(change, fields);
    } catch (IOException unwritten) {
      throw new UncheckedIOException(unwritten);
    }
    List<ChangedStudy.Line> lines =
        fields.stream()
            .limit(Math.min(MOST_OF_ONE, MOST_OF_ALL - kept))
            .map(ChangesFound::line)
            .toList();
    kept += lines.size();
    (isAgreed ? agreed : open)
        .add(
            new ChangedStudy(
                change.key(),
                change.after().id(),
                change.after().citation().label(),
                new ChangedStudy.Standing(
                    change.stamp().version(),
                    change.before().isEmpty(),
                    MINUTE.format(change.stamp().when()),
                    change.stamp().who(),
                    change.stamp().why()),
                fields.size(),
                lines));
  }

  private static ChangedStudy.Line line(StudyDifference.Change field) {
    return new ChangedStudy.Line(
        field.sheet(),
        String.join(", ", field.row()),
        field.column().title(),
        shortened(field.before()),
        shortened(field.after()));
  }

  private static String shortened(String text) {
    int end =
        text.offsetByCodePoints(0, Math.min(LONGEST_TEXT, text.codePointCount(0, text.length())));
    return end == text.length() ? text : text.substring(0, end) + "…";
  }

  private void write(StudyChange change, List<StudyDifference.Change> fields) throws IOException {
    if (file.isEmpty()) {
      return;
    }
    if (table.isEmpty()) {
      table = Optional.of(opened(file.get()));
    }
    CSVPrinter rows = table.get();
    String id = change.after().id();
    if (change.before().isEmpty()) {
      row(rows, id, "", "", "", "withdrawn", "");
    }
    for (StudyDifference.Change field : fields) {
      row(
          rows,
          id,
          field.sheet(),
          String.join(", ", field.row()),
          field.column().name(),
          field.before(),
          field.after());
    }
  }

  private static CSVPrinter opened(Path file) throws IOException {
    CSVPrinter rows =
        CSVFormat.RFC4180.print(
            new BufferedWriter(
                new OutputStreamWriter(OwnerOnly.newFile(file), StandardCharsets.UTF_8)));
    rows.printRecord("study_id", "sheet", "row", "column", "before", "after");
    return rows;
  }

  /** A text that starts like a formula gets an apostrophe, so that no spreadsheet computes it. */
  private static void row(CSVPrinter rows, String... texts) throws IOException {
    for (String text : texts) {
      rows.print(text.matches("(?s)[=+@\\t\\r-].*") ? "'" + text : text);
    }
    rows.println();
  }

  /** The changes that nobody has agreed to, in the order of the file. */
  public List<ChangedStudy> open() {
    return List.copyOf(open);
  }

  /** The changes that a person has agreed to, in the order of the file. */
  public List<ChangedStudy> agreed() {
    return List.copyOf(agreed);
  }

  /** Ends the file. */
  @Override
  public void close() throws IOException {
    if (table.isPresent()) {
      table.get().close(true);
      table = Optional.empty();
    }
  }
}
