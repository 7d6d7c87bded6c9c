package gapwise.exchange;

import gapwise.evidence.Study;
import gapwise.evidence.check.EvidenceCheck;
import gapwise.evidence.rule.Finding;
import gapwise.evidence.rule.Severity;
import gapwise.problem.Problems;
import gapwise.table.SheetConsumer;
import gapwise.table.TableFile;
import gapwise.table.TableReader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.LongConsumer;

/**
 * Reads a filled template, a workbook or its sheets as CSV files, and checks what it holds. Nothing
 * is stored here. Everything that is wrong and everything doubtful is told in one go.
 */
public final class Import {
  private Import() {}

  /** One way of reading tables. */
  private interface Source {
    void read(TableReader reader, Problems problems, SheetConsumer consumer);
  }

  /**
   * Reads one file by itself and tells no progress; see {@link #read(List, List, Set,
   * LongConsumer)}.
   */
  public static Imported read(TableFile file, Set<String> acknowledged) {
    return read(List.of(file), acknowledged, rows -> {});
  }

  /** Reads a template by itself; see {@link #read(List, List, Set, LongConsumer)}. */
  public static Imported read(
      List<TableFile> files, Set<String> acknowledged, LongConsumer progress) {
    return read(files, List.of(), acknowledged, progress);
  }

  /**
   * Reads a template.
   *
   * @param files one workbook, or CSV files named studies.csv, arms.csv, outcomes.csv, patients.csv
   * @param known studies of the evidence base, to tell one paper under two ids and overlapping
   *     cohorts; a study read under the id of a known one is taken for its new version
   * @param acknowledged keys of the doubts that a reviewer has looked up and lets stand
   * @param progress told the number of rows read so far, now and then
   */
  public static Imported read(
      List<TableFile> files, List<Study> known, Set<String> acknowledged, LongConsumer progress) {
    return read(
        (reader, problems, consumer) -> reader.read(files, problems, consumer),
        known,
        acknowledged,
        progress);
  }

  /**
   * Reads a workbook, or the CSV files of a folder.
   *
   * @param path file or folder; the other parameters as in {@link #read(List, List, Set,
   *     LongConsumer)}
   */
  public static Imported read(
      Path path, List<Study> known, Set<String> acknowledged, LongConsumer progress) {
    return read(
        (reader, problems, consumer) -> reader.read(path, problems, consumer),
        known,
        acknowledged,
        progress);
  }

  private static Imported read(
      Source source, List<Study> known, Set<String> acknowledged, LongConsumer progress) {
    Problems problems = new Problems();
    TemplateReading reading = new TemplateReading(problems);
    try {
      source.read(new TableReader(progress), problems, reading);
    } catch (TemplateReading.TooMany tooMany) {
      problems.add(
          "",
          "too-many-problems",
          "Reading stopped after "
              + TemplateReading.MOST_PROBLEMS
              + " problems. Mend those listed and read the file again.");
      return new Imported.Wrong(problems.list(), List.of());
    }
    List<Study> studies = new Assembly(reading, problems).studies();
    List<Warning> warnings = new ArrayList<>();
    reading.otherSheets().forEach(other -> warnings.add(FoundPlaces.warning(other)));
    FoundPlaces places = new FoundPlaces(reading, studies);
    for (Finding finding : findings(studies, known)) {
      if (finding.severity() == Severity.IMPOSSIBLE) {
        problems.add(places.problem(finding));
      } else {
        warnings.add(places.warning(finding));
      }
    }
    return answer(studies, problems, warnings, acknowledged);
  }

  private static List<Finding> findings(List<Study> studies, List<Study> known) {
    List<Finding> findings = new ArrayList<>();
    studies.forEach(study -> findings.addAll(EvidenceCheck.of(study)));
    findings.addAll(EvidenceCheck.among(studies, known));
    return findings;
  }

  private static Imported answer(
      List<Study> studies, Problems problems, List<Warning> warnings, Set<String> acknowledged) {
    if (problems.isEmpty() && studies.isEmpty()) {
      problems.add(
          "",
          "no-studies",
          "The template holds no study. Fill in at least one row on each of the"
              + " sheets studies and arms.");
    }
    if (!problems.isEmpty()) {
      return new Imported.Wrong(problems.list(), warnings);
    }
    List<Warning> open =
        warnings.stream().filter(warning -> !acknowledged.contains(warning.key())).toList();
    return open.isEmpty()
        ? new Imported.Ready(studies, warnings)
        : new Imported.NeedsAcknowledgement(studies.size(), warnings, open);
  }
}
