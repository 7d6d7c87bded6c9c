package gapwise.server.page.place;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.answer.AnswerForest;
import gapwise.answer.ComparisonAlert;
import gapwise.figure.timeline.Timeline;
import gapwise.place.CaseWords;
import gapwise.place.MethodPlace;
import gapwise.place.PlacedCase;
import gapwise.place.PlacedMilestone;
import gapwise.problem.Problem;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.page.Site;
import gapwise.server.page.part.Awaited;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What the page of a case shows: a case placed, what is wrong with one, or the form for one. */
public sealed interface CaseView {
  /** The frame of the page. */
  Site site();

  /** The form with what stands in it. */
  CaseForm form();

  /** What is entered so far. */
  Entered entered();

  /** Nothing is entered that has a place. */
  record Empty(Site site, CaseForm form, Entered entered) implements CaseView {}

  /** Something that is entered cannot be; the form says what, field by field. */
  record Wrong(Site site, CaseForm form, Entered entered) implements CaseView {}

  /** A case among so many groups that its place takes seconds. */
  record Working(Site site, CaseForm form, Entered entered, Awaited awaited) implements CaseView {}

  /**
   * A case with its place.
   *
   * @param placed the case among published series
   * @param figure the timeline; empty where there is nothing to draw
   */
  record Placed(
      Site site, CaseForm form, Entered entered, PlacedCase placed, Optional<Drawn> figure)
      implements CaseView {

    /** The phases in words; empty where none is entered. */
    public Optional<CourseLines> course() {
      return entered.course();
    }

    /** Milestones with series beside them. */
    public List<PlacedMilestone> found() {
      return placed.milestones().stream().filter(one -> !one.methods().isEmpty()).toList();
    }

    /** The places among the series of the method of the case, where there are series enough. */
    public List<Brief> inBrief() {
      return found().stream()
          .flatMap(
              milestone ->
                  milestone.methods().stream()
                      .filter(one -> one.own() && one.told().isPresent())
                      .map(
                          one ->
                              new Brief(
                                  CaseWords.told(milestone.reached()),
                                  CaseWords.sentence(milestone.reached(), one))))
          .toList();
    }

    /** Milestones that no series can stand beside, each with its clocks. */
    public List<Unmatched> unmatched() {
      Map<String, List<PlacedMilestone>> byName =
          placed.milestones().stream()
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
    public List<MethodPlace> inFull(PlacedMilestone milestone) {
      return milestone.methods().stream()
          .filter(one -> one.own() || one.told().isPresent())
          .toList();
    }

    /** The other methods, each in a phrase. */
    public List<String> inShort(PlacedMilestone milestone) {
      return milestone.methods().stream()
          .filter(one -> !one.own() && one.told().isEmpty())
          .map(one -> CaseWords.tooFew(milestone.reached(), one))
          .toList();
    }

    /** Where entered times and phases disagree. */
    public List<String> contradictions() {
      return placed.patientCase().contradictions().stream().map(Problem::message).toList();
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
      return placed.alert();
    }

    /** The plans behind the places as text. */
    public List<String> plans() {
      return found().stream()
          .flatMap(one -> one.plans().stream())
          .map(ObjectNode::toPrettyString)
          .toList();
    }

    /** Address of the pooled result of a milestone. */
    public String pooled(PlacedMilestone milestone) {
      Address asked = new Address(Map.of());
      asked = asked.with("outcome", milestone.reached().milestone().outcome().code());
      if (milestone.reached().clock().isPresent()) {
        asked = asked.with("clock", milestone.reached().clock().get().code());
      }
      return asked.at(PagePaths.POOLED);
    }
  }

  /** The figure, its numbers, and its files. */
  record Drawn(Timeline timeline, TwoWidths drawing, TakeFigure take) {}

  /** A milestone with its place among the series of the case's own method. */
  record Brief(String milestone, String sentence) {}

  /** A milestone that no series can stand beside, on all its clocks. */
  record Unmatched(String milestone, List<PlacedMilestone> clocks) {}
}
