package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
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
  static List<FilterForm.On> of(StudySearch search, SearchRequest request, Address address) {
    List<FilterForm.On> apart = new ArrayList<>();
    request
        .lengthsOfPatients()
        .ifPresent(
            range -> {
              int oneEnd = search.count(request.withDefect(range, DefectMatch.ONE_SIDED));
              int unknown = search.count(request.withDefect(range, DefectMatch.UNKNOWN));
              if (oneEnd > 0) {
                apart.add(link("studies.apart-one-end", oneEnd, address, Filters.ONE_SIDED));
              }
              if (unknown > 0) {
                apart.add(link("studies.apart-unknown", unknown, address, Filters.UNKNOWN));
              }
            });
    return apart;
  }

  private static FilterForm.On link(String words, int groups, Address address, String match) {
    Address listed = address.without(List.of("page")).with("match", match);
    return new FilterForm.On(say(words, Map.of("groups", groups)), PagePaths.STUDIES, listed);
  }
}
