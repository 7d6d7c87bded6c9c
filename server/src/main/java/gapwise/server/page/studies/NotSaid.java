package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.search.LengthNotSaid;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.PagePaths;
import gapwise.server.page.part.FilterForm;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The groups that stand apart from a list by length: they pass all other filters, and do not say
 * whether they have the missing bone asked for.
 */
final class NotSaid {
  private NotSaid() {}

  /** Such groups in words, each kind with the address that lists it; none where none is. */
  static List<FilterForm.On> of(
      StudySearch search, SearchRequest request, SearchAnswer answer, Address address) {
    LengthNotSaid counted = search.lengthNotSaid(request, answer);
    List<FilterForm.On> apart = new ArrayList<>();
    if (counted.oneEnd() > 0) {
      apart.add(link("studies.apart-one-end", counted.oneEnd(), address, Filters.ONE_SIDED));
    }
    if (counted.unknown() > 0) {
      apart.add(link("studies.apart-unknown", counted.unknown(), address, Filters.UNKNOWN));
    }
    return apart;
  }

  private static FilterForm.On link(String words, int groups, Address address, String match) {
    Address listed = address.without(List.of("page")).with("match", match);
    return new FilterForm.On(say(words, Map.of("groups", groups)), PagePaths.STUDIES, listed);
  }
}
