package gapwise.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.DefectLength;
import gapwise.evidence.EventCount;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.UnstatedSpread;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Standing;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.problem.Problems;
import gapwise.table.Cell;
import gapwise.table.Header;
import gapwise.table.Row;
import gapwise.table.SheetConsumer;
import gapwise.table.TableFile;
import gapwise.table.TableReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Twelve published studies of this trade as their abstracts report them (resources
 * published/literature-sample, with DOI or PMID of each), through the template into records:
 * nothing may be lost and nothing guessed.
 */
class LiteratureSampleTest {
  /** The sample was filled in before there were these sheets. */
  private static final Set<String> ADDED_LATER = Set.of("appraisal", "curves");

  private static final Path SAMPLE = Path.of("src/test/resources/published/literature-sample");

  /** The sample's own groups of methods, and what we call them. */
  private static final Map<String, String> METHODS =
      Map.of(
          "Ilizarov without transport", "frame-without-transport",
          "bone transport", "bone-transport",
          "induced membrane", "induced-membrane",
          "acute shortening and lengthening", "acute-shortening-lengthening",
          "bone transport nail / internal transport", "internal-bone-transport",
          "vascularised bone flap", "vascularised-bone-flap",
          "allograft", "allograft",
          "custom 3D-printed implant", "printed-scaffold",
          "limb salvage (mixed methods)", "mixed-salvage",
          "amputation", "amputation");

  /** The sample's names of outcomes, and ours; where two are possible the start decides. */
  private static final Map<String, Set<String>> OUTCOMES =
      Map.ofEntries(
          Map.entry("primary union", Set.of("primary-union")),
          Map.entry("union", Set.of("union")),
          Map.entry(
              "deep infection recurrence",
              Set.of("infection-recurrence", "postoperative-deep-infection")),
          Map.entry("refracture", Set.of("refracture")),
          Map.entry("unplanned reoperation", Set.of("unplanned-reoperation")),
          Map.entry("external fixation time", Set.of("external-fixation-time")),
          Map.entry("external fixation index", Set.of("external-fixation-index")),
          Map.entry("complications per patient", Set.of("complications")),
          Map.entry("time to union", Set.of("time-to-union")),
          Map.entry("consolidated transport callus", Set.of("consolidated-regenerate")),
          Map.entry("time to full weight bearing", Set.of("time-to-full-weight-bearing")),
          Map.entry("full weight bearing reached", Set.of("full-weight-bearing-reached")),
          Map.entry("consolidation index", Set.of("consolidation-index")),
          Map.entry("operation time", Set.of("operation-time")),
          Map.entry("blood loss", Set.of("blood-loss")),
          Map.entry("flap survival", Set.of("flap-survival")),
          Map.entry("satisfaction", Set.of("satisfaction")),
          Map.entry("dislocation", Set.of("dislocation")),
          Map.entry("SF-36 physical", Set.of("sf36-physical")),
          Map.entry("six-minute walk", Set.of("six-minute-walk")),
          Map.entry("return to work", Set.of("return-to-work")));

  /** The one unit of the sample that says more than ours; the outcome's name holds the rest. */
  private static final Map<String, Unit> UNITS = Map.of("points 0-100", Unit.POINTS);

  @Test
  void theFilledTemplateHoldsNothingWrongAndTheseDoubts() {
    Imported read = Import.read(templateFiles(), Set.of(), rows -> {});
    Map<String, Integer> doubts = new TreeMap<>();
    read.warnings().forEach(warning -> doubts.merge(warning.problem().code(), 1, Integer::sum));
    assertTrue(read instanceof Imported.NeedsAcknowledgement, read.toString());
    assertEquals(
        Map.of(
            "clock-missing", 12,
            "definition-read-from-words", 5,
            "interval-lopsided", 1,
            "skewed", 4),
        doubts);
  }

