package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Study;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.ListColumn;
import gapwise.server.address.Orders;
import gapwise.server.address.PagePaths;
import gapwise.server.address.Paging;
import gapwise.server.address.TypedWords;
import gapwise.server.home.References;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.Wider;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;

/** Groups of patients found by words and filters, a line each. */
public final class StudiesPage {

  private final Templates templates;
  private final Sites sites;
  private final StudySearch search;
  private final ArmRows rows;
  private final References references;
  private final StudiesExport export;

  public StudiesPage(
      Templates templates,
      Sites sites,
      StudySearch search,
      Function<Set<String>, Map<String, Study>> studies,
      ArmValues values,
      References references,
      Clock clock) {
    this.templates = templates;
    this.sites = sites;
    this.search = search;
    this.references = references;
    PlainRows plain = new PlainRows(studies);
    this.rows =
        new ArmRows(
            new RememberedRows(plain)::of, new RememberedValues(values, studies), ArmValue::brief);
    this.export = new StudiesExport(search, plain, values, clock);
  }

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.STUDIES, Right.SEE, this::show);
    export.addTo(routes);
  }

  private void show(Context context) {
    Address typed = new Address(context.queryParamMap());
    Address understood = TypedWords.understood(typed);
    Address address = ListColumn.tidy(understood);
    boolean part = context.header("HX-Request") != null;
    if (!understood.equals(typed)) {
      // A new page rather than a part, since boxes all over the form change.
      if (part) {
        context.header("HX-Redirect", address.at(PagePaths.STUDIES));
      } else {
        context.redirect(address.at(PagePaths.STUDIES), HttpStatus.SEE_OTHER);
      }
      return;
    }
    if (part && !address.at(PagePaths.STUDIES).equals(raw(context))) {
      context.header("HX-Push-Url", address.at(PagePaths.STUDIES));
    }
    templates.show(context, "studies/StudiesPage", view(address));
  }

  private static String raw(Context context) {
    String query = context.queryString();
    return query == null ? context.path() : context.path() + "?" + query;
  }

  private StudiesView view(Address address) {
    SearchRequest request = Filters.read(address);
    StudySearch.Order order = Orders.read(address);
    int page = Paging.read(address);
    SearchAnswer answer = answer(request, order, page);
    Paging paging = Paging.of(PagePaths.STUDIES, address, page, answer.arms());
    if (paging.page() != page) {
      answer = answer(request, order, paging.page());
    }
    FilterForm form = FilterForm.of(PagePaths.STUDIES, address, request, answer);
    List<ListColumn> columns = ListColumn.read(address);
    List<ArmRow> lines = rows.of(answer.hits(), columns, ArmRows.Question.of(address, request));
    return new StudiesView(
        sites.of("Studies", Place.STUDIES, address),
        form,
        found(answer),
        offered(columns),
        new Address(Map.of(ListColumn.NAME, address.all(ListColumn.NAME))).at(PagePaths.STUDIES),
        address.first(TypedWords.ASIDE),
        NotSaid.of(search, request, answer, address),
        answer
            .didYouMean()
            .map(text -> new FilterForm.On(text, PagePaths.STUDIES, address.with("q", text))),
        lines.isEmpty()
            ? new StudiesView.Nothing(Wider.of(search, answer, form))
            : groups(address, order, answer.arms(), lines, paging));
  }

  private StudiesView.Groups groups(
      Address address, StudySearch.Order order, int arms, List<ArmRow> lines, Paging paging) {
    Address all = address.without(List.of("page"));
    return new StudiesView.Groups(
        arms,
        lines,
        Notices.flags(references),
        paging,
        sortings(order),
        all.without(List.of("order", ListColumn.NAME, TypedWords.ASIDE)).at(PagePaths.POOLED),
        all.at(StudiesExport.CSV),
        all.at(StudiesExport.WORKBOOK));
  }

  private SearchAnswer answer(SearchRequest request, StudySearch.Order order, int page) {
    return search.search(request, order, (page - 1) * Paging.LINES, Paging.LINES);
  }

  private static String found(SearchAnswer answer) {
    if (answer.arms() == 0) {
      return say("studies.found-none");
    }
    return say(
        "studies.found",
        Map.of(
            "groups", answer.arms(), "studies", answer.studies(), "patients", answer.patients()));
  }

  private static List<StudiesView.Choice> offered(List<ListColumn> chosen) {
    return Stream.of(ListColumn.values())
        .map(
            column ->
                new StudiesView.Choice(column.code(), column.label(), chosen.contains(column)))
        .toList();
  }

  private static List<StudiesView.Choice> sortings(StudySearch.Order order) {
    return Orders.OFFERED.entrySet().stream()
        .map(
            offered ->
                new StudiesView.Choice(
                    Orders.code(offered.getKey()), offered.getValue(), offered.getKey() == order))
        .toList();
  }
}
