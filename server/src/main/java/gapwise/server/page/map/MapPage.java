package gapwise.server.page.map;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Edition;
import gapwise.answer.grid.EmptyPlace;
import gapwise.answer.grid.EvidenceGrid;
import gapwise.answer.grid.HeadToHead;
import gapwise.answer.grid.InfectionGrids;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.figure.network.NetworkGraph;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.FigureAddress;
import gapwise.server.address.Filters;
import gapwise.server.address.PagePaths;
import gapwise.server.download.Attachment;
import gapwise.server.download.FigureDownloads;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.FilterForm;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** Where there is evidence and where there is none: methods by size, and methods by method. */
public final class MapPage {
  static final String COMPARISONS = "comparisons";

  /** Where the files of the other view are. */
  static final String COMPARISONS_FILES = PagePaths.MAP + "/comparisons";

  /** What the map has as its own axis, or says nothing of it. */
  private static final List<String> NOT_FILTERS = List.of("from", "to", "match", "page", "order");

  private static final int GAPS_SHOWN = 10;
  private static final int GAPS_OF_STRATUM = 5;

  private final Templates templates;
  private final Sites sites;
  private final MapCounts counts;
  private final ComparisonsView.Maker comparisons;

  public MapPage(
      Templates templates,
      Sites sites,
      StudySearch search,
      Function<String, Optional<Study>> studies,
      Edition edition) {
    this.templates = templates;
    this.sites = sites;
    this.counts = new MapCounts(search);
    this.comparisons = new ComparisonsView.Maker(counts, studies, edition);
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.MAP, Right.SEE, this::show);
    routes.get(PagePaths.MAP + ".csv", Right.SEE, this::csv);
    FigureDownloads.add(routes, COMPARISONS_FILES, this::network);
  }

  private void show(Context context) {
    Address asked = new Address(context.queryParamMap());
    Address address = filters(asked);
    if (COMPARISONS.equals(context.queryParam("view"))) {
      SearchRequest request = Filters.read(address);
      MapCounts.Counts<HeadToHead> found = counts.comparisons(request);
      Site site = sites.of("Which methods were compared", Place.COMPARISONS, asked);
      FilterForm form = FilterForm.ofMap(PagePaths.MAP, address, request, found.answer());
      templates.show(context, "map/ComparisonsPage", comparisons.view(site, form, found));
      return;
    }
    templates.show(context, "map/MapPage", view(address, asked));
  }

  private void csv(Context context) {
    Address address = filters(new Address(context.queryParamMap()));
    EvidenceGrid grid = counts.grids(Filters.read(address)).of().all();
    List<Method> methods = methods(address, counts.everything());
    Attachment.send(
        context, "text/csv; charset=utf-8", "evidence-map.csv", MapCsv.of(grid, methods));
  }

  private NetworkGraph network(Context context) {
    SearchRequest request = Filters.read(filters(new Address(context.queryParamMap())));
    boolean invented = sites.isInvented();
    return comparisons
        .graph(counts.comparisons(request), invented)
        .orElseThrow(
            () ->
                new WrongInputException(
                    List.of(
                        new Problem(
                            "",
                            "nothing-compared",
                            "No study here holds two methods with these filters; widen them."))));
  }

  private static Address filters(Address asked) {
    return asked.without(NOT_FILTERS).without(List.of("view")).without(FigureAddress.NAMES);
  }

  private MapView view(Address address, Address asked) {
    SearchRequest request = Filters.read(address);
    MapCounts.Counts<InfectionGrids> found = counts.grids(request);
    EvidenceGrid everything = counts.everything();
    EvidenceGrid grid = found.of().all();
    List<Method> methods = methods(address, everything);
    List<EmptyPlace> empty = EmptyPlace.of(grid, everything, methods);
    Site site = sites.of("Where there is evidence, and where there is none", Place.SIZES, asked);
    FilterForm form = FilterForm.ofMap(PagePaths.MAP, address, request, found.answer());
    EvidenceMap map = EvidenceMap.of(grid, methods, address);
    if (map.lines().isEmpty()) {
      return new MapView.Empty(site, form);
    }
    MapWords words = words(address);
    return new MapView.Counted(
        site,
        form,
        Stream.concat(sentences(grid, methods, empty, words).stream(), found.apart().stream())
            .toList(),
        map,
        gaps(empty, words, address, GAPS_SHOWN),
        strata(address, found.of(), everything, empty),
        untold(address, methods));
  }

  /** Methods of which anything at all is recorded, or those asked for. */
  private static List<Method> methods(Address address, EvidenceGrid everything) {
    List<String> asked = address.all("method");
    if (!asked.isEmpty()) {
      return Method.vocabulary().all().stream().filter(m -> asked.contains(m.code())).toList();
    }
    return List.copyOf(everything.rows().keySet());
  }

  private static List<String> untold(Address address, List<Method> told) {
    if (!address.all("method").isEmpty()) {
      return List.of();
    }
    return Method.vocabulary().all().stream()
        .filter(method -> !told.contains(method))
        .map(Method::shortLabel)
        .toList();
  }

  private static MapWords words(Address address) {
    Optional<Outcome> outcome = Filters.outcome(address);
    List<YesOrNo> infected =
        Stream.of(YesOrNo.values()).filter(a -> address.has("infected", a.code())).toList();
    return new MapWords(outcome, infected);
  }

  private static List<String> sentences(
      EvidenceGrid grid, List<Method> methods, List<EmptyPlace> empty, MapWords words) {
    List<String> sentences = new ArrayList<>();
    empty.stream().findFirst().ifPresent(place -> sentences.add(words.none(place)));
    int places = methods.size() * grid.bands().size();
    long none =
        methods.stream()
            .flatMap(method -> grid.row(method).banded().stream())
            .filter(tally -> tally.isNothing())
            .count();
    sentences.add(
        say(
            "page.empty-places",
            Map.of(
                "empty",
                none,
                "places",
                places,
                "studies",
                grid.all().all().studies(),
                "patients",
                grid.all().all().patients())));
    return sentences;
  }

  private static List<MapView.GapLine> gaps(
      List<EmptyPlace> empty, MapWords words, Address address, int most) {
    return empty.stream()
        .filter(place -> place.expected() > 0)
        .limit(most)
        .map(
            place ->
                new MapView.GapLine(
                    words.none(place),
                    MapWords.ground(place),
                    EvidenceMap.studies(address, place.method())))
        .toList();
  }

  /** What is empty among infected or among not infected, though not among all. */
  private static List<MapView.Stratum> strata(
      Address address, InfectionGrids grids, EvidenceGrid everything, List<EmptyPlace> empty) {
    if (!address.all("infected").isEmpty()) {
      return List.of();
    }
    List<Method> methods = methods(address, everything);
    List<MapView.Stratum> strata = new ArrayList<>();
    for (YesOrNo answer : MapCounts.TOLD_APART) {
      Address narrowed = address.with("infected", answer.code());
      List<EmptyPlace> places =
          EmptyPlace.of(grids.of(answer), everything, methods).stream()
              .filter(place -> empty.stream().noneMatch(wide -> wide.covers(place)))
              .toList();
      String heading =
          say(answer == YesOrNo.YES ? "page.heading-all-infected" : "page.heading-none-infected");
      strata.add(
          new MapView.Stratum(heading, gaps(places, words(narrowed), narrowed, GAPS_OF_STRATUM)));
    }
    strata.removeIf(stratum -> stratum.gaps().isEmpty());
    return strata;
  }
}
