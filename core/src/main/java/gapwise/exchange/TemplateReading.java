package gapwise.exchange;

import gapwise.evidence.Arm;
import gapwise.evidence.PatientRow;
import gapwise.evidence.vocabulary.Nearest;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.table.Header;
import gapwise.table.Row;
import gapwise.table.SheetConsumer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/** Takes the rows of a template as they come, and keeps what it reads by study. */
final class TemplateReading implements SheetConsumer {
  /** After so many problems reading stops; more than anyone mends in one go. Our choice. */
  static final int MOST_PROBLEMS = 1000;

  /** A row whose first cell starts with this is a remark, such as the row of descriptions. */
  private static final String REMARK = "#";

  private static final Set<String> NOT_READ = Set.of(WorkbookWriter.README, WorkbookWriter.LISTS);

  private record Reader(Sheet sheet, Consumer<RowReader> row) {}

  private final Problems problems;
  private final Map<String, Reader> readers = new LinkedHashMap<>();
  private final Map<String, SheetHeader> headers = new HashMap<>();
  private final Set<String> seen = new HashSet<>();
  private final Map<String, StudyDraft> drafts = new LinkedHashMap<>();
  private final List<Problem> otherSheets = new ArrayList<>();
  private Optional<Reader> current = Optional.empty();
  private Optional<SheetHeader> header = Optional.empty();

  TemplateReading(Problems problems) {
    this.problems = problems;
    readers.put(StudySheet.SHEET.name(), new Reader(StudySheet.SHEET, this::study));
    readers.put(ArmSheet.SHEET.name(), new Reader(ArmSheet.SHEET, this::arm));
    readers.put(OutcomeSheet.SHEET.name(), new Reader(OutcomeSheet.SHEET, this::outcome));
    readers.put(PatientSheet.FULL.name(), new Reader(PatientSheet.FULL, this::patient));
    readers.put(AppraisalSheet.SHEET.name(), new Reader(AppraisalSheet.SHEET, this::appraisal));
    readers.put(CurveSheet.SHEET.name(), new Reader(CurveSheet.SHEET, this::curve));
  }

  @Override
  public boolean wants(String sheet) {
    String name = Sheet.folded(sheet);
    if (readers.containsKey(name)) {
      seen.add(name);
      return true;
    }
    if (!NOT_READ.contains(name)) {
      String meant =
          Nearest.to(name, readers.keySet())
              .map(near -> "If it is " + near + ", rename it. ")
              .orElse("");
      otherSheets.add(
          new Problem(
              "sheet " + sheet,
              "sheet-not-read",
              "The template has no sheet of this name, so nothing in it is read. "
                  + meant
                  + "The sheets are "
                  + String.join(", ", readers.keySet())
                  + "."));
    }
    return false;
  }

  @Override
  public void begin(Header found) {
    String name = Sheet.folded(found.sheet());
    Reader reader = Objects.requireNonNull(readers.get(name), name);
    SheetHeader matched = SheetHeader.of(found, reader.sheet(), problems);
    if (problems.size() >= MOST_PROBLEMS) {
      throw new TooMany();
    }
    headers.put(name, matched);
    current = Optional.of(reader);
    header = Optional.of(matched);
  }

  @Override
  public void row(Row row) {
    if (row.cells().get(0).stripped().startsWith(REMARK)) {
      return;
    }
    current.orElseThrow().row().accept(new RowReader(header.orElseThrow(), row, problems));
    if (problems.size() >= MOST_PROBLEMS) {
      throw new TooMany();
    }
  }

  private void study(RowReader row) {
    StudySheet.read(row)
        .ifPresent(
            builder -> {
              String id = row.get(Keys.STUDY).orElseThrow();
              StudyDraft draft = draft(id);
              if (draft.study().isPresent()) {
                row.refuse(
                    Keys.STUDY, "duplicate-study", twice("study", id, draft.study().get().row()));
              } else {
                draft.study(
                    new StudyDraft.Placed<>(
                        row.number(),
                        List.of(),
                        row.isSound() ? Optional.of(builder) : Optional.empty()));
              }
            });
  }

