package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.MethodDetail;
import gapwise.evidence.vocabulary.OutcomeFamily;
import gapwise.evidence.vocabulary.Risk;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.search.LooseWords;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.wording.Segments;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * The filters beside a list, with the number of groups that each choice would leave.
 *
 * @param address the address that they stand in
 * @param bands bands of missing length to take at one click
 * @param groups filters of several choices
 * @param families outcomes by family
 * @param details words of details of methods, by detail
 * @param on what narrows the list now, each with the address without it
 * @param loose said where no group has all words, so that any of them was enough
 */
public record FilterForm(
    Address address,
    List<Band> bands,
    List<Group> groups,
    List<Family> families,
    List<Group> details,
    List<On> on,
    Optional<String> loose) {

  /** Words of details by the heading of their detail, in the order of the vocabulary. */
  private static final Map<String, List<MethodDetail>> DETAILS =
      MethodDetail.all().stream()
          .collect(
              Collectors.groupingBy(
                  one -> one.kind().heading(), LinkedHashMap::new, Collectors.toList()));

  /** Names that start a list anew when a filter changes. */
  private static final List<String> PLACE = List.of("page");

  /** One band of missing length. */
  public record Band(String label, String href, boolean chosen) {}

  /** A filter of several choices. */
  public record Group(String name, String legend, List<Choice> choices) {}

  /**
   * One choice.
   *
   * @param count groups of patients that it would leave
   * @param studies the studies that they belong to
   */
  public record Choice(String value, String label, int count, int studies, boolean chosen) {}

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
    Map<String, Map<String, SearchAnswer.Count>> counts = counts(answer);
    List<Group> groups = new ArrayList<>();
    groups.add(
        group("method", "Method", Method.vocabulary().all(), of("methods", counts), address));
    groups.add(bones(counts, address));
    groups.add(segments(of("segments", counts), address));
    groups.add(infected(counts, address));
    groups.add(group("design", "Design", List.of(Design.values()), of("designs", counts), address));
    groups.add(
        group(
            Filters.RISK,
            "Risk of bias, as judged",
            List.of(Risk.values()),
            of("risks", counts),
            address));
    groups.removeIf(group -> group.choices().isEmpty());
    return new FilterForm(
        address,
        UsualBands.of(path, address.without(PLACE)),
        groups,
        families(of("outcomes", counts), address),
        details(of("details", counts), address),
        Narrowing.of(path, address.without(PLACE), request),
        answer.looseWords().map(LooseWords::sentence));
  }

  /** The filters above a map: outcome, bone and infection, and what narrows it now. */
  public static FilterForm ofMap(
      String path, Address address, SearchRequest request, SearchAnswer answer) {
    Map<String, Map<String, SearchAnswer.Count>> counts = counts(answer);
    List<Group> groups = new ArrayList<>();
    groups.add(bones(counts, address));
    groups.add(infected(counts, address));
    groups.removeIf(group -> group.choices().isEmpty());
    return new FilterForm(
        address,
        List.of(),
        groups,
        families(of("outcomes", counts), address),
        List.of(),
        Narrowing.of(path, address.without(PLACE), request),
        answer.looseWords().map(LooseWords::sentence));
  }

  private static Group bones(Map<String, Map<String, SearchAnswer.Count>> counts, Address address) {
    return group("bone", "Bone", List.of(Bone.values()), of("bones", counts), address);
  }

  private static Group infected(
      Map<String, Map<String, SearchAnswer.Count>> counts, Address address) {
    return group(
        "infected",
        "Infected at the start",
        List.of(YesOrNo.values()),
        of("infected", counts),
        address);
  }

  private static Map<String, Map<String, SearchAnswer.Count>> counts(SearchAnswer answer) {
    Map<String, Map<String, SearchAnswer.Count>> counts = new LinkedHashMap<>();
    for (String name :
        List.of(
            "methods",
            "bones",
            "segments",
            "infected",
            "designs",
            "risks",
            "outcomes",
            "details")) {
      counts.put(name, new LinkedHashMap<>());
    }
    for (SearchAnswer.Facet facet : answer.facets()) {
      Map<String, SearchAnswer.Count> ofFilter =
          counts.computeIfAbsent(facet.filter(), name -> new LinkedHashMap<>());
      facet.counts().forEach(count -> ofFilter.put(count.code(), count));
    }
    return counts;
  }

  /** What each code of a filter has; none if it was not counted. */
  private static Map<String, SearchAnswer.Count> of(
      String filter, Map<String, Map<String, SearchAnswer.Count>> counts) {
    return counts.getOrDefault(filter, Map.of());
  }

  private static Group group(
      String name,
      String legend,
      List<? extends Coded> vocabulary,
      Map<String, SearchAnswer.Count> counts,
      Address address) {
    return new Group(name, legend, choices(name, vocabulary, counts, address));
  }

  private static List<Choice> choices(
      String name,
      List<? extends Coded> vocabulary,
      Map<String, SearchAnswer.Count> counts,
      Address address) {
    List<String> chosen = address.all(name);
    List<Choice> choices = new ArrayList<>();
    for (Coded word : vocabulary) {
      String code = word.code();
      if (counts.containsKey(code) || chosen.contains(code)) {
        choices.add(choice(name, code, label(word), counts, address));
      }
    }
    return choices;
  }

  private static Choice choice(
      String name,
      String code,
      String label,
      Map<String, SearchAnswer.Count> counts,
      Address address) {
    SearchAnswer.Count count = counts.getOrDefault(code, new SearchAnswer.Count(code, 0, 0));
    return new Choice(code, label, count.arms(), count.studies(), address.has(name, code));
  }

  private static String label(Coded word) {
    if (word instanceof Method method) {
      return method.shortLabel();
    }
    return word instanceof MethodDetail detail ? detail.word() : word.label();
  }

  private static Group segments(Map<String, SearchAnswer.Count> counts, Address address) {
    Set<String> shown = new TreeSet<>(counts.keySet());
    shown.addAll(address.all("segment"));
    List<Choice> choices =
        shown.stream()
            .map(code -> choice("segment", code, Segments.name(code), counts, address))
            .toList();
    return new Group("segment", "Part of the bone", choices);
  }

  private static List<Group> details(Map<String, SearchAnswer.Count> counts, Address address) {
    return DETAILS.entrySet().stream()
        .map(
            kind ->
                new Group(
                    Filters.DETAIL,
                    kind.getKey(),
                    choices(Filters.DETAIL, kind.getValue(), counts, address)))
        .filter(group -> !group.choices().isEmpty())
        .toList();
  }

  private static List<Family> families(Map<String, SearchAnswer.Count> counts, Address address) {
    return OutcomeFamily.all().stream()
        .map(
            family ->
                new Family(family.name(), choices("outcome", family.outcomes(), counts, address)))
        .filter(family -> !family.outcomes().isEmpty())
        .toList();
  }

  /** The families of the outcomes that are taken; empty where none is. */
  public List<Family> taken() {
    return families.stream()
        .filter(family -> family.outcomes().stream().anyMatch(Choice::chosen))
        .toList();
  }

  /** Whether several outcomes are taken, any of which will do. */
  public boolean severalOutcomes() {
    return address.all("outcome").size() > 1;
  }

  /** What the box beside the missing bone stands for: what the address has, else by the middle. */
  public Choice match() {
    String asked = address.first("match");
    String value = asked.isEmpty() || asked.equals("overlap") ? "centre" : asked;
    String label =
        switch (value) {
          case Filters.BAND -> say("page.only-middle-in-band");
          case Filters.UNSIZED -> say("page.only-without-middle");
          case Filters.ONE_SIDED -> say("page.only-one-end");
          case Filters.UNKNOWN -> say("page.only-unknown");
          default -> say("page.only-middle-inside");
        };
    return new Choice(value, label, 0, 0, value.equals(asked));
  }

  /** What is on, as one line. */
  public String summary() {
    return on.isEmpty()
        ? say("page.no-filter-on")
        : on.stream().map(On::label).collect(Collectors.joining(", "));
  }
}
