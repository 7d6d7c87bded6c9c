package gapwise.server.page;

import gapwise.server.account.Actor;
import gapwise.server.address.CarriedQuestion;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The ways from a page to others. Each carries the question of the page along.
 *
 * @param doors the doors of the header
 * @param within the pages behind the door of this page; empty where it is the only one
 */
public record Navigation(List<Link> doors, List<Link> within) {
  private static final Map<Door, List<Place>> BEHIND =
      Stream.of(Place.values())
          .filter(place -> place.door().isPresent())
          .collect(Collectors.groupingBy(place -> place.door().orElseThrow()));

  public Navigation {
    doors = List.copyOf(doors);
    within = List.copyOf(within);
  }

  /** What the second line calls this page. */
  public String here() {
    return within.stream()
        .filter(one -> one.current().isPresent())
        .map(Link::label)
        .findFirst()
        .orElse("");
  }

  /**
   * One way.
   *
   * @param current "page" for the page itself, "true" for the door that it stands behind; empty for
   *     all others
   */
  public record Link(String label, String href, Optional<String> current) {}

  /** The ways from a page that asks a question, as far as who asks may go. */
  static Navigation from(Place place, CarriedQuestion question, Actor person) {
    return new Navigation(
        Stream.of(Door.values())
            .filter(door -> person.may(behind(door).get(0).right()))
            .map(door -> link(door, place, question))
            .toList(),
        place.door().map(door -> within(door, place, question, person)).orElse(List.of()));
  }

  private static Link link(Door door, Place place, CarriedQuestion question) {
    Optional<String> current =
        place.door().filter(door::equals).map(own -> behind(own).size() == 1 ? "page" : "true");
    return new Link(door.label(), behind(door).get(0).href(question), current);
  }

  private static List<Link> within(Door door, Place place, CarriedQuestion question, Actor person) {
    List<Place> all = behind(door);
    return all.size() == 1
        ? List.of()
        : all.stream()
            .filter(one -> one.isAlwaysNamed() || one == place)
            .filter(one -> person.may(one.right()))
            .map(
                one ->
                    new Link(
                        one.label(),
                        one.href(question),
                        one == place ? Optional.of("page") : Optional.empty()))
            .toList();
  }

  private static List<Place> behind(Door door) {
    return BEHIND.getOrDefault(door, List.of());
  }
}
