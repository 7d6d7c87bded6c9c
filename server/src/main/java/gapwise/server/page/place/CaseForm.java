package gapwise.server.page.place;

import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Phase;
import gapwise.place.Milestone;
import gapwise.server.address.Address;
import gapwise.server.address.CaseAddress;
import gapwise.server.address.PagePaths;
import gapwise.wording.Segments;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The fields in which a case is entered, filled from the address.
 *
 * @param address what was entered
 */
public record CaseForm(Address address) {
  /** Address of an invented course: a frame with early weight on the leg. */
  public static final String EXAMPLE = example().at(PagePaths.CASE);

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
   */
  public record TimeField(
      String name, String label, String value, boolean weeks, List<Choice> clocks) {}

  /** One phase in the form. */
  public record PhaseField(int number, List<Choice> phases, String value, boolean weeks) {}

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
    return Stream.of(Milestone.values())
        .filter(Milestone::isTime)
        .map(
            one ->
                new TimeField(
                    one.code(),
                    one == Milestone.FRAME_OFF ? "Time in the external frame" : one.label(),
                    address.first(one.code()),
                    address.has(one.code() + "-unit", "weeks"),
                    one.onlyClock().isPresent() ? List.of() : clocks(one.code() + "-from")))
        .toList();
  }

  /** The phases in the form. */
  public List<PhaseField> phases() {
    return IntStream.rangeClosed(1, CaseAddress.MOST_PHASES)
        .mapToObj(
            i ->
                new PhaseField(
                    i,
                    Stream.of(Phase.values())
                        .map(one -> choice("phase-" + i, one.code(), one.label()))
                        .toList(),
                    address.first("duration-" + i),
                    address.has("unit-" + i, "weeks")))
        .toList();
  }

  private List<Choice> clocks(String name) {
    return Stream.of(Clock.values()).map(one -> choice(name, one.code(), one.label())).toList();
  }

  private Choice choice(String name, String value, String label) {
    return new Choice(value, label, address.has(name, value));
  }
}
