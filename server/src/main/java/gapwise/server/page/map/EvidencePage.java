package gapwise.server.page.map;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.grid.EvidenceGrid;
import gapwise.curation.StudiesAt;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.search.StudySearch.Order;
import gapwise.sentence.Counted;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Remembered;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Supplier;

/** What the evidence base holds, at a glance, and where each kind of reader starts. */
public final class EvidencePage {
  private static final int NEWEST_IMPORTS = 5;
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("uuuu-MM-dd").withZone(ZoneOffset.UTC);

  private final Templates templates;
  private final Sites sites;
  private final StudySearch search;
  private final StudiesAt studies;
  private final Supplier<Glance> glance;

  public EvidencePage(Templates templates, Sites sites, StudySearch search, StudiesAt studies) {
    this.templates = templates;
    this.sites = sites;
    this.search = search;
    this.studies = studies;
    Remembered<SearchRequest, Glance> once = new Remembered<>(1, all -> count());
    this.glance = () -> once.of(SearchRequest.EVERYTHING);
  }

  /** What is counted once. */
  private record Glance(
      SearchAnswer totals, EvidenceMap map, YearBars years, List<EvidenceView.Added> added) {}

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.EVIDENCE, Right.SEE, this::show);
  }

  private void show(Context context) {
    templates.show(context, "map/EvidencePage", view(glance.get()));
  }

  private EvidenceView view(Glance now) {
    Site site = sites.of("Evidence at a glance", Place.FIRST);
    if (now.map().lines().isEmpty()) {
      return new EvidenceView.Empty(site);
    }
    SearchAnswer totals = now.totals();
    return new EvidenceView.Holding(
        site,
        new EvidenceView.Totals(
            Counted.grouped(totals.studies()),
            Counted.grouped(totals.arms()),
            Counted.grouped(totals.patients())),
        now.map(),
        now.years(),
        now.added());
  }

  private Glance count() {
    SearchAnswer totals = search.search(SearchRequest.EVERYTHING, Order.YEAR_DESCENDING, 0, 1);
    SearchAnswer oldest = search.search(SearchRequest.EVERYTHING, Order.YEAR_ASCENDING, 0, 1);
    EvidenceGrid grid = EvidenceGrid.of(search, SearchRequest.EVERYTHING, EvidenceMap.RANGES);
    return new Glance(
        totals,
        EvidenceMap.of(grid, List.copyOf(grid.rows().keySet()), new Address(Map.of())),
        YearBars.of(search, year(oldest), year(totals)),
        added());
  }

  private OptionalInt year(SearchAnswer answer) {
    return answer.hits().stream()
        .flatMap(hit -> studies.study(hit.studyId()).stream())
        .flatMapToInt(kept -> kept.study().citation().year().stream())
        .findFirst();
  }

  private List<EvidenceView.Added> added() {
    List<StudiesAt.KeptImport> imports = studies.imports();
    return imports.subList(Math.max(0, imports.size() - NEWEST_IMPORTS), imports.size()).stream()
        .sorted((a, b) -> Long.compare(b.stamp().change(), a.stamp().change()))
        .map(
            kept ->
                new EvidenceView.Added(
                    DAY.format(kept.stamp().when()),
                    kept.stamp().who(),
                    say(
                        "page.newest-import",
                        Map.of("studies", kept.record().saved(), "why", kept.stamp().why()))))
        .toList();
  }
}
