package gapwise.server.page.map;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Cited;
import gapwise.answer.ComparisonsGraph;
import gapwise.answer.Edition;
import gapwise.answer.StudyAddress;
import gapwise.answer.grid.EmptyPlace;
import gapwise.answer.grid.HeadToHead;
import gapwise.answer.grid.Tally;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.Reference;
import gapwise.figure.network.NetworkGraph;
import gapwise.sentence.Counted;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.page.Site;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Which methods stand side by side within a study.
 *
 * @param site the frame of the page
 * @param form outcomes and filters to choose from
 * @param sentence what was found, and what is kept apart
 * @param graph the network; empty where no study holds two methods
 * @param pairs pairs that a study holds
 * @param missing pairs that no study holds, by method
 */
public record ComparisonsView(
    Site site,
    FilterForm form,
    String sentence,
    Optional<Graph> graph,
    List<PairLine> pairs,
    List<Missing> missing) {

  /** The network, and its files. */
  public record Graph(String title, TwoWidths drawing, TakeFigure take) {}

  /**
   * A pair.
   *
   * @param kinds designs, the best first
   * @param first its first studies
   * @param further number of studies that are not among the first
   * @param href the groups of both methods, those of other studies too
   */
  public record PairLine(
      Method one,
      Method other,
      String studies,
      String patients,
      Kinds kinds,
      List<StudyLink> first,
      int further,
      String href) {}

  /** A study by its label. */
  public record StudyLink(String label, String href) {}

  /** A method with those that no study here holds beside it. */
  public record Missing(Method method, String others, boolean alone) {}

  /** Makes the view. */
  static final class Maker {
    /** Studies named in the table for each pair; their records are read for their labels. */
    private static final int NAMED = 4;

    private final MapCounts counts;
    private final Function<String, Optional<Study>> studies;
    private final Edition edition;

    Maker(MapCounts counts, Function<String, Optional<Study>> studies, Edition edition) {
      this.counts = counts;
      this.studies = studies;
      this.edition = edition;
    }

    ComparisonsView view(Site site, FilterForm form, MapCounts.Counts<HeadToHead> counted) {
      HeadToHead found = counted.of();
      List<Method> methods = methods();
      return new ComparisonsView(
          site,
          form,
          sentence(counted, methods),
          graph(counted, site.invented(), List.of()).map(each -> drawn(form.address(), each)),
          found.pairs().stream().map(pair -> line(pair, form.address())).toList(),
          missing(found, methods));
    }

    private List<Method> methods() {
      return EmptyPlace.toldApart(List.copyOf(counts.everything().rows().keySet()));
    }

    /** The network with the references of its studies; empty where no study holds two methods. */
    Optional<NetworkGraph> graph(MapCounts.Counts<HeadToHead> counted, boolean invented) {
      List<Reference> references =
          counted.of().pairs().stream()
              .flatMap(pair -> pair.studyIds().stream())
              .distinct()
              .flatMap(id -> studies.apply(id).stream())
              .map(Cited::of)
              .toList();
      return graph(counted, invented, references);
    }

    private Optional<NetworkGraph> graph(
        MapCounts.Counts<HeadToHead> counted, boolean invented, List<Reference> references) {
      return ComparisonsGraph.of(
          counted.of(),
          say("page.title-of-comparisons"),
          sentence(counted, methods()),
          edition,
          invented,
          references);
    }

    private static Graph drawn(Address address, NetworkGraph graph) {
      return new Graph(
          graph.title(),
          TwoWidths.of(graph),
          TakeFigure.of(MapPage.COMPARISONS_FILES, address, graph));
    }

    private static String sentence(MapCounts.Counts<HeadToHead> counted, List<Method> methods) {
      String found = found(counted.of(), methods);
      return counted.apart().map(apart -> found + " " + apart).orElse(found);
    }

    private static String found(HeadToHead found, List<Method> methods) {
      if (found.pairs().isEmpty()) {
        return say("page.no-comparison");
      }
      int possible = methods.size() * (methods.size() - 1) / 2;
      long stand =
          found.pairs().stream()
              .filter(pair -> methods.contains(pair.one()) && methods.contains(pair.other()))
              .count();
      return say(
          "page.comparisons",
          Map.of(
              "studies",
              found.studies(),
              "pairs",
              possible,
              "stand",
              stand,
              "missing",
              possible - stand));
    }

    private PairLine line(HeadToHead.Pair pair, Address address) {
      List<StudyLink> first =
          pair.studyIds().stream()
              .limit(NAMED)
              .flatMap(id -> studies.apply(id).stream())
              .map(study -> new StudyLink(study.citation().label(), StudyAddress.of(study.id())))
              .toList();
      return new PairLine(
          pair.one(),
          pair.other(),
          Counted.of(pair.studies(), "study", "studies"),
          Counted.of(pair.patients(), "patient", "patients"),
          Kinds.of(new Tally(pair.studies(), pair.studies(), 0, pair.designs())),
          first,
          pair.studies() - first.size(),
          address
              .without(List.of("method"))
              .and("method", pair.one().code())
              .and("method", pair.other().code())
              .at(PagePaths.STUDIES));
    }

    private static List<Missing> missing(HeadToHead found, List<Method> methods) {
      return found.missing(methods).stream()
          .map(
              entry ->
                  new Missing(
                      entry.getKey(),
                      String.join("; ", entry.getValue().stream().map(Method::shortLabel).toList()),
                      entry.getValue().size() == methods.size() - 1))
          .toList();
    }
  }
}
