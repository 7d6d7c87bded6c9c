package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.search.SearchAnswer;
import gapwise.search.StudySearch;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** When nothing fits all filters: what taking one of them off would leave. */
public final class Wider {
  /** What the filters with counts are called in an answer, and then in an address. */
  private static final Map<String, String> NAMES =
      Map.of(
          "methods", "method",
          "bones", "bone",
          "segments", "segment",
          "infected", "infected",
          "designs", "design",
          "risks", Filters.RISK,
          "outcomes", "outcome");

  private final StudySearch search;
  private final SearchAnswer nothing;
  private final Address address;

  private Wider(StudySearch search, SearchAnswer nothing, Address address) {
    this.search = search;
    this.nothing = nothing;
    this.address = address;
  }

  private record Left(FilterForm.On one, int arms) {
    FilterForm.On told() {
      String words = say("page.without-filter", Map.of("filter", one.label(), "groups", arms));
      return new FilterForm.On(words, one.path(), one.rest());
    }
  }

  /**
   * Each filter whose absence would leave anything, with how much; most first.
   *
   * @param nothing the answer without a hit
   */
  public static List<FilterForm.On> of(StudySearch search, SearchAnswer nothing, FilterForm form) {
    Wider wider = new Wider(search, nothing, form.address());
    return form.on().stream()
        .map(one -> new Left(one, wider.without(one.rest())))
        .filter(left -> left.arms() > 0)
        .sorted(Comparator.comparingInt(Left::arms).reversed())
        .map(Left::told)
        .toList();
  }

  private int without(Address rest) {
    for (SearchAnswer.Facet facet : nothing.facets()) {
      String name = NAMES.getOrDefault(facet.filter(), facet.filter());
      int before = address.all(name).size();
      int after = rest.all(name).size();
      if (after < before) {
        // One of several alternatives less leaves no more than there was.
        return after == 0 ? facet.without() : 0;
      }
    }
    return search.count(Filters.read(rest));
  }
}
