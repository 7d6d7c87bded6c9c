package gapwise.server.page.place;

import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Phase;
import gapwise.place.Milestone;
import gapwise.place.UsualCourse;
import gapwise.problem.Problem;
import gapwise.server.address.Address;
import gapwise.server.address.CaseAddress;
import gapwise.server.address.PagePaths;
import gapwise.wording.Segments;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The fields in which a case is entered, filled from the address: first how it was treated, then
 * the milestones and phases that such a case usually has, and those added.
 */
public final class CaseForm {
  /** Address of an invented course: a frame with early weight on the leg. */
  public static final String EXAMPLE = example().at(PagePaths.CASE);

  private final Address address;
  private final UsualCourse usual;
  private final CourseRows rows;
  private final List<Problem> problems;

  /**
   * @param address what was entered
   * @param usual what a case of its method usually has
   * @param problems what is wrong in it; none while nothing is
   */
  CaseForm(Address address, UsualCourse usual, List<Problem> problems) {
    this.address = address;
    this.usual = usual;
    this.rows = new CourseRows(address, usual);
    this.problems = List.copyOf(problems);
  }

  /** What was entered. */
  public Address address() {
    return address;
  }

  /** Everything that is wrong. */
  public List<Problem> problems() {
    return problems;
  }

  private static Address example() {
    Address example =
        new Address(Map.of())
            .with("method", "bone-transport")
            .with("length", "6")
            .with("bone", Bone.TIBIA.code())
            .with("start", Clock.FRAME_ON.code())
            .with(Milestone.FRAME_OFF.code(), "30")
            .with(Milestone.FRAME_OFF.code() + "-unit", "weeks");
    List<Phase> phases =
        List.of(
            Phase.NO_WEIGHT_BEARING,
            Phase.PARTIAL_WEIGHT_BEARING,
            Phase.FULL_IN_SUPPORT,
            Phase.UNSUPPORTED);
    List<String> weeks = List.of("2", "6", "22", "20");
    for (int i = 0; i < phases.size(); i++) {
      example =
          example
              .with("phase-" + (i + 1), phases.get(i).code())
              .with("duration-" + (i + 1), weeks.get(i))
              .with("unit-" + (i + 1), "weeks");
    }
    return example;
  }

  /** One choice of a list. */
  public record Choice(String value, String label, boolean chosen) {}

  /**
   * One time in the form.
   *
   * @param clocks clocks to choose from; none where only one means anything
   * @param hint what groups of the method report; empty where none does
   */
  public record TimeField(
      String name,
      String label,
      String value,
      boolean weeks,
      List<Choice> clocks,
      Optional<String> hint) {}

  /**
   * One phase in the form.
   *
   * @param kind its code as it stands in the address; may be empty
   * @param label its name; empty where the code is of no phase
   * @param hint what groups of the method report; empty where none does
   */
  public record PhaseField(
      int number,
      String kind,
      Optional<String> label,
      String value,
      boolean weeks,
      Optional<String> hint) {}

  /** Methods to choose from. */
  public List<Choice> methods() {
    return Method.vocabulary().all().stream()
        .map(one -> choice("method", one.code(), one.label()))
        .toList();
  }

  /** Bones to choose from. */
  public List<Choice> bones() {
    return Stream.of(Bone.values()).map(one -> choice("bone", one.code(), one.label())).toList();
  }

  /** Segments to choose from. */
  public List<Choice> segments() {
    return List.of("31", "32", "33", "41", "42", "43", "44").stream()
        .map(one -> choice("segment", one, Segments.name(one)))
        .toList();
  }

  /** States of infection to choose from. */
  public List<Choice> infections() {
    return List.of(
        choice("infection", "none", "never infected"),
        choice("infection", "past", "infected in the past, calm at the start"),
        choice("infection", "active", "infected at the start"));
  }

  /** What the beginning of the course may be. */
  public List<Choice> starts() {
    return clocks("start");
  }

  /** The times in the form. */
  public List<TimeField> times() {
    return rows.milestones().stream()
        .filter(Milestone::isTime)
        .map(
            one ->
                new TimeField(
                    one.code(),
                    name(one),
                    address.first(one.code()),
                    address.has(one.code() + "-unit", "weeks"),
                    one.onlyClock().isPresent() ? List.of() : clocks(one.code() + "-from"),
                    usual.hint(one)))
        .toList();
  }

  private static String name(Milestone milestone) {
    return milestone == Milestone.FRAME_OFF ? "Time in the external frame" : milestone.label();
  }

  /** Whether the form asks for a cost. */
  public boolean asksCost() {
    return rows.milestones().contains(Milestone.COST);
  }

  /** The milestones that may be added. */
  public List<Choice> further() {
    List<Milestone> shown = rows.milestones();
    return Stream.of(Milestone.values())
        .filter(one -> !shown.contains(one))
        .map(one -> new Choice(one.code(), name(one), false))
        .toList();
  }

  /** The phases in the form. */
  public List<PhaseField> phases() {
    List<CourseRows.PhaseRow> standing = rows.phases();
    return IntStream.rangeClosed(1, standing.size())
        .mapToObj(i -> phase(i, standing.get(i - 1)))
        .toList();
  }

  private PhaseField phase(int number, CourseRows.PhaseRow row) {
    Optional<Phase> known = Coded.parse(Phase.class, row.kind());
    return new PhaseField(
        number,
        row.kind(),
        known.map(Phase::label),
        row.duration(),
        row.unit().equals("weeks"),
        known.flatMap(usual::hint));
  }

  /** Whether a further phase may be added. */
  public boolean hasRoom() {
    return rows.phases().size() < CaseAddress.MOST_PHASES;
  }

  /** The kinds of phase. */
  public List<Choice> kinds() {
    return Stream.of(Phase.values())
        .map(one -> new Choice(one.code(), one.label(), false))
        .toList();
  }

  /** Whether the first question is still open, so that nothing else is asked yet. */
  public boolean isFirst() {
    return address.parameters().isEmpty();
  }

  /** What the form keeps without showing it. */
  public List<Choice> kept() {
    return Stream.concat(
            Stream.of(
                new Choice(CourseRows.STEP, "course", false),
                new Choice(CourseRows.USUAL, CourseRows.usualOf(address), false)),
            Stream.of(CourseRows.WITH, CourseRows.LESS)
                .flatMap(
                    name ->
                        address.all(name).stream().map(value -> new Choice(name, value, false))))
        .toList();
  }

  /** The method in words, where one is chosen. */
  public Optional<String> method() {
    return Method.vocabulary().find(address.first("method")).map(Method::shortLabel);
  }

  /** What is wrong with a field; empty where nothing is. */
  public Optional<String> wrong(String field) {
    return problems.stream()
        .filter(one -> one.where().equals(field))
        .map(Problem::message)
        .findFirst();
  }

  /** Whether a field is wrong, as its attribute says it; empty where it is not. */
  public Optional<String> invalid(String field) {
    return wrong(field).map(message -> "true");
  }

  /** The ids of what is said beside a field: what is wrong with it, and its hint. */
  public Optional<String> said(String field, boolean hint) {
    List<String> ids = new ArrayList<>();
    wrong(field).ifPresent(message -> ids.add("wrong-" + field));
    if (hint) {
      ids.add("hint-" + field);
    }
    return ids.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", ids));
  }

  private List<Choice> clocks(String name) {
    return Stream.of(Clock.values()).map(one -> choice(name, one.code(), one.label())).toList();
  }

  private Choice choice(String name, String value, String label) {
    return new Choice(value, label, address.has(name, value));
  }
}
