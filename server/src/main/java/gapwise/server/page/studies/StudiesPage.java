package gapwise.server.page.studies;

import gapwise.evidence.Outcome;
import gapwise.evidence.Study;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.ListColumn;
import gapwise.server.address.Orders;
import gapwise.server.address.PagePaths;
import gapwise.server.address.Paging;
import gapwise.server.address.TypedWords;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.Wider;
import gapwise.server.route.Routes;
import gapwise.wording.Counted;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;

/** Groups of patients found by words and filters, a line each. */
public final class StudiesPage {

  private final Templates templates;
  private final Sites sites;
  private final StudySearch search;
  private final ArmRows rows;
  private final StudiesExport export;

  public StudiesPage(
      Templates templates,
      Sites sites,
      StudySearch search,
      Function<Set<String>, Map<String, Study>> studies,
      ArmValues values,
      Clock clock) {
    this.templates = templates;
    this.sites = sites;
    this.search = search;
    PlainRows plain = new PlainRows(studies);
    this.rows = new ArmRows(new RememberedRows(plain)::of, new RememberedValues(values, studies));
    this.export = new StudiesExport(search, plain, values, clock);
  }

  /** An order of lines, or a column, as the page offers it. */
  public record Sorting(String code, String label, boolean chosen) {}

  /**
   * What the template shows.
   *
   * @param site the frame of the page
   * @param form the filters
   * @param outcome the one outcome that is asked for
   * @param found how much was found, in words
   * @param arms number of groups found
   * @param rows the groups of this page
   * @param paging where this page lies
   * @param sortings orders to choose from
   * @param columns columns to choose from
   * @param plain address of the page with nothing narrowed
   * @param aside joining words that were typed and say nothing alone; may be empty
   * @param didYouMean another spelling with its address
   * @param wider when nothing fits: what taking one filter off would leave, with its address
   * @param pool address of the pooled result of what was found
   */
  public record View(
      Site site,
      FilterForm form,
      Optional<Outcome> outcome,
      String found,
      int arms,
      List<ArmRow> rows,
      Paging paging,
      List<Sorting> sortings,
      List<Sorting> columns,
      String plain,
      String aside,
      Optional<FilterForm.On> didYouMean,
      List<FilterForm.On> wider,
      String pool) {
    public View {
      wider = List.copyOf(wider);
      rows = List.copyOf(rows);
      sortings = List.copyOf(sortings);
      columns = List.copyOf(columns);
    }

    /** The address of all that was found as a table of values. */
    public String csv() {
      return form.address().without(List.of("page")).at(StudiesExport.CSV);
    }

    /** The address of the records found as a workbook. */
    public String workbook() {
      return form.address().without(List.of("page")).at(StudiesExport.WORKBOOK);
    }
  }

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.STUDIES, this::show);
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

  private View view(Address address) {
    SearchRequest request = Filters.read(address);
    StudySearch.Order order = Orders.read(address);
    int page = Paging.read(address);
    SearchAnswer answer = answer(request, order, page);
    Paging paging = Paging.of(PagePaths.STUDIES, address, page, answer.arms());
    if (paging.page() != page) {
      answer = answer(request, order, paging.page());
    }
    Optional<Outcome> outcome = Filters.outcome(address);
    FilterForm form = FilterForm.of(PagePaths.STUDIES, address, request, answer);
    List<ListColumn> columns = ListColumn.read(address);
    return new View(
        sites.of("Studies", Site.Section.STUDIES),
        form,
        outcome,
        found(answer),
        answer.arms(),
        rows.of(answer.hits(), columns, new ArmRows.Question(outcome, request.defect())),
        paging,
        sortings(address, order),
        offered(columns),
        new Address(Map.of(ListColumn.NAME, address.all(ListColumn.NAME))).at(PagePaths.STUDIES),
        address.first(TypedWords.ASIDE),
        answer
            .didYouMean()
            .map(text -> new FilterForm.On(text, PagePaths.STUDIES, address.with("q", text))),
        answer.arms() == 0 ? Wider.of(search, answer, form) : List.of(),
        address
            .without(List.of("page", "order", ListColumn.NAME, TypedWords.ASIDE))
            .at(PagePaths.POOLED));
  }

  private SearchAnswer answer(SearchRequest request, StudySearch.Order order, int page) {
    return search.search(request, order, (page - 1) * Paging.LINES, Paging.LINES);
  }

  private static String found(SearchAnswer answer) {
    if (answer.arms() == 0) {
      return "No group of patients fits";
    }
    return Counted.of(answer.arms(), "group of patients", "groups of patients")
        + " in "
        + Counted.of(answer.studies(), "study", "studies")
        + ", "
        + Counted.of(answer.patients(), "patient", "patients");
  }

  private static List<Sorting> offered(List<ListColumn> chosen) {
    return Stream.of(ListColumn.values())
        .map(column -> new Sorting(column.code(), column.label(), chosen.contains(column)))
        .toList();
  }

  private static List<Sorting> sortings(Address address, StudySearch.Order order) {
    return Orders.OFFERED.entrySet().stream()
        .map(
            offered ->
                new Sorting(
                    Orders.code(offered.getKey()), offered.getValue(), offered.getKey() == order))
        .toList();
  }
}
