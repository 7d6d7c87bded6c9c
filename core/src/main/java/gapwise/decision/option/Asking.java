package gapwise.decision.option;

import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;

/**
 * Groups that some methods are asked about, counted once.
 *
 * @param among the groups
 * @param groupsByOutcome groups that report an outcome, by its code
 * @param studiesByMethod studies of a method that are not retracted, by its code
 */
record Asking(
    SearchRequest among,
    Map<String, Integer> groupsByOutcome,
    Map<String, Integer> studiesByMethod) {

  /**
   * @param methods codes of the methods, at least one
   */
  static Asking of(StudySearch search, SearchRequest all, Set<String> methods) {
    // Of all methods there is nothing to narrow, and no amputation has a missing length.
    SearchRequest among = all.withMethods(methods);
    SearchAnswer found = find(search, among.withOutcomes(Set.of()));
    return new Asking(
        among, counts(found, "outcomes", SearchAnswer.Count::arms), studies(search, among));
  }

  /** Studies by method; a retracted one counts nowhere. */
  private static Map<String, Integer> studies(StudySearch search, SearchRequest among) {
    Map<String, Set<String>> studies = new HashMap<>();
    search.eachArm(
        among.withOutcomes(Set.of()),
        arm -> {
          if (!arm.apart().equals(Optional.of(ReportKind.RETRACTION.label()))) {
            studies.computeIfAbsent(arm.method(), method -> new HashSet<>()).add(arm.studyId());
          }
        });
    Map<String, Integer> counts = new HashMap<>();
    studies.forEach((method, ids) -> counts.put(method, ids.size()));
    return counts;
  }

  private static SearchAnswer find(StudySearch search, SearchRequest request) {
    return search.search(request, StudySearch.Order.YEAR_DESCENDING, 0, 0);
  }

  private static Map<String, Integer> counts(
      SearchAnswer found, String filter, ToIntFunction<SearchAnswer.Count> number) {
    Map<String, Integer> counts = new HashMap<>();
    found.facets().stream()
        .filter(facet -> facet.filter().equals(filter))
        .flatMap(facet -> facet.counts().stream())
        .forEach(count -> counts.put(count.code(), number.applyAsInt(count)));
    return counts;
  }

  /** Studies of a method. */
  int studies(Method method) {
    return among.methods().contains(method.code())
        ? studiesByMethod.getOrDefault(method.code(), 0)
        : 0;
  }

  /** Groups that report an outcome. */
  int groups(Outcome outcome) {
    return groupsByOutcome.getOrDefault(outcome.code(), 0);
  }

  /** Methods of which some group reports an outcome, whether its number can be used or not. */
  Set<Method> reporting(StudySearch search, Outcome outcome) {
    SearchAnswer found = find(search, among.withOutcomes(Set.of(outcome.code())));
    return counts(found, "methods", SearchAnswer.Count::arms).keySet().stream()
        .filter(among.methods()::contains)
        .flatMap(code -> Method.vocabulary().find(code).stream())
        .collect(Collectors.toSet());
  }
}
