package gapwise.supplement;

import gapwise.cohort.CohortDecision;
import gapwise.cohort.DecisionJson;
import gapwise.cohort.Member;
import gapwise.evidence.Study;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.KnownEvidence;
import gapwise.exchange.SheetFiles;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.table.TableFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * The studies of a supplement as sheets of the template, and what was settled of them. What is
 * computed is computed from these sheets as they read again, never from what they were made of.
 *
 * @param sheets the text of each sheet by its name
 * @param files describes the sheets
 * @param studies as the sheets read
 * @param decisions what persons settled of pairs of these
 */
record SupplementData(
    Map<String, String> sheets,
    SheetFiles files,
    List<Study> studies,
    List<CohortDecision> decisions) {
  /** File of the decisions, one JSON object a line. */
  static final String DECISIONS = "data/shared-patients.jsonl";

  SupplementData {
    sheets = new LinkedHashMap<>(sheets);
    studies = List.copyOf(studies);
    decisions = List.copyOf(decisions);
  }

  /** The text of a sheet. */
  String sheet(String name) {
    return Objects.requireNonNull(sheets.get(name), name);
  }

  /** Where a sheet lies. */
  static String path(String sheet) {
    return "data/" + sheet + ".csv";
  }

  /**
   * Writes the sheets and reads them again.
   *
   * @param studies by id
   * @param settled all that persons settled
   * @throws WrongInputException naming a study that does not read as it was
   */
  static SupplementData of(List<Study> studies, Collection<CohortDecision> settled)
      throws IOException {
    SheetFiles files = SheetFiles.of(studies::forEach);
    Map<String, String> sheets = new LinkedHashMap<>();
    for (String sheet : files.names()) {
      StringBuilder text = new StringBuilder();
      files.write(sheet, text);
      sheets.put(sheet, text.toString());
    }
    List<TableFile> tables = new ArrayList<>();
    sheets.forEach(
        (sheet, text) ->
            tables.add(TableFile.of(sheet + ".csv", text.getBytes(StandardCharsets.UTF_8))));
    List<Study> read = studies.isEmpty() ? List.of() : read(tables);
    requireEqual(studies, read);
    return new SupplementData(sheets, files, read, among(read, settled));
  }

  /** The studies of sheets; doubts about them were settled where they were taken in. */
  static List<Study> read(List<TableFile> tables) {
    Imported read = Import.read(tables, KnownEvidence.NONE, doubt -> true, rows -> {});
    if (read instanceof Imported.Ready ready) {
      return ready.studies().stream().sorted(Comparator.comparing(Study::id)).toList();
    }
    if (read instanceof Imported.Wrong wrong) {
      throw new WrongInputException(wrong.problems());
    }
    throw new IllegalStateException("every doubt was acknowledged, yet one is open");
  }

  private static void requireEqual(List<Study> studies, List<Study> read) {
    Map<String, Study> byId =
        read.stream().collect(Collectors.toMap(Study::id, study -> study, (one, two) -> one));
    for (Study study : studies) {
      if (!study.equals(byId.get(study.id()))) {
        throw new WrongInputException(
            List.of(
                new Problem(
                    "study " + study.id(),
                    "study-not-in-sheets",
                    "The sheets of the template do not hold this study as it is kept, so a supplement"
                        + " would tell other numbers. Open the study at the desk, hand it in anew, and"
                        + " make the supplement again.",
                    study.id())));
      }
    }
  }

  /** Those of which both records are here. */
  private static List<CohortDecision> among(
      List<Study> studies, Collection<CohortDecision> settled) {
    Set<String> ids =
        studies.stream().map(Study::id).collect(Collectors.toCollection(TreeSet::new));
    return settled.stream()
        .filter(one -> ids.contains(Member.parse(one.first()).study()))
        .filter(one -> ids.contains(Member.parse(one.second()).study()))
        .sorted(Comparator.comparing(CohortDecision::key))
        .toList();
  }

  /** The decisions as lines. */
  String lines() {
    return decisions.stream()
        .map(one -> DecisionJson.write(one) + "\n")
        .collect(Collectors.joining());
  }
}
