package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.OutcomeFamily;
import gapwise.evidence.vocabulary.Risk;
import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.page.part.FilterForm.On;
import gapwise.wording.Defects;
import gapwise.wording.FollowUps;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;

/** What narrows a list now, each with the address without it. */
public final class Narrowing {
  private final String path;
  private final Address address;
  private final List<On> on = new ArrayList<>();

  private Narrowing(String path, Address address) {
    this.path = path;
    this.address = address;
  }

  /**
   * Everything that narrows, in the order of the form.
   *
   * @param path of the page
   * @param address at its first lines
   * @param request what the address asks for
   */
  public static List<On> of(String path, Address address, SearchRequest request) {
    Narrowing narrowing = new Narrowing(path, address);
    narrowing.add(request);
    return narrowing.on;
  }

  private void add(SearchRequest request) {
    if (!request.text().isEmpty()) {
      add(say("page.searched-for", Map.of("words", request.text())), address.without(List.of("q")));
    }
    addOutcomes();
    request
        .defect()
        .ifPresent(
            range ->
                add(
                    say(
                        request.defectMatch() == DefectMatch.CENTRE
                            ? "page.bone-by-middle"
                            : "page.bone",
                        Map.of("range", Defects.range(range))),
                    address.without(List.of("from", "to", "match"))));
    switch (request.defectMatch()) {
      case OVERLAP, CENTRE -> {}
      case NO_CENTRE -> addMatch("page.no-middle-of-bone", Filters.UNSIZED);
      case ONE_SIDED -> addMatch("page.one-end-of-bone", Filters.ONE_SIDED);
      case UNKNOWN -> addMatch("page.unknown-bone", Filters.UNKNOWN);
    }
    List.of("method", "bone", "segment", "infected", "design").forEach(this::addEach);
    addRisks(request);
    addEach(Filters.DETAIL);
    addYears("year-from", year -> say("page.years-from", Map.of("year", year)));
    addYears("year-to", year -> say("page.years-to", Map.of("year", year)));
    request
        .followUpFrom()
        .ifPresent(
            months ->
                add(FollowUps.atLeast(months), address.without(List.of(Filters.FOLLOW_UP_FROM))));
  }

  /** Every outcome of a family, as typed words ask for it, is one thing to take off. */
  private void addOutcomes() {
    List<OutcomeFamily> whole = OutcomeFamily.whole(address.all("outcome"));
    Set<String> told = new HashSet<>();
    for (OutcomeFamily family : whole) {
      told.addAll(family.codes());
      Address rest = address;
      for (String code : family.codes()) {
        rest = rest.without("outcome", code);
      }
      add(OutcomeChoice.any(family), rest);
    }
    addEach("outcome", told);
  }

  /** All but serious and critical is one thing to take off, as it is one to ask for. */
  private void addRisks(SearchRequest request) {
    if (request.risks().equals(Risk.neitherSeriousNorCritical())) {
      add(say("page.not-at-high-risk"), address.without(List.of(Filters.RISK)));
    } else {
      addEach(Filters.RISK);
    }
  }

  private void addMatch(String words, String match) {
    add(say(words), address.without("match", match));
  }

  private void addEach(String filter) {
    addEach(filter, Set.of());
  }

  private void addEach(String filter, Set<String> told) {
    for (String value : address.all(filter).stream().filter(one -> !told.contains(one)).toList()) {
      FilterWords.of(filter, value).ifPresent(words -> add(words, address.without(filter, value)));
    }
  }

  private void addYears(String filter, UnaryOperator<String> words) {
    address.all(filter).forEach(year -> add(words.apply(year), address.without(filter, year)));
  }

  private void add(String words, Address without) {
    on.add(new On(words, path, without));
  }
}