  @Test
  void everyFactOfAStudyIsInItsRecord() {
    Map<String, Function<Study, Optional<?>>> facts = new LinkedHashMap<>();
    facts.put("first_author", study -> study.citation().firstAuthor());
    facts.put("year", study -> boxed(study.citation().year()));
    facts.put("title", study -> Optional.of(study.citation().title()));
    facts.put("journal", study -> study.citation().journal());
    facts.put("doi", study -> study.citation().doi());
    facts.put("pmid", study -> study.citation().pmid());
    facts.put("country", Study::country);
    facts.put("design", Study::designWords);
    facts.put("recruitment_from", Study::recruitmentFrom);
    facts.put("recruitment_to", Study::recruitmentTo);
    facts.put("note", Study::note);
    List<Map<String, String>> rows = rows(SAMPLE.resolve("studies.csv"));
    Map<String, Study> studies = studies();
    assertEquals(rows.size(), studies.size());
    for (Map<String, String> row : rows) {
      Study study = studies.get(row.get("study_id"));
      facts.forEach((column, fact) -> assertFact(row, column, fact.apply(study)));
    }
  }

  @Test
  void everyFactOfAnArmIsInItsRecord() {
    Map<String, Function<Arm, Optional<?>>> facts = new LinkedHashMap<>();
    facts.put("method", arm -> arm.method().words());
    facts.put("patients", arm -> boxed(arm.baseline().patients()));
    facts.put("limbs", arm -> boxed(arm.baseline().limbs()));
    facts.put("bone", arm -> arm.baseline().boneWords().or(() -> Optional.of(bones(arm))));
    facts.put(
        "infected_share_percent",
        arm -> arm.baseline().infected().flatMap(c -> boxed(c.percentAsReported())));
    facts.put("age_mean", arm -> arm.baseline().age().flatMap(s -> boxed(s.mean())));
    facts.put("age_sd", arm -> arm.baseline().age().flatMap(s -> boxed(s.standardDeviation())));
    facts.put("defect_cm_mean", arm -> centimetres(arm, QuantitySummary::mean));
    facts.put("defect_cm_sd", arm -> centimetres(arm, QuantitySummary::standardDeviation));
    facts.put("defect_cm_median", arm -> centimetres(arm, QuantitySummary::median));
    facts.put("defect_cm_q1", arm -> centimetres(arm, QuantitySummary::lowerQuartile));
    facts.put("defect_cm_q3", arm -> centimetres(arm, QuantitySummary::upperQuartile));
    facts.put("defect_cm_min", arm -> centimetres(arm, QuantitySummary::minimum));
    facts.put("defect_cm_max", arm -> centimetres(arm, QuantitySummary::maximum));
    facts.put(
        "follow_up_months_mean",
        arm -> arm.baseline().followUp().flatMap(s -> boxed(s.in(Unit.MONTHS).mean())));
    facts.put("note", Arm::note);
    List<Map<String, String>> rows = rows(SAMPLE.resolve("arms.csv"));
    Map<String, Study> studies = studies();
    assertEquals(rows.size(), studies.values().stream().mapToInt(s -> s.arms().size()).sum());
    for (Map<String, String> row : rows) {
      Arm arm = studies.get(row.get("study_id")).arm(row.get("arm_id")).orElseThrow();
      facts.forEach((column, fact) -> assertFact(row, column, fact.apply(arm)));
      assertEquals(METHODS.get(row.get("method_group")), arm.method().principal().code());
    }
  }

