package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.grid.HeadToHead;
import gapwise.figure.FigureProvenance;
import gapwise.figure.Reference;
import gapwise.figure.network.NetworkGraph;
import gapwise.figure.value.SeriesCount;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The network graph of the methods that studies compare. */
public final class ComparisonsGraph {
  /** What must stand beside the graph and its table. */
  public static final List<String> CAUTIONS =
      List.of(say("answer.line-between-methods"), say("answer.methods-side-by-side"));

  private ComparisonsGraph() {}

  /**
   * The figure; empty where no study holds two methods.
   *
   * @param title what is shown
   * @param sentence what was found
   * @param edition state of program and evidence base
   * @param invented whether the data are invented
   * @param references the studies of the pairs
   */
  public static Optional<NetworkGraph> of(
      HeadToHead found,
      String title,
      String sentence,
      Edition edition,
      boolean invented,
      List<Reference> references) {
    if (found.pairs().isEmpty()) {
      return Optional.empty();
    }
    List<NetworkGraph.Node> nodes =
        found.members().entrySet().stream()
            .map(
                member ->
                    new NetworkGraph.Node(
                        member.getKey().shortLabel(),
                        OptionalDouble.of(member.getValue().patients()),
                        member.getValue().studies()))
            .toList();
    List<NetworkGraph.Edge> edges =
        found.pairs().stream()
            .map(
                pair ->
                    new NetworkGraph.Edge(
                        pair.one().shortLabel(), pair.other().shortLabel(), pair.studies()))
            .toList();
    long patients = found.members().values().stream().mapToLong(HeadToHead.Member::patients).sum();
    return Optional.of(
        new NetworkGraph(
            title,
            List.of(sentence),
            nodes,
            edges,
            CAUTIONS,
            new FigureProvenance(
                SeriesCount.of(found.studies()),
                People.patients(patients),
                "",
                edition.words(),
                edition.date(),
                invented,
                references)));
  }
}
