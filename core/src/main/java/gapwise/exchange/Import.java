package gapwise.exchange;

import gapwise.evidence.Study;
import gapwise.evidence.rule.Finding;
import gapwise.evidence.rule.Severity;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.table.MadeSheet;
import gapwise.table.SheetConsumer;
import gapwise.table.TableFile;
import gapwise.table.TableReader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.LongConsumer;
import java.util.function.Predicate;
import java.util.stream.Collectors;

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
   * Reads one file by itself and tells no progress; see {@link #read(List, KnownEvidence,
   * Predicate, LongConsumer)}.
   */
  public static Imported read(TableFile file, Set<String> acknowledged) {
    return read(List.of(file), acknowledged, rows -> {});
  }

  /**
   * Reads a template by itself; see {@link #read(List, KnownEvidence, Predicate, LongConsumer)}.
   */
  public static Imported read(
      List<TableFile> files, Set<String> acknowledged, LongConsumer progress) {
    return read(files, KnownEvidence.NONE, acknowledged::contains, progress);
  }

  /**
   * Reads a template.
   *
   * @param files one workbook, or CSV files named studies.csv, arms.csv, outcomes.csv, patients.csv
   * @param known the evidence base, to tell one paper under two ids and overlapping cohorts; a
   *     study read under the id of a known one is taken for its new version, and one that stands
   *     there with the same content raises no doubt
   * @param acknowledged whether a reviewer has looked up the doubt of this key and lets it stand
   * @param progress told the number of rows read so far, now and then
   */
  public static Imported read(
      List<TableFile> files,
      KnownEvidence known,
      Predicate<String> acknowledged,
      LongConsumer progress) {
    return read(files, known, Set.of(), acknowledged, progress);
  }

  /**
   * The same without some studies of the template, which are taken for what stands in the evidence
   * base; where nothing else is in it, no study comes out.
   *
   * @param left ids of those studies
   */
  public static Imported read(
      List<TableFile> files,
      KnownEvidence known,
      Set<String> left,
      Predicate<String> acknowledged,
      LongConsumer progress) {
    return all(
            (reader, problems, consumer) -> reader.read(files, problems, consumer),
            known,
            left,
            acknowledged,
            progress)
        .imported();
  }

  /**
   * Reads a workbook, or the CSV files of a folder.
   *
   * @param path file or folder; the other parameters as in {@link #read(List, KnownEvidence,
   *     Predicate, LongConsumer)}
   */
  public static Imported read(
      Path path, KnownEvidence known, Predicate<String> acknowledged, LongConsumer progress) {
    return read(
        (reader, problems, consumer) -> reader.read(path, problems, consumer),
        known,
        acknowledged,
        progress);
  }

  /**
   * Reads a template that stands in no file, such as what a person types on a page.
   *
   * @param sheets its sheets, named as those of the template; the other parameters as in {@link
   *     #read(List, KnownEvidence, Predicate, LongConsumer)}
   */
  public static Typed typed(
      List<MadeSheet> sheets, KnownEvidence known, Predicate<String> acknowledged) {
    return all(
        (reader, problems, consumer) -> sheets.forEach(sheet -> sheet.read(consumer)),
        known,
        Set.of(),
        acknowledged,
        rows -> {});
  }

  /**
   * A place in the sheets of a template, for programs that show it.
   *
   * @param sheet name of the sheet
   * @param row number of the row, the header's counted
   * @param columns template columns; empty for the row as a whole
   */
  public record Spot(String sheet, int row, List<String> columns) {
    public Spot {
      columns = List.copyOf(columns);
    }
  }

  /**
   * What came of a reading, for whoever shows it beside the cells.
   *
   * @param imported what came of it
   * @param spots the places that its problems and warnings name, by their words
   */
  public record Typed(Imported imported, Map<String, Spot> spots) {
    public Typed {
      spots = Map.copyOf(spots);
    }
  }

  private static Imported read(
      Source source, KnownEvidence known, Predicate<String> acknowledged, LongConsumer progress) {
    return all(source, known, Set.of(), acknowledged, progress).imported();
  }

  private static Typed all(
      Source source,
      KnownEvidence known,
      Set<String> left,
      Predicate<String> acknowledged,
      LongConsumer progress) {
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
      return new Typed(new Imported.Wrong(problems.list(), List.of()), reading.spots());
    }
    List<Study> all = new Assembly(reading, problems, hasUnreadFile(problems)).studies();
    if (problems.isEmpty() && all.isEmpty()) {
      problems.add(
          "",
          "no-studies",
          "The template holds no study. Fill in at least one row on each of the"
              + " sheets studies and arms.");
    }
    List<Study> studies = all.stream().filter(study -> !left.contains(study.id())).toList();
    List<Warning> warnings = warnings(reading, studies, known, problems);
    return new Typed(answer(studies, problems, warnings, acknowledged), reading.spots());
  }

  /** Whether a file as a whole could not be read, so that nobody can say what is in it. */
  private static boolean hasUnreadFile(Problems problems) {
    return problems.list().stream()
        .map(Problem::where)
        .anyMatch(where -> !where.isEmpty() && !where.startsWith("sheet "));
  }

  /** What is doubtful and has not been acknowledged before; what is impossible is a problem. */
  private static List<Warning> warnings(
      TemplateReading reading, List<Study> studies, KnownEvidence known, Problems problems) {
    List<Warning> warnings = new ArrayList<>();
    FoundPlaces places = new FoundPlaces(reading, studies);
    FreshStudies fresh = new FreshStudies(studies, known);
    boolean nothingNew = problems.isEmpty() && fresh.allStandThere();
    if (!nothingNew) {
      reading.otherSheets().forEach(other -> warnings.add(places.warning(other)));
    }
    for (Finding finding : fresh.findings()) {
      if (finding.severity() == Severity.IMPOSSIBLE) {
        problems.add(places.problem(finding));
      } else {
        warnings.add(places.warning(finding));
      }
    }
    Set<String> before = warnings.isEmpty() ? Set.of() : known.acknowledged();
    Set<String> wrong = places(problems);
    return warnings.stream()
        .filter(warning -> !before.contains(warning.key()))
        // What cannot be is mended first; asking besides whether it is usual asks twice.
        .filter(warning -> !wrong.contains(warning.problem().where()))
        .toList();
  }

  private static Set<String> places(Problems problems) {
    return problems.list().stream().map(Problem::where).collect(Collectors.toSet());
  }

  private static Imported answer(
      List<Study> studies,
      Problems problems,
      List<Warning> warnings,
      Predicate<String> acknowledged) {
    if (!problems.isEmpty()) {
      return new Imported.Wrong(problems.list(), warnings);
    }
    List<Warning> open =
        warnings.stream()
            .filter(Warning::asks)
            .filter(warning -> !acknowledged.test(warning.key()))
            .toList();
    return open.isEmpty()
        ? new Imported.Ready(studies, warnings)
        : new Imported.NeedsAcknowledgement(studies, warnings, open);
  }
}