  @Test
  void everyFactOfAnOutcomeIsInItsRecord() {
    Map<String, Function<OutcomeReport, Optional<?>>> facts = new LinkedHashMap<>();
    facts.put("events", report -> count(report).flatMap(c -> boxed(c.events())));
    facts.put("total", report -> count(report).flatMap(c -> boxed(c.total())));
    facts.put(
        "percent_as_reported", report -> count(report).flatMap(c -> boxed(c.percentAsReported())));
    facts.put(
        "events_derived", report -> count(report).filter(EventCount::countedBack).map(c -> "yes"));
    facts.put("mean", report -> number(report, QuantitySummary::mean));
    facts.put("sd", report -> number(report, QuantitySummary::standardDeviation));
    facts.put("median", report -> number(report, QuantitySummary::median));
    facts.put("q1", report -> number(report, QuantitySummary::lowerQuartile));
    facts.put("q3", report -> number(report, QuantitySummary::upperQuartile));
    facts.put("min", report -> number(report, QuantitySummary::minimum));
    facts.put("max", report -> number(report, QuantitySummary::maximum));
    facts.put("timepoint_months", report -> report.timePoint().map(time -> time.months()));
    Map<String, Study> studies = studies();
    List<OutcomeReport> matched = new ArrayList<>();
    for (Map<String, String> row : rows(SAMPLE.resolve("outcomes.csv"))) {
      OutcomeReport report = match(studies.get(row.get("study_id")), row);
      matched.add(report);
      facts.forEach((column, fact) -> assertFact(row, column, fact.apply(report)));
      Optional<Unit> unit = summary(report).map(QuantitySummary::unit);
      String printed = row.getOrDefault("unit", "");
      assertEquals(
          printed.isEmpty()
              ? Optional.empty()
              : Optional.of(UNITS.getOrDefault(printed, Unit.parse(printed).orElse(Unit.PERCENT))),
          unit,
          row.toString());
    }
    assertEquals(matched.size(), Set.copyOf(matched).size(), "each row has a record of its own");
    long recorded = studies.values().stream().mapToLong(s -> s.outcomes().size()).sum();
    assertEquals(
        matched.size() + 3, recorded, "and three more stand only in the notes of the sample");
  }

  @Test
  void whatStandsOnlyInTheSamplesWordsIsInFieldsOfItsOwn() {
    Map<String, Study> studies = studies();
    Study mcnally = studies.get("mcnally2017");
    assertEquals(
        Optional.of(new UnstatedSpread(6, OptionalDouble.of(131), OptionalDouble.of(40.8))),
        mcnally.whole().followUp().flatMap(QuantitySummary::unstatedSpread),
        "neither the centre nor the brackets are said to be anything");
    assertEquals(
        List.of(EventCount.of(76, 79)),
        mcnally.outcomes().stream()
            .filter(report -> report.scope() instanceof Scope.AllArms)
            .map(report -> ((ReportedValue.Events) report.value()).count())
            .toList());
    assertEquals(OptionalInt.of(42), studies.get("tetsworth2017").whole().patients());
    assertEquals(
        Optional.of(OptionalDouble.of(74.83)),
        studies
            .get("lan2022")
            .whole()
            .defect()
            .flatMap(DefectLength::summary)
            .map(QuantitySummary::mean));
    Arm printedInMillimetres = studies.get("freischmidt2024").arms().get(0);
    QuantitySummary millimetres =
        printedInMillimetres.baseline().defect().flatMap(DefectLength::summary).orElseThrow();
    assertEquals(Unit.MILLIMETRES, millimetres.unit());
    assertEquals(OptionalDouble.of(60), millimetres.median());
    assertEquals(
        Optional.of(
            new EventCount(OptionalInt.of(25), OptionalInt.of(43), OptionalDouble.empty(), false)),
        studies.get("coetzee2021").arms().get(0).baseline().male());
  }

  @Test
  void intervalsOfMeansStandAsIntervalsAndNotAsDeviations() {
    Map<String, Study> studies = studies();
    assertEquals(
        List.of(
            "67.0 to 77.0",
            "51.0 to 76.0",
            "46.3 to 62.1",
            "32.6 to 62.2",
            "447.0 to 535.0",
            "384.0 to 518.0"),
        intervals(studies.get("frisvoll2019")));
    assertEquals(List.of("7.3 to 15.3", "1.3 to 2.5"), intervals(studies.get("freischmidt2024")));
    studies.values().stream()
        .flatMap(study -> study.outcomes().stream())
        .flatMap(report -> summary(report).stream())
        .filter(summary -> summary.lowerLimit().isPresent())
        .forEach(summary -> assertTrue(summary.standardDeviation().isEmpty()));
  }