  private void arm(RowReader row) {
    ArmSheet.read(row)
        .ifPresent(
            read -> {
              StudyDraft draft = draft(read.study());
              if (read instanceof ArmSheet.ArmRow.All all) {
                if (draft.whole().isPresent()) {
                  row.refuse(
                      Keys.ARM, "duplicate-arm", twice("arm", Keys.ALL, draft.whole().get().row()));
                }
                draft.whole(new StudyDraft.Placed<>(row.number(), List.of(), Optional.of(all)));
              } else if (read instanceof ArmSheet.ArmRow.One one) {
                StudyDraft.Placed<Arm> before = draft.arms().get(one.id());
                if (before != null) {
                  row.refuse(Keys.ARM, "duplicate-arm", twice("arm", one.id(), before.row()));
                } else {
                  draft
                      .arms()
                      .put(
                          one.id(),
                          new StudyDraft.Placed<>(
                              row.number(), List.of(), one.arm().filter(arm -> row.isSound())));
                }
              }
            });
  }

  private void outcome(RowReader row) {
    OutcomeSheet.read(row)
        .ifPresent(
            read ->
                draft(read.study())
                    .outcomes()
                    .add(new StudyDraft.Placed<>(row.number(), read.arms(), read.report())));
  }

  private void patient(RowReader row) {
    PatientSheet.read(row)
        .ifPresent(
            read -> {
              StudyDraft draft = draft(read.study());
              StudyDraft.Placed<PatientRow> placed =
                  new StudyDraft.Placed<>(row.number(), List.of(read.arm()), read.patient());
              if (read.id().isEmpty()) {
                draft.patientsWithoutId().add(placed);
                return;
              }
              String id = read.id().get();
              StudyDraft.Placed<PatientRow> before = draft.patients().putIfAbsent(id, placed);
              if (before != null) {
                row.refuse(
                    PatientSheet.PATIENT, "duplicate-patient", twice("patient", id, before.row()));
              }
            });
  }

  private void appraisal(RowReader row) {
    AppraisalSheet.read(row)
        .ifPresent(
            read ->
                draft(read.study())
                    .judged(
                        read.item(),
                        new StudyDraft.Placed<>(row.number(), List.of(), read.answer()))
                    .ifPresent(
                        before ->
                            row.refuse(
                                AppraisalSheet.ITEM,
                                "item-twice",
                                "The item '"
                                    + read.item()
                                    + "' of this appraisal is judged in row "
                                    + before.row()
                                    + " too. Keep the one that people settled.")));
  }

  private void curve(RowReader row) {
    row.get(Keys.STUDY).ifPresent(study -> draft(study).curves().take(row));
  }

  private static String twice(String what, String id, int row) {
    return "The "
        + what
        + " '"
        + id
        + "' stands already in row "
        + row
        + ". Rename one of them, or delete the row that is not needed.";
  }

  private StudyDraft draft(String study) {
    return drafts.computeIfAbsent(study, StudyDraft::new);
  }

  List<StudyDraft> drafts() {
    return List.copyOf(drafts.values());
  }

  /** Sheets that the template does not have. */
  List<Problem> otherSheets() {
    return otherSheets;
  }

  /** Whether there is a sheet of this name, sound or not. */
  boolean hasSheet(Sheet sheet) {
    return seen.contains(sheet.name());
  }

  /** A place in words. */
  String at(Sheet sheet, int row, String field) {
    return Objects.requireNonNull(headers.get(sheet.name()), sheet.name()).at(row, field);
  }

  /** The places told so far, by their words. */
  Map<String, Import.Spot> spots() {
    Map<String, Import.Spot> spots = new HashMap<>();
    headers.values().forEach(matched -> spots.putAll(matched.spots()));
    return spots;
  }

  /** Too much is wrong to go on. */
  static final class TooMany extends RuntimeException {
    private static final long serialVersionUID = 1L;

    TooMany() {
      super("too many problems", null, false, false);
    }
  }
}
