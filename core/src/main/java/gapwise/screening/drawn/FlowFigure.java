package gapwise.screening.drawn;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.FigureProvenance;
import gapwise.figure.flow.FlowChart;
import gapwise.figure.flow.FlowChart.Box;
import gapwise.figure.flow.FlowChart.Part;
import gapwise.figure.flow.FlowChart.Step;
import gapwise.screening.Flow;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A flow as the diagram that the PRISMA 2020 statement asks of a review (Page and others, BMJ
 * 2021;372:n71, figure 1), in our own drawing.
 */
public final class FlowFigure {
  private FlowFigure() {}

  /** The diagram of a flow. */
  public static FlowChart of(Flow flow, FigureProvenance provenance) {
    List<Step> steps = new ArrayList<>();
    steps.add(
        new Step(
            new Box(say("screening.identified"), flow.records(), parts(flow.identified())),
            Optional.of(
                new Box(
                    say("screening.removed"),
                    flow.duplicates(),
                    List.of(new Part(say("screening.duplicates"), flow.duplicates()))))));
    steps.add(
        step(
            say("screening.screened"),
            flow.screened(),
            say("screening.left-out"),
            flow.leftOutByTitle(),
            flow.waitingAtTitle()));
    steps.add(
        new Step(
            new Box(say("screening.sought"), flow.sought()),
            Optional.of(new Box(say("screening.not-had"), flow.notHad()))));
    steps.add(
        new Step(
            new Box(say("screening.assessed"), flow.assessed(), waiting(flow.waitingFullText())),
            Optional.of(
                new Box(
                    say("screening.reports-left-out"),
                    flow.leftOutInFull(),
                    parts(flow.leftOut())))));
    steps.add(
        new Step(
            new Box(
                say("screening.included"),
                flow.included(),
                List.of(
                    new Part(say("screening.studies"), flow.studies()),
                    new Part(say("screening.without-study"), flow.withoutStudy()))),
            Optional.empty()));
    return new FlowChart(say("screening.flow"), sentences(flow), steps, List.of(), provenance);
  }

  private static Step step(String main, int count, String beside, int leaving, int open) {
    return new Step(new Box(main, count, waiting(open)), Optional.of(new Box(beside, leaving)));
  }

  private static List<Part> waiting(int open) {
    return open == 0 ? List.of() : List.of(new Part(say("screening.not-decided"), open));
  }

  private static List<Part> parts(Map<String, Integer> counts) {
    return counts.entrySet().stream()
        .map(entry -> new Part(entry.getKey(), entry.getValue()))
        .toList();
  }

  private static List<String> sentences(Flow flow) {
    return flow.isDone()
        ? List.of()
        : List.of(
            say(
                "screening.not-done",
                Map.of("title", flow.waitingAtTitle(), "full", flow.waitingFullText())));
  }
}