  @Test
  void whatALaterTableSaysOtherwiseIsKeptAndDoesNotCount() {
    Map<String, Study> studies = studies();
    List<OutcomeReport> alternatives =
        studies.values().stream()
            .flatMap(study -> study.outcomes().stream())
            .filter(report -> report.standing() == Standing.ALTERNATIVE)
            .toList();
    assertEquals(2, alternatives.size());
    assertEquals(
        Optional.of(new UnstatedSpread(6.5, OptionalDouble.of(10.3), OptionalDouble.of(8))),
        summary(alternatives.get(0)).flatMap(QuantitySummary::unstatedSpread));
    assertEquals(new ReportedValue.Events(EventCount.ofPercent(90.7)), alternatives.get(1).value());
  }

  @Test
  void subgroupsByDefectLengthAreBandsBesideTheWholeArm() {
    List<OutcomeReport> reports = studies().get("lan2022").outcomes();
    assertEquals(4, reports.stream().filter(report -> report.subgroup().isPresent()).count());
    assertEquals(
        2,
        reports.stream()
            .filter(
                r ->
                    r.subgroup()
                        .filter(s -> s.defectFromCentimetres().equals(OptionalDouble.of(6)))
                        .isPresent())
            .count());
  }

  @Test
  void patientsDescribedOneByOneKeepTheirLengthsAsApproximate() {
    Map<String, Study> studies = studies();
    List<Map<String, String>> rows = rows(SAMPLE.resolve("patients.csv"));
    List<PatientRow> patients = studies.get("ren2020").patients();
    assertEquals(rows.size(), patients.size());
    for (int index = 0; index < rows.size(); index++) {
      Map<String, String> row = rows.get(index);
      PatientRow patient = patients.get(index);
      assertFact(row, "patient", Optional.of(patient.id()));
      assertFact(row, "arm_id", Optional.of(patient.armId()));
      assertFact(row, "defect_cm", patient.defect().map(length -> length.centimetres()));
      assertTrue(patient.defect().orElseThrow().approximate());
      assertEquals(
          row.get("union").equals("1"),
          patient.outcomes().get("union").equals(new PatientOutcome.Happened(YesOrNo.YES)));
      assertFact(
          row,
          "months_to_union",
          Optional.ofNullable(patient.outcomes().get("time-to-union"))
              .map(outcome -> ((PatientOutcome.Measured) outcome).value()));
      assertFact(row, "note", patient.note());
    }
  }

  @Test
  void writtenAgainEveryCellIsAsItWas() throws IOException {
    List<Study> studies = List.copyOf(studies().values());
    List<TableFile> written = RoundTripTest.csv(studies);
    TableFile workbook = RoundTripTest.workbook(studies);
    for (int sheet = 0; sheet < written.size(); sheet++) {
      String name = Export.sheets().get(sheet);
      if (ADDED_LATER.contains(name)) {
        assertEquals(List.of(), cells(List.of(written.get(sheet)), name));
        continue;
      }
      List<Map<String, String>> before = rows(SAMPLE.resolve("template").resolve(name + ".csv"));
      assertEquals(before, cells(List.of(written.get(sheet)), name));
      assertEquals(before, cells(List.of(workbook), name));
    }
  }

  private static OutcomeReport match(Study study, Map<String, String> row) {
    String words = row.get("definition_as_reported");
    List<OutcomeReport> found =
        study.outcomes().stream()
            .filter(report -> report.standing() == Standing.COUNTS)
            .filter(report -> report.scope().equals(new Scope.OneArm(row.get("arm_id"))))
            .filter(report -> OUTCOMES.get(row.get("outcome")).contains(report.outcome().code()))
            .filter(
                report ->
                    report
                        .definition()
                        .or(() -> report.subgroup().map(subgroup -> subgroup.words()))
                        .equals(Optional.of(words)))
            .toList();
    assertEquals(1, found.size(), row.toString());
    return found.get(0);
  }

