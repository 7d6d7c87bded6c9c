package gapwise.server.page.place;

import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Phase;
import gapwise.place.Milestone;
import gapwise.place.UsualCourse;
import gapwise.server.address.Address;
import gapwise.server.address.CaseAddress;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Which milestones and phases the form of a case shows: those that stand in the address, those that
 * are usual, and those added; without those taken off. All of it stands in the address: {@code
 * with} and {@code less} name milestones added and taken off, {@code usual} the method whose usual
 * phases have been offered, {@code milestone} and {@code phase} (with {@code after}) what is to be
 * added now and {@code drop} what is to be taken off now.
 */
final class CourseRows {
  /** Says that the first question is answered, whatever was said. */
  static final String STEP = "step";

  static final String WITH = "with";
  static final String LESS = "less";
  static final String USUAL = "usual";
  private static final String ADD_MILESTONE = "milestone";
  private static final String ADD_PHASE = "phase";
  private static final String AFTER = "after";
  private static final String DROP = "drop";
  private static final String DROP_PHASE = "phase-";

  /** What only the form needs, and a figure or a result does not. */
  static final List<String> OF_FORM =
      List.of(STEP, WITH, LESS, USUAL, ADD_MILESTONE, ADD_PHASE, AFTER, DROP);

  private static final List<String> OF_PHASE = List.of("phase-", "offered-", "duration-", "unit-");

  private final Address address;
  private final UsualCourse usual;

  CourseRows(Address address, UsualCourse usual) {
    this.address = address;
    this.usual = usual;
  }

  /**
   * A phase of the form as it stands in the address.
   *
   * @param kind its code; empty where none is given
   * @param chosen whether a person named it, so that it must have a length
   */
  record PhaseRow(String kind, boolean chosen, String duration, String unit) {
    static PhaseRow offered(Phase phase) {
      return new PhaseRow(phase.code(), false, "", "");
    }
  }

  /** Milestones to show, in the order of their list. */
  List<Milestone> milestones() {
    return Stream.of(Milestone.values()).filter(this::shows).toList();
  }

  private boolean shows(Milestone milestone) {
    String code = milestone.code();
    return !address.first(code).isEmpty()
        || address.has(WITH, code)
        || (usual.milestones().contains(milestone) && !address.has(LESS, code));
  }

  /**
   * Phases to show, in the order of the course. Where none has a length and the method is another
   * than that of which they were offered, those usual of the method are offered.
   */
  List<PhaseRow> phases() {
    List<PhaseRow> standing = standing();
    boolean untouched =
        standing.stream().allMatch(row -> row.duration().isEmpty() && !row.chosen());
    return untouched && !address.has(USUAL, usualOf(address))
        ? usual.phases().stream().map(PhaseRow::offered).toList()
        : standing;
  }

  private List<PhaseRow> standing() {
    return IntStream.rangeClosed(1, CaseAddress.MOST_PHASES)
        .mapToObj(this::standing)
        .filter(row -> !row.kind().isEmpty() || !row.duration().isEmpty())
        .toList();
  }

  private PhaseRow standing(int number) {
    String chosen = address.first("phase-" + number);
    return new PhaseRow(
        chosen.isEmpty() ? address.first("offered-" + number) : chosen,
        !chosen.isEmpty(),
        address.first("duration-" + number),
        address.first("unit-" + number));
  }

  /** Names of the phases offered in an address that have no length there. */
  static List<String> leftOut(Address address) {
    return IntStream.rangeClosed(1, CaseAddress.MOST_PHASES)
        .filter(i -> address.first("phase-" + i).isEmpty())
        .filter(i -> address.first("duration-" + i).isEmpty())
        .mapToObj(i -> Coded.parse(Phase.class, address.first("offered-" + i)))
        .flatMap(phase -> phase.map(Phase::label).stream())
        .toList();
  }

  /** The method whose usual phases are offered, as the address names it. */
  static String usualOf(Address address) {
    return Method.vocabulary().find(address.first("method")).map(Method::code).orElse("any");
  }

  /** The address once what is to be added or taken off is; empty where nothing is. */
  Optional<Address> changed() {
    Optional<Milestone> milestone = Coded.parse(Milestone.class, address.first(ADD_MILESTONE));
    Optional<Phase> phase = Coded.parse(Phase.class, address.first(ADD_PHASE));
    String dropped = address.first(DROP);
    Address left = address.without(List.of(ADD_MILESTONE, ADD_PHASE, AFTER, DROP));
    if (milestone.isPresent()) {
      String code = milestone.get().code();
      left = left.without(LESS, code).without(WITH, code).and(WITH, code);
    }
    List<PhaseRow> rows = new ArrayList<>(phases());
    if (phase.isPresent() && rows.size() < CaseAddress.MOST_PHASES) {
      rows.add(place(rows.size()), PhaseRow.offered(phase.get()));
      left = written(left, rows);
    }
    Optional<Milestone> off = Coded.parse(Milestone.class, dropped);
    if (off.isPresent()) {
      String code = off.get().code();
      List<String> names =
          off.get().isTime()
              ? List.of(code, code + "-unit", code + "-from")
              : List.of(code, "currency");
      left = left.without(names).without(WITH, code).without(LESS, code).and(LESS, code);
    } else if (dropped.matches(DROP_PHASE + "\\d{1,2}")) {
      int number = Integer.parseInt(dropped.substring(DROP_PHASE.length()));
      if (number >= 1 && number <= rows.size()) {
        rows.remove(number - 1);
        left = written(left, rows);
      }
    }
    return left.equals(address) ? Optional.empty() : Optional.of(left);
  }

  /** After which phase a new one comes; after the last where nothing else is said. */
  private int place(int rows) {
    String after = address.first(AFTER);
    return after.matches("\\d{1,2}") ? Math.min(Integer.parseInt(after), rows) : rows;
  }

  private static Address written(Address before, List<PhaseRow> rows) {
    Address written = without(before).with(USUAL, usualOf(before));
    for (int i = 0; i < rows.size(); i++) {
      PhaseRow row = rows.get(i);
      written =
          written
              .with((row.chosen() ? "phase-" : "offered-") + (i + 1), row.kind())
              .with("duration-" + (i + 1), row.duration())
              .with("unit-" + (i + 1), row.unit());
    }
    return written;
  }

  private static Address without(Address before) {
    return before.without(
        IntStream.rangeClosed(1, CaseAddress.MOST_PHASES)
            .boxed()
            .flatMap(i -> OF_PHASE.stream().map(name -> name + i))
            .toList());
  }

  /** The id of the field to go to after a change, such as that of the row added. */
  static String field(Address before) {
    String milestone = before.first(ADD_MILESTONE);
    if (Arrays.stream(Milestone.values()).anyMatch(one -> one.code().equals(milestone))) {
      return milestone;
    }
    return before.first(ADD_PHASE).isEmpty() ? "times" : "phases";
  }

  /** The case alone, its phases under the names that every address of a case has. */
  static Address alone(Address address) {
    Address alone = address.without(OF_FORM);
    for (int i = 1; i <= CaseAddress.MOST_PHASES; i++) {
      String offered = alone.first("offered-" + i);
      boolean lasted = !alone.first("duration-" + i).isEmpty();
      alone = alone.without(List.of("offered-" + i));
      if (lasted && !offered.isEmpty() && alone.first("phase-" + i).isEmpty()) {
        alone = alone.with("phase-" + i, offered);
      } else if (!lasted && alone.first("phase-" + i).isEmpty()) {
        alone = alone.without(List.of("unit-" + i));
      }
    }
    return alone;
  }
}
