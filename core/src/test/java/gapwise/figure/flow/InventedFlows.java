package gapwise.figure.flow;

import gapwise.figure.FigureProvenance;
import gapwise.figure.Reference;
import gapwise.figure.flow.FlowChart.Box;
import gapwise.figure.flow.FlowChart.Part;
import gapwise.figure.flow.FlowChart.Step;
import gapwise.figure.value.SeriesCount;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Flows of records for tests. Every name and number in them is invented. */
public final class InventedFlows {
  private InventedFlows() {}

  /** A usual flow. */
  public static FlowChart usual(List<Reference> references) {
    return chart(
        references,
        List.of(
            new Part("No missing bone of the lower limb", 31),
            new Part("No result of patients", 12)),
        List.of(
            new Part("First invented database", 1204), new Part("Second invented database", 9)));
  }

  /** As many reasons and sources as there can be, with long names. */
  public static FlowChart crowded() {
    List<Part> reasons =
        IntStream.rangeClosed(1, 9)
            .mapToObj(
                i ->
                    new Part(
                        "Reason "
                            + i
                            + " that somebody typed at length, up to eighty letters of it",
                        i))
            .toList();
    List<Part> sources =
        IntStream.rangeClosed(1, 8)
            .mapToObj(
                i -> new Part("Invented register of trials and records number " + i, 1000 * i))
            .toList();
    return chart(List.of(), reasons, sources);
  }

  private static FlowChart chart(
      List<Reference> references, List<Part> reasons, List<Part> sources) {
    return new FlowChart(
        "Flow of records through the review",
        List.of("Invented numbers."),
        List.of(
            new Step(
                new Box("Records identified", 1213, sources),
                Optional.of(new Box("Records removed before screening", 213))),
            new Step(
                new Box("Records screened", 1000, List.of(new Part("not decided yet", 20))),
                Optional.of(new Box("Records left out", 880))),
            new Step(
                new Box("Reports assessed for eligibility", 100),
                Optional.of(new Box("Reports left out", 43, reasons))),
            new Step(new Box("Reports included", 57), Optional.empty())),
        List.of("What is not decided yet stands apart."),
        new FigureProvenance(SeriesCount.of(57), "", "", "test", Optional.empty(), true)
            .citing(references));
  }
}