  private static void assertFact(Map<String, String> row, String column, Optional<?> recorded) {
    String printed = row.getOrDefault(column, "");
    if (recorded.isPresent() && recorded.get() instanceof Double number) {
      assertEquals(Double.parseDouble(printed), number, 1e-9, column + " of " + row);
    } else {
      assertEquals(printed, recorded.map(Object::toString).orElse(""), column + " of " + row);
    }
  }

  private static Optional<EventCount> count(OutcomeReport report) {
    return report.value() instanceof ReportedValue.Events events
        ? Optional.of(events.count())
        : Optional.empty();
  }

  private static Optional<QuantitySummary> summary(OutcomeReport report) {
    return report.value() instanceof ReportedValue.Quantity quantity
        ? Optional.of(quantity.summary())
        : Optional.empty();
  }

  private static Optional<Double> number(
      OutcomeReport report, Function<QuantitySummary, OptionalDouble> which) {
    return summary(report).flatMap(summary -> boxed(which.apply(summary)));
  }

  private static Optional<Double> centimetres(
      Arm arm, Function<QuantitySummary, OptionalDouble> which) {
    return arm.baseline()
        .defect()
        .flatMap(DefectLength::centimetres)
        .flatMap(summary -> boxed(which.apply(summary)));
  }

  private static String bones(Arm arm) {
    Baseline baseline = arm.baseline();
    return baseline.bones().stream()
        .map(b -> b.bone().code() + (b.count().isPresent() ? " " + b.count().getAsInt() : ""))
        .collect(Collectors.joining(", "));
  }

  private static List<String> intervals(Study study) {
    return study.outcomes().stream()
        .flatMap(report -> summary(report).stream())
        .filter(summary -> summary.lowerLimit().isPresent())
        .map(s -> s.lowerLimit().getAsDouble() + " to " + s.upperLimit().getAsDouble())
        .toList();
  }

  private static Optional<Double> boxed(OptionalDouble value) {
    return value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
  }

  private static Optional<Integer> boxed(OptionalInt value) {
    return value.isPresent() ? Optional.of(value.getAsInt()) : Optional.empty();
  }

  static List<TableFile> templateFiles() {
    return Export.sheets().stream()
        .filter(sheet -> !ADDED_LATER.contains(sheet))
        .map(sheet -> TableFile.of(SAMPLE.resolve("template").resolve(sheet + ".csv")))
        .toList();
  }

  /** The studies, after a reviewer has let every doubt stand. */
  static Map<String, Study> studies() {
    Set<String> all =
        Import.read(templateFiles(), Set.of(), rows -> {}).warnings().stream()
            .map(Warning::key)
            .collect(Collectors.toSet());
    Imported read = Import.read(templateFiles(), all, rows -> {});
    assertTrue(read instanceof Imported.Ready, read.toString());
    Map<String, Study> studies = new LinkedHashMap<>();
    ((Imported.Ready) read).studies().forEach(study -> studies.put(study.id(), study));
    return studies;
  }

  private static List<Map<String, String>> rows(Path file) {
    String sheet = String.valueOf(file.getFileName()).replace(".csv", "");
    return cells(List.of(TableFile.of(file)), sheet);
  }

  /** The cells of a sheet that hold something, by column, remarks left out. */
  private static List<Map<String, String>> cells(List<TableFile> files, String sheet) {
    List<Map<String, String>> rows = new ArrayList<>();
    Problems problems = new Problems();
    new TableReader()
        .read(
            files,
            problems,
            new SheetConsumer() {
              @Override
              public boolean wants(String name) {
                return name.equals(sheet);
              }

              @Override
              public void begin(Header header) {}

              @Override
              public void row(Row row) {
                if (!row.cells().get(0).text().startsWith("#")) {
                  rows.add(
                      row.cells().stream()
                          .filter(cell -> !cell.isBlank())
                          .collect(Collectors.toMap(cell -> cell.column().name(), Cell::stripped)));
                }
              }
            });
    assertEquals(List.of(), problems.list());
    return rows;
  }
}
