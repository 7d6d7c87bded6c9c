package gapwise.server.page.result;

import gapwise.search.SearchAnswer;
import gapwise.search.StudySearch;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.PagePaths;
import gapwise.server.address.TypedWords;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Comparator;
import java.util.List;

/**
 * Leads from a question typed in plain words to its pooled result. Where the words name no outcome,
 * it is union as most of the groups report it: the page of the result says which, and offers the
 * others.
 */
public final class TypedQuestion {
  private static final List<String> UNION =
      List.of("primary-union", "union-without-further-grafting", "union", "final-union");

  private final StudySearch search;

  public TypedQuestion(StudySearch search) {
    this.search = search;
  }

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.ASK, this::lead);
  }

  private void lead(Context context) {
    Address words =
        TypedWords.understood(new Address(context.queryParamMap()))
            .without(List.of(TypedWords.ASIDE));
    Address question = words.all("outcome").isEmpty() ? words.with("outcome", union(words)) : words;
    context.redirect(question.at(PagePaths.POOLED), HttpStatus.SEE_OTHER);
  }

  /** The way of counting union that most groups report; empty where none does. */
  private String union(Address words) {
    return search
        .search(Filters.read(words), StudySearch.Order.YEAR_DESCENDING, 0, 0)
        .facets()
        .stream()
        .filter(facet -> facet.filter().equals("outcomes"))
        .flatMap(facet -> facet.counts().stream())
        .filter(count -> UNION.contains(count.code()))
        .max(Comparator.comparingInt(SearchAnswer.Count::arms))
        .map(SearchAnswer.Count::code)
        .orElse("");
  }
}
