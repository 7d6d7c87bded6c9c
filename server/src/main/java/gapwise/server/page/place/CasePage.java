package gapwise.server.page.place;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.answer.AnswerForest;
import gapwise.answer.Answers;
import gapwise.answer.ComparisonAlert;
import gapwise.answer.Edition;
import gapwise.figure.Medium;
import gapwise.figure.Timeline;
import gapwise.figure.TimelineDrawing;
import gapwise.place.CaseTimeline;
import gapwise.place.CaseWords;
import gapwise.place.MethodPlace;
import gapwise.place.PatientCase;
import gapwise.place.PlacedCase;
import gapwise.place.PlacedCases;
import gapwise.place.PlacedMilestone;
import gapwise.problem.Problem;
import gapwise.server.address.Address;
import gapwise.server.address.CaseAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** One case held against published evidence; the case stands in the address and nowhere else. */
public final class CasePage {

  private final Templates templates;
  private final Sites sites;
  private final PlacedCases cases;
  private final Edition edition;

  public CasePage(Templates templates, Sites sites, Answers answers, Edition edition) {
    this.templates = templates;
    this.sites = sites;
    this.cases = new PlacedCases(answers);
    this.edition = edition;
  }

  /** The figure in its two widths, and its numbers. */
  public record Drawn(Timeline timeline, String wide, String narrow, TakeFigure take) {}

  /** A milestone with its place among the series of the case's own method. */
  public record Brief(String milestone, String sentence) {}

  /** A milestone that no series can stand beside, on all its clocks. */
  public record Unmatched(String milestone, List<PlacedMilestone> clocks) {}

  /**
   * What the template shows.
   *
   * @param site the frame of the page
   * @param address what stands in the form
   * @param placed the case with its place; empty where nothing is entered
   * @param figure the timeline; empty where there is nothing to draw
   * @param course the phases in words
   */
  public record View(
      Site site,
      Address address,
      Optional<PlacedCase> placed,
      Optional<Drawn> figure,
      Optional<CourseLines> course) {

    /** Milestones with series beside them. */
    public List<PlacedMilestone> found() {
      return milestones().stream().filter(one -> !one.methods().isEmpty()).toList();
    }

    /** The places among the series of the method of the case, where there are series enough. */
    public List<Brief> inBrief() {
      return found().stream()
          .flatMap(
              placed ->
                  placed.methods().stream()
                      .filter(one -> one.own() && one.told().isPresent())
                      .map(
                          one ->
                              new Brief(
                                  CaseWords.told(placed.reached()),
                                  CaseWords.sentence(placed.reached(), one))))
          .toList();
    }

    /** Milestones that no series can stand beside, each with its clocks. */
    public List<Unmatched> unmatched() {
      Map<String, List<PlacedMilestone>> byName =
          milestones().stream()
              .filter(one -> one.methods().isEmpty())
              .collect(
                  Collectors.groupingBy(
                      one -> one.reached().milestone().label(),
                      LinkedHashMap::new,
                      Collectors.toList()));
      return byName.entrySet().stream()
          .map(entry -> new Unmatched(entry.getKey(), entry.getValue()))
          .toList();
    }

    /** Methods to tell in full: that of the case, and those with series enough for a share. */
    public List<MethodPlace> inFull(PlacedMilestone placed) {
      return placed.methods().stream().filter(one -> one.own() || one.told().isPresent()).toList();
    }

    /** The other methods, each in a phrase. */
    public List<String> inShort(PlacedMilestone placed) {
      return placed.methods().stream()
          .filter(one -> !one.own() && one.told().isEmpty())
          .map(one -> CaseWords.tooFew(placed.reached(), one))
          .toList();
    }

    private List<PlacedMilestone> milestones() {
      return placed.map(PlacedCase::milestones).orElse(List.of());
    }

    /** Where entered times and phases disagree. */
    public List<String> contradictions() {
      return placed.stream()
          .flatMap(one -> one.patientCase().contradictions().stream())
          .map(Problem::message)
          .toList();
    }

    /** What must stand beside every place. */
    public List<String> cautions() {
      List<String> cautions = new ArrayList<>(AnswerForest.CAUTIONS);
      cautions.add(AnswerForest.NO_COMPARISON);
      return cautions;
    }

    /** Why one case proves little. */
    public List<String> reasons() {
      return CaseWords.WHY_ONE_CASE_PROVES_LITTLE;
    }

    /** How the groups behind the methods differ. */
    public Optional<ComparisonAlert> alert() {
      return placed.flatMap(PlacedCase::alert);
    }

    /** The plans behind the places as text. */
    public List<String> plans() {
      return found().stream()
          .flatMap(one -> one.plans().stream())
          .map(ObjectNode::toPrettyString)
          .toList();
    }

    /** Address of the pooled result of a milestone. */
    public String pooled(PlacedMilestone placed) {
      Address asked = new Address(Map.of());
      asked = asked.with("outcome", placed.reached().milestone().outcome().code());
      if (placed.reached().clock().isPresent()) {
        asked = asked.with("clock", placed.reached().clock().get().code());
      }
      return asked.at(PagePaths.POOLED);
    }

    /** The form with what stands in it. */
    public CaseForm form() {
      return new CaseForm(address);
    }
  }

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.CASE, this::show);
  }

  private static Drawn drawn(Timeline timeline, Address address) {
    return new Drawn(
        timeline,
        TimelineDrawing.draw(timeline, Medium.PAGE).get(0).inline(),
        TimelineDrawing.draw(timeline, Medium.PHONE).get(0).inline(),
        TakeFigure.of("/api/v1/case", address, timeline));
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    Optional<PatientCase> patientCase = CaseAddress.read(address);
    Optional<PlacedCase> placed = patientCase.map(cases::place);
    templates.show(
        context,
        "place/CasePage",
        new View(
            sites.of("Place a case", Site.Section.CASE),
            address,
            placed,
            placed
                .flatMap(one -> CaseTimeline.of(one, edition))
                .map(timeline -> drawn(timeline, address)),
            patientCase.map(PatientCase::course).flatMap(CourseLines::of)));
  }
}
