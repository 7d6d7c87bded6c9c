package gapwise.server.page;

import gapwise.answer.EvidenceGrid;
import gapwise.answer.Tally;
import gapwise.curation.EvidenceBase;
import gapwise.evidence.Method;
import gapwise.evidence.Outcome;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.search.StudySearch.Order;
import gapwise.wording.Counted;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** What the evidence base holds, at a glance, and where each kind of reader starts. */
public final class EvidencePage {
  private static final int NEWEST_IMPORTS = 5;
  private static final EvidenceMap.Cell NO_PLACE =
      new EvidenceMap.Cell(Tally.NOTHING, StudiesPage.PATH, 0, List.of());
  private static final List<String> UNION =
      List.of("primary-union", "union-without-further-grafting", "union", "final-union");
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("uuuu-MM-dd").withZone(ZoneOffset.UTC);

  private final Templates templates;
  private final Sites sites;
  private final StudySearch search;
  private final EvidenceBase base;
  private volatile Glance glance = Glance.NONE;

  public EvidencePage(Templates templates, Sites sites, StudySearch search, EvidenceBase base) {
    this.templates = templates;
    this.sites = sites;
    this.search = search;
    this.base = base;
  }

  /** What was last counted, kept until the evidence base changes. */
  private record Glance(
      long change, SearchAnswer totals, EvidenceMap map, YearBars years, List<Added> added) {
    static final Glance NONE =
        new Glance(
            -1,
            new SearchAnswer(0, 0, 0, List.of(), List.of(), Optional.empty(), Optional.empty()),
            new EvidenceMap(
                List.of(), List.of(), new EvidenceMap.Places(List.of(), NO_PLACE, NO_PLACE)),
            new YearBars(List.of(), 0),
            List.of());
  }

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
  public void addTo(RoutesConfig routes) {
    routes.get("/", this::show);
  }

  private void show(Context context) {
    Glance now = glance();
    templates.show(
        context,
        "EvidencePage",
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

  private Glance glance() {
    long change = search.shownChange();
    Glance known = glance;
    if (known.change() == change) {
      return known;
    }
    SearchAnswer totals = search.search(SearchRequest.EVERYTHING, Order.YEAR_DESCENDING, 0, 1);
    SearchAnswer oldest = search.search(SearchRequest.EVERYTHING, Order.YEAR_ASCENDING, 0, 1);
    EvidenceGrid grid = EvidenceGrid.of(search, SearchRequest.EVERYTHING, EvidenceMap.RANGES);
    Glance counted =
        new Glance(
            change,
            totals,
            EvidenceMap.of(grid, List.copyOf(grid.rows().keySet()), new Address(Map.of())),
            YearBars.of(search, year(oldest), year(totals)),
            added());
    glance = counted;
    return counted;
  }

  private OptionalInt year(SearchAnswer answer) {
    return answer.hits().stream()
        .flatMap(hit -> base.study(hit.studyId()).stream())
        .flatMapToInt(kept -> kept.study().citation().year().stream())
        .findFirst();
  }

  private List<Added> added() {
    List<EvidenceBase.KeptImport> imports = base.imports();
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
