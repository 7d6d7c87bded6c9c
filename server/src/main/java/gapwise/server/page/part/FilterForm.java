package gapwise.server.page.part;

import gapwise.evidence.Answer;
import gapwise.evidence.Bone;
import gapwise.evidence.Coded;
import gapwise.evidence.Design;
import gapwise.evidence.Method;
import gapwise.evidence.Outcome;
import gapwise.search.LooseWords;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.wording.Defects;
import gapwise.wording.FollowUps;
import gapwise.wording.Segments;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The filters beside a list, with the number of groups that each choice would leave.
 *
 * @param address the address that they stand in
 * @param bands bands of missing length to take at one click
 * @param groups filters of several choices
 * @param families outcomes by family
 * @param on what narrows the list now, each with the address without it
 * @param loose said where no group has all words, so that any of them was enough
 */
public record FilterForm(
    Address address,
    List<Band> bands,
    List<Group> groups,
    List<Family> families,
    List<On> on,
    Optional<String> loose) {

  /** Names that start a list anew when a filter changes. */
  private static final List<String> PLACE = List.of("page");

  /** Bands of missing length in cm that reviewers commonly use (common practice, no source). */
  public static final List<double[]> BANDS =
      List.of(
          new double[] {0, 2},
          new double[] {2, 4},
          new double[] {4, 6},
          new double[] {6, 8},
          new double[] {8, 12},
          new double[] {12, Double.POSITIVE_INFINITY});

  /** One band of missing length. */
  public record Band(String label, String href, boolean chosen) {}

  /** A filter of several choices. */
  public record Group(String name, String legend, List<Choice> choices) {}

  /** One choice. */
  public record Choice(String value, String label, int count, boolean chosen) {}

  /** Outcomes of one family. */
  public record Family(String name, List<Choice> outcomes) {}

  /**
   * Something that narrows the list.
   *
   * @param path of the page
   * @param rest the filters without it
   */
  public record On(String label, String path, Address rest) {
    /** The address without it. */
    public String without() {
      return rest.at(path);
    }
  }

  public static FilterForm of(
      String path, Address address, SearchRequest request, SearchAnswer answer) {
    Map<String, Map<String, Integer>> counts = counts(answer);
    List<Group> groups = new ArrayList<>();
    groups.add(
        group("method", "Method", Method.vocabulary().all(), counts.get("methods"), address));
    groups.add(group("bone", "Bone", List.of(Bone.values()), counts.get("bones"), address));
    groups.add(segments(counts.get("segments"), address));
    groups.add(
        group(
            "infected",
            "Infected at the start",
            List.of(Answer.values()),
            counts.get("infected"),
            address));
    groups.add(group("design", "Design", List.of(Design.values()), counts.get("designs"), address));
    groups.removeIf(group -> group.choices().isEmpty());
    return new FilterForm(
        address,
        bands(path, address),
        groups,
        families(counts.get("outcomes"), address),
        on(path, address, request),
        answer.looseWords().map(LooseWords::sentence));
  }

  private static Map<String, Map<String, Integer>> counts(SearchAnswer answer) {
    Map<String, Map<String, Integer>> counts = new LinkedHashMap<>();
    for (String name : List.of("methods", "bones", "segments", "infected", "designs", "outcomes")) {
      counts.put(name, new LinkedHashMap<>());
    }
    for (SearchAnswer.Facet facet : answer.facets()) {
      Map<String, Integer> ofFilter =
          counts.computeIfAbsent(facet.filter(), name -> new LinkedHashMap<>());
      facet.counts().forEach(count -> ofFilter.put(count.code(), count.arms()));
    }
    return counts;
  }

  private static Group group(
      String name,
      String legend,
      List<? extends Coded> vocabulary,
      Map<String, Integer> counts,
      Address address) {
    return new Group(name, legend, choices(name, vocabulary, counts, address));
  }

  private static List<Choice> choices(
      String name, List<? extends Coded> vocabulary, Map<String, Integer> counts, Address address) {
    return vocabulary.stream()
        .map(
            word ->
                new Choice(
                    word.code(),
                    word instanceof Method method ? method.shortLabel() : word.label(),
                    counts.getOrDefault(word.code(), 0),
                    address.has(name, word.code())))
        .filter(choice -> choice.count() > 0 || choice.chosen())
        .toList();
  }

  private static Group segments(Map<String, Integer> counts, Address address) {
    Map<String, Integer> shown = new TreeMap<>(counts);
    address.all("segment").forEach(code -> shown.putIfAbsent(code, 0));
    List<Choice> choices =
        shown.entrySet().stream()
            .map(
                e ->
                    new Choice(
                        e.getKey(),
                        Segments.name(e.getKey()),
                        e.getValue(),
                        address.has("segment", e.getKey())))
            .toList();
    return new Group("segment", "Part of the bone", choices);
  }

  private static List<Family> families(Map<String, Integer> counts, Address address) {
    Map<String, List<Outcome>> byFamily =
        Outcome.vocabulary().all().stream()
            .collect(
                Collectors.groupingBy(Outcome::family, LinkedHashMap::new, Collectors.toList()));
    List<Family> families = new ArrayList<>();
    byFamily.forEach(
        (name, outcomes) -> {
          List<Choice> choices = choices("outcome", outcomes, counts, address);
          if (!choices.isEmpty()) {
            families.add(new Family(name, choices));
          }
        });
    return families;
  }

  private static List<Band> bands(String path, Address address) {
    return BANDS.stream()
        .map(
            band -> {
              Address sized = address.without(PLACE).without("match", Filters.UNSIZED);
              Address banded = banded(sized, band);
              boolean chosen =
                  banded.first("from").equals(address.first("from"))
                      && banded.first("to").equals(address.first("to"));
              return new Band(bandLabel(band), banded.at(path), chosen);
            })
        .toList();
  }

  /** The address with the missing bone set to a band. */
  public static Address banded(Address address, double[] band) {
    Address open = address.without(List.of("from", "to"));
    Address from = band[0] == 0 ? open : open.with("from", whole(band[0]));
    return Double.isInfinite(band[1]) ? from : from.with("to", whole(band[1]));
  }

  /** A band in few words: "under 2", "2 to 4", "12 and more". */
  public static String bandLabel(double[] band) {
    if (band[0] == 0) {
      return "under " + whole(band[1]);
    }
    return Double.isInfinite(band[1])
        ? whole(band[0]) + " and more"
        : whole(band[0]) + " to " + whole(band[1]);
  }

  private static String whole(double centimetres) {
    return String.valueOf((long) centimetres);
  }

  private static List<On> on(String path, Address address, SearchRequest request) {
    Address start = address.without(PLACE);
    List<On> on = new ArrayList<>();
    if (!request.text().isEmpty()) {
      on.add(new On("“" + request.text() + "”", path, start.without(List.of("q"))));
    }
    each(on, path, start, "outcome", Filters.labels(Outcome.vocabulary()::find));
    request
        .defect()
        .ifPresent(
            range ->
                on.add(
                    new On(
                        "missing bone " + Defects.range(range) + matched(request),
                        path,
                        start.without(List.of("from", "to", "match")))));
    if (request.defectMatch() == SearchRequest.DefectMatch.NO_CENTRE) {
      on.add(new On("no mean or median of missing bone", path, start.without("match", "unsized")));
    }
    each(on, path, start, "method", Filters.labels(Method.vocabulary()::find));
    each(on, path, start, "bone", code -> Coded.parse(Bone.class, code).map(Bone::label));
    each(on, path, start, "segment", code -> Optional.of(Segments.name(code)));
    each(
        on,
        path,
        start,
        "infected",
        code -> Coded.parse(Answer.class, code).map(a -> "infected at the start: " + a.label()));
    each(on, path, start, "design", code -> Coded.parse(Design.class, code).map(Design::label));
    each(on, path, start, "year-from", year -> Optional.of("from " + year));
    each(on, path, start, "year-to", year -> Optional.of("up to " + year));
    request
        .followUpFrom()
        .ifPresent(
            months ->
                on.add(
                    new On(
                        FollowUps.atLeast(months),
                        path,
                        start.without(List.of(Filters.FOLLOW_UP_FROM)))));
    return on;
  }

  private static String matched(SearchRequest request) {
    return request.defectMatch() == SearchRequest.DefectMatch.CENTRE ? " by mean or median" : "";
  }

  private static void each(
      List<On> on,
      String path,
      Address address,
      String name,
      Function<String, Optional<String>> label) {
    for (String value : address.all(name)) {
      label
          .apply(value)
          .ifPresent(words -> on.add(new On(words, path, address.without(name, value))));
    }
  }

  /** What the box beside the missing bone stands for: what the address has, else by the middle. */
  public Choice match() {
    String asked = address.first("match");
    String value = asked.isEmpty() || asked.equals("overlap") ? "centre" : asked;
    String label =
        switch (value) {
          case Filters.BAND -> "Only where the mean or median lies in it, below its upper end";
          case Filters.UNSIZED -> "Only where the paper gives no mean or median";
          default -> "Only where the mean or median lies in it";
        };
    return new Choice(value, label, 0, value.equals(asked));
  }

  /** What is on, as one line. */
  public String summary() {
    return on.isEmpty() ? "none on" : on.stream().map(On::label).collect(Collectors.joining(", "));
  }
}
