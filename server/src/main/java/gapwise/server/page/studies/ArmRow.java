package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.StudyAddress;
import gapwise.appraisal.StudyRisk;
import gapwise.evidence.Arm;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.ArmFollowUp;
import gapwise.evidence.ArmInfection;
import gapwise.evidence.ArmName;
import gapwise.evidence.Baseline;
import gapwise.evidence.BoneCount;
import gapwise.evidence.Study;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.search.SearchAnswer.ArmHit;
import gapwise.server.address.ListColumn;
import gapwise.wording.Defects;
import gapwise.wording.FollowUps;
import gapwise.wording.Pictures;
import gapwise.wording.Values;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * One group of patients as a line of a list.
 *
 * @param study its study
 * @param armId its name within the study
 * @param label first author, year, and the arm where there are several
 * @param method what was done
 * @param detail design and infection in words
 * @param cells what else is shown, in order
 * @param lengths missing bone of each patient in centimetres, where the group is counted by them
 *     when a length is asked for
 */
public record ArmRow(
    String study,
    String armId,
    String label,
    Method method,
    String detail,
    List<Cell> cells,
    List<Double> lengths) {
  public ArmRow {
    cells = List.copyOf(cells);
    lengths = List.copyOf(lengths);
  }

  /**
   * One thing that is shown of a group.
   *
   * @param head its column
   * @param number whether it stands at the right
   * @param drawing the same as a drawing
   * @param words as reported; empty where nothing is known
   * @param further what follows from it; empty where there is nothing
   * @param withFurther whether something may follow in this column
   */
  public record Cell(
      String head,
      boolean number,
      Optional<String> drawing,
      String words,
      String further,
      boolean withFurther) {

    /** How the cell is set: a number never breaks, a value with its clock does. */
    public String look() {
      return withFurther ? "value" : number ? "number" : "";
    }
  }

  /** Address of its study. */
  public String href() {
    return StudyAddress.of(study);
  }

  /** The group itself. */
  ArmHit hit() {
    return new ArmHit(study, armId);
  }

  /** A line with all columns but the value of an outcome. */
  static ArmRow of(Study study, Arm arm, List<ListColumn> columns) {
    List<Cell> cells = new ArrayList<>();
    for (ListColumn column : columns) {
      if (column == ListColumn.MISSING_BONE) {
        cells.add(span(study, arm, column.label()));
      } else if (column != ListColumn.VALUE) {
        cells.add(plain(column, words(column, study, arm)));
      }
    }
    return new ArmRow(
        study.id(),
        arm.id(),
        ArmName.of(study, arm),
        arm.method().principal(),
        detail(study, arm),
        cells,
        lengths(study, arm));
  }

  private static List<Double> lengths(Study study, Arm arm) {
    return ArmDefect.of(study, arm)
        .map(defect -> defect.countedByPatients(arm.baseline().patients()))
        .orElse(List.of());
  }

  /** The line as it counts where a missing length is asked for: perhaps only some patients. */
  ArmRow among(LengthRange asked) {
    if (lengths.isEmpty()) {
      return this;
    }
    long inside = lengths.stream().filter(asked::contains).count();
    List<Cell> counted =
        cells.stream()
            .map(
                cell ->
                    cell.head().equals(ListColumn.PATIENTS.label())
                        ? plain(ListColumn.PATIENTS, inside(inside, cell.words()))
                        : cell)
            .toList();
    return new ArmRow(study, armId, label, method, detail, counted, lengths);
  }

  private static String inside(long inside, String all) {
    return all.equals(String.valueOf(inside))
        ? all
        : say("studies.patients-in-range", Map.of("inside", inside, "all", all));
  }

  /**
   * The line with the value of an outcome.
   *
   * @param place of its column
   * @param outcome its name
   * @param value empty where none is known
   */
  ArmRow withValue(int place, String outcome, Optional<Values> value) {
    List<Cell> with = new ArrayList<>(cells);
    with.add(
        place,
        new Cell(
            outcome,
            true,
            Optional.empty(),
            value.map(Values::counted).orElse(""),
            value.map(Values::share).orElse(""),
            true));
    return new ArmRow(study, armId, label, method, detail, with, lengths);
  }

  private static Cell span(Study study, Arm arm, String head) {
    Optional<ArmDefect> defect = ArmDefect.of(study, arm);
    return new Cell(
        head,
        false,
        Defects.isDrawn(defect)
            ? Optional.of(Pictures.span(defect, Pictures.ROW_REACH_CENTIMETRES))
            : Optional.empty(),
        defect.filter(Defects::isTold).map(Defects::words).orElse(""),
        "",
        false);
  }

  private static Cell plain(ListColumn column, String words) {
    return new Cell(column.label(), column.isNumber(), Optional.empty(), words, "", false);
  }

  private static String words(ListColumn column, Study study, Arm arm) {
    return switch (column) {
      case PATIENTS -> patients(study, arm);
      case FOLLOWED -> FollowUps.words(ArmFollowUp.of(study, arm));
      case EXTRACTION -> study.status().label();
      case YEAR -> study.citation().year().stream().mapToObj(String::valueOf).findAny().orElse("");
      case COUNTRY -> study.country().orElse("");
      case DESIGN -> study.design().map(Design::label).orElse("");
      case RISK -> StudyRisk.of(study).shortLabel();
      case BONES -> bones(study, arm);
      case INFECTED -> infected(study, arm).orElse("");
      case MISSING_BONE, VALUE -> "";
    };
  }

  private static String bones(Study study, Arm arm) {
    List<BoneCount> ofArm = arm.baseline().bones();
    List<BoneCount> bones = ofArm.isEmpty() ? study.whole().bones() : ofArm;
    return bones.stream()
        .map(
            one ->
                one.bone().label() + (one.count().isPresent() ? " " + one.count().getAsInt() : ""))
        .collect(Collectors.joining(", "));
  }

  private static String detail(Study study, Arm arm) {
    List<String> parts = new ArrayList<>();
    arm.method().parts().forEach(part -> parts.add(part.label().toLowerCase(Locale.ROOT)));
    study.design().map(Design::label).ifPresent(parts::add);
    infected(study, arm).ifPresent(parts::add);
    arm.keptApart().ifPresent(kept -> parts.add(say("studies.kept-apart")));
    return String.join(", ", parts);
  }

  private static Optional<String> infected(Study study, Arm arm) {
    return counted(arm.baseline())
        .or(() -> counted(study.whole()))
        .or(() -> ArmInfection.of(study, arm).atStart().map(ArmRow::infected));
  }

  private static Optional<String> counted(Baseline baseline) {
    return baseline
        .infected()
        .filter(count -> count.isComplete())
        .map(
            count ->
                say(
                    "studies.infected-of",
                    Map.of(
                        "infected", count.events().getAsInt(), "all", count.total().getAsInt())));
  }

  private static String infected(YesOrNo answer) {
    return switch (answer) {
      case YES -> say("studies.infected");
      case NO -> say("studies.not-infected");
      case MIXED -> say("studies.some-infected");
      case UNCLEAR -> say("studies.infection-unclear");
    };
  }

  private static String patients(Study study, Arm arm) {
    Baseline baseline = arm.baseline();
    int described = study.patientsOf(arm.id()).size();
    if (baseline.patients().isPresent()) {
      int patients = baseline.patients().getAsInt();
      return baseline.limbs().isPresent() && baseline.limbs().getAsInt() != patients
          ? say(
              "studies.patients-and-limbs",
              Map.of("patients", patients, "limbs", baseline.limbs().getAsInt()))
          : String.valueOf(patients);
    }
    if (baseline.limbs().isPresent()) {
      return say("studies.limbs", Map.of("limbs", baseline.limbs().getAsInt()));
    }
    return described > 0 ? String.valueOf(described) : say("studies.patients-not-stated");
  }
}
