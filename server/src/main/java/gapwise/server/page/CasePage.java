package gapwise.server.page;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.answer.AnswerForest;
import gapwise.answer.Answers;
import gapwise.answer.ComparisonAlert;
import gapwise.answer.Edition;
import gapwise.evidence.Bone;
import gapwise.evidence.Clock;
import gapwise.evidence.Method;
import gapwise.evidence.Phase;
import gapwise.figure.Medium;
import gapwise.figure.Timeline;
import gapwise.figure.TimelineDrawing;
import gapwise.place.CaseTimeline;
import gapwise.place.CaseWords;
import gapwise.place.MethodPlace;
import gapwise.place.Milestone;
import gapwise.place.PatientCase;
import gapwise.place.PlacedCase;
import gapwise.place.PlacedCases;
import gapwise.place.PlacedMilestone;
import gapwise.problem.Problem;
import gapwise.wording.Segments;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** One case held against published evidence; the case stands in the address and nowhere else. */
public final class CasePage {
  static final String PATH = "/case";

  private final Templates templates;
  private final Sites sites;
  private final PlacedCases cases;
  private final Supplier<Edition> edition;

  public CasePage(Templates templates, Sites sites, Answers answers, Supplier<Edition> edition) {
    this.templates = templates;
    this.sites = sites;
    this.cases = new PlacedCases(answers);
    this.edition = edition;
  }

  /** One choice of a list. */
  public record Choice(String value, String label, boolean chosen) {}

  /**
   * One time in the form.
   *
   * @param clocks clocks to choose from; none where only one means anything
   */
  public record TimeField(
      String name, String label, String value, boolean weeks, List<Choice> clocks) {}

  /** One phase in the form. */
  public record PhaseField(int number, List<Choice> phases, String value, boolean weeks) {}

  /** The figure in its two widths, and its numbers. */
  public record Drawn(Timeline timeline, String wide, String narrow, TakeFigure take) {}

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
      return asked.at(PooledPage.PATH);
    }

    /** Methods to choose from. */
    public List<Choice> methods() {
      return Method.vocabulary().all().stream()
          .map(one -> choice("method", one.code(), one.label()))
          .toList();
    }

    /** Bones to choose from. */
    public List<Choice> bones() {
      return List.of(Bone.values()).stream()
          .map(one -> choice("bone", one.code(), one.label()))
          .toList();
    }

    /** Segments to choose from. */
    public List<Choice> segments() {
      return List.of("31", "32", "33", "41", "42", "43", "44").stream()
          .map(one -> choice("segment", one, Segments.name(one)))
          .toList();
    }

    /** States of infection to choose from. */
    public List<Choice> infections() {
      return List.of(
          choice("infection", "none", "never infected"),
          choice("infection", "past", "infected in the past, calm at the start"),
          choice("infection", "active", "infected at the start"));
    }

    /** What the beginning of the course may be. */
    public List<Choice> starts() {
      return clocks("start");
    }

    /** The times in the form. */
    public List<TimeField> times() {
      return List.of(Milestone.values()).stream()
          .filter(one -> one.isTime())
          .map(
              one ->
                  new TimeField(
                      one.code(),
                      one == Milestone.FRAME_OFF ? "Time in the external frame" : one.label(),
                      address.first(one.code()),
                      address.has(one.code() + "-unit", "weeks"),
                      one.onlyClock().isPresent() ? List.of() : clocks(one.code() + "-from")))
          .toList();
    }

    /** The phases in the form. */
    public List<PhaseField> phases() {
      return IntStream.rangeClosed(1, CaseAddress.MOST_PHASES)
          .mapToObj(
              i ->
                  new PhaseField(
                      i,
                      List.of(Phase.values()).stream()
                          .map(one -> choice("phase-" + i, one.code(), one.label()))
                          .toList(),
                      address.first("duration-" + i),
                      address.has("unit-" + i, "weeks")))
          .toList();
    }

    private List<Choice> clocks(String name) {
      return List.of(Clock.values()).stream()
          .map(one -> choice(name, one.code(), one.label()))
          .toList();
    }

    private Choice choice(String name, String value, String label) {
      return new Choice(value, label, address.has(name, value));
    }
  }

  /** Adds its route. */
  public void addTo(RoutesConfig routes) {
    routes.get(PATH, this::show);
  }

  private static Drawn drawn(Timeline timeline, Address address) {
    return new Drawn(
        timeline,
        TimelineDrawing.draw(timeline, Medium.PAGE).inline(),
        TimelineDrawing.draw(timeline, Medium.PHONE).inline(),
        TakeFigure.of("/api/v1/case", address, timeline));
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    Optional<PatientCase> patientCase = CaseAddress.read(address);
    Optional<PlacedCase> placed = patientCase.map(cases::place);
    templates.show(
        context,
        "CasePage",
        new View(
            sites.of("Place a case", Site.Section.CASE),
            address,
            placed,
            placed
                .flatMap(one -> CaseTimeline.of(one, edition.get()))
                .map(timeline -> drawn(timeline, address)),
            patientCase.map(PatientCase::course).flatMap(CourseLines::of)));
  }
}
