package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.QuestionAddress;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** What an address asks beside its filters: of which values, counted how; each to be taken off. */
public final class QuestionParts {
  private QuestionParts() {}

  /** Everything that narrows a result: filters first, then the rest. */
  public static List<FilterForm.On> all(String path, Address address) {
    List<FilterForm.On> all = new ArrayList<>(Narrowing.of(path, address, Filters.read(address)));
    all.addAll(besideFilters(path, address));
    return all;
  }

  /** The parts that are no filters, of a page whose numbers follow from them. */
  public static List<FilterForm.On> besideFilters(String path, Address address) {
    List<FilterForm.On> on = new ArrayList<>();
    Coded.parse(Clock.class, address.first("clock"))
        .ifPresent(
            clock ->
                on.add(
                    new FilterForm.On(
                        say("page.counted-from", Map.of("clock", clock.label())),
                        path,
                        address.without(List.of("clock", "clock-b")))));
    String least = address.first("least");
    if (!least.isEmpty()) {
      on.add(
          new FilterForm.On(
              say("page.fewest-patients", Map.of("least", least)),
              path,
              address.without(List.of("least"))));
    }
    ReadStands.taken(path, address).ifPresent(on::add);
    Definitions.taken(path, address).ifPresent(on::add);
    UnstatedClocks.taken(path, address).ifPresent(on::add);
    on.addAll(Offer.taken(path, address));
    return on;
  }

  /** The detail by which a pooled result is split, with the address that pools it as a whole. */
  public static Optional<FilterForm.On> split(String path, Address address) {
    return QuestionAddress.split(address)
        .map(
            kind ->
                new FilterForm.On(
                    say("page.split-by", Map.of("detail", kind.shortLabel())),
                    path,
                    address.without(List.of(QuestionAddress.SPLIT))));
  }

  /** The same on a page that keeps them for a result and shows all groups whatever they say. */
  public static List<FilterForm.On> held(String path, Address address) {
    return Stream.concat(besideFilters(path, address).stream(), split(path, address).stream())
        .map(
            one ->
                new FilterForm.On(
                    say("page.held-for-results", Map.of("part", one.label())),
                    one.path(),
                    one.rest()))
        .toList();
  }

  /** Names and values of an address that a form sends along unseen, of the names given. */
  public static List<Map.Entry<String, String>> hidden(Address address, List<String> names) {
    return names.stream()
        .flatMap(name -> address.all(name).stream().map(value -> Map.entry(name, value)))
        .toList();
  }

  /** The same of the parts that are no filters. */
  public static List<Map.Entry<String, String>> hidden(Address address) {
    return hidden(address, QuestionAddress.OWN_NAMES);
  }
}
