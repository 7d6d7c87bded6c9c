package gapwise.server.page.map;

import gapwise.answer.EvidenceGrid;
import gapwise.curation.StudiesAt;
import gapwise.evidence.Method;
import gapwise.evidence.Outcome;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.search.StudySearch.Order;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Remembered;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import gapwise.wording.Counted;
import io.javalin.http.Context;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Supplier;

/** What the evidence base holds, at a glance, and where each kind of reader starts. */
public final class EvidencePage {
  private static final int NEWEST_IMPORTS = 5;
  private static final List<String> UNION =
      List.of("primary-union", "union-without-further-grafting", "union", "final-union");
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
  private record Glance(SearchAnswer totals, EvidenceMap map, YearBars years, List<Added> added) {}

  /** One import. */
  public record Added(String day, String who, String what) {}

  /**
   * What the template shows.
   *
   * @param site the frame of the page
   * @param studies number of studies
   * @param arms number of groups of patients
   * @param patients number of patients
   * @param map groups by method and size
   * @param years groups by year
   * @param added newest imports
   * @param methods methods to ask about, those of which there is any group
   * @param outcomes outcomes to ask about
   * @param start code of the outcome that the question starts with
   */
  public record View(
      Site site,
      String studies,
      String arms,
      String patients,
      EvidenceMap map,
      YearBars years,
      List<Added> added,
      List<Method> methods,
      List<Outcome> outcomes,
      String start) {
    /** Whether an outcome is the one that the question starts with. */
    public boolean startsWith(Outcome outcome) {
      return outcome.code().equals(start);
    }

    /** Whether there is nothing yet. */
    public boolean isEmpty() {
      return map.lines().isEmpty();
    }
  }

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.EVIDENCE, this::show);
  }

  private void show(Context context) {
    Glance now = glance.get();
    templates.show(
        context,
        "map/EvidencePage",
        new View(
            sites.of("Evidence at a glance", Site.Section.EVIDENCE),
            Counted.grouped(now.totals().studies()),
            Counted.grouped(now.totals().arms()),
            Counted.grouped(now.totals().patients()),
            now.map(),
            now.years(),
            now.added(),
            now.map().lines().stream().map(EvidenceMap.Line::method).toList(),
            reported(now.totals()),
            start(now.totals())));
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

  private List<Added> added() {
    List<StudiesAt.KeptImport> imports = studies.imports();
    return imports.subList(Math.max(0, imports.size() - NEWEST_IMPORTS), imports.size()).stream()
        .sorted((a, b) -> Long.compare(b.stamp().change(), a.stamp().change()))
        .map(
            kept ->
                new Added(
                    DAY.format(kept.stamp().when()),
                    kept.stamp().who(),
                    kept.record().saved()
                        + (kept.record().saved() == 1 ? " study" : " studies")
                        + " added or changed: "
                        + kept.stamp().why()))
        .toList();
  }

  private static List<Outcome> reported(SearchAnswer totals) {
    List<String> codes =
        totals.facets().stream()
            .filter(facet -> facet.filter().equals("outcomes"))
            .flatMap(facet -> facet.counts().stream())
            .map(SearchAnswer.Count::code)
            .toList();
    return Outcome.vocabulary().all().stream()
        .filter(outcome -> codes.contains(outcome.code()))
        .toList();
  }

  /** The way of counting union that most groups report. */
  private static String start(SearchAnswer totals) {
    return totals.facets().stream()
        .filter(facet -> facet.filter().equals("outcomes"))
        .flatMap(facet -> facet.counts().stream())
        .filter(count -> UNION.contains(count.code()))
        .max(Comparator.comparingInt(SearchAnswer.Count::arms))
        .map(SearchAnswer.Count::code)
        .orElse("");
  }
}
