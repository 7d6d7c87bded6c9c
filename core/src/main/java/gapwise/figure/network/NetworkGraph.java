package gapwise.figure.network;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.value.Check;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Which treatments studies compare, as a value. Draw it with {@link NetworkGraphDrawing}, list it
 * with {@link NetworkGraphTable}.
 *
 * @param title what is shown
 * @param sentences the result in sentences
 * @param nodes treatments, the reference first; at least one
 * @param edges pairs that studies compare
 * @param cautions what must be known beside the graph
 * @param provenance where the numbers come from
 */
public record NetworkGraph(
    String title,
    List<String> sentences,
    List<Node> nodes,
    List<Edge> edges,
    List<String> cautions,
    FigureProvenance provenance)
    implements Figure {
  public NetworkGraph {
    Check.words(title, "title");
    sentences = List.copyOf(sentences);
    nodes = List.copyOf(nodes);
    edges = List.copyOf(edges);
    cautions = List.copyOf(cautions);
    Objects.requireNonNull(provenance, "provenance");
    Set<String> names = nodes.stream().map(Node::treatment).collect(Collectors.toSet());
    if (nodes.isEmpty() || names.size() != nodes.size()) {
      throw new IllegalArgumentException("treatments must be there, each once, were " + nodes);
    }
    Set<Set<String>> pairs = new HashSet<>();
    for (Edge edge : edges) {
      if (!names.containsAll(List.of(edge.one(), edge.other()))
          || !pairs.add(Set.of(edge.one(), edge.other()))) {
        throw new IllegalArgumentException("no pair of the treatments, or twice: " + edge);
      }
    }
  }

  /**
   * A treatment.
   *
   * @param patients in the studies that enter; empty where studies give effects alone
   * @param studies that hold it, 1 or more
   */
  public record Node(String treatment, OptionalDouble patients, int studies) {
    public Node {
      Check.words(treatment, "treatment");
      if (!(Check.finite(patients.orElse(0), "patients") >= 0) || studies < 1) {
        throw new IllegalArgumentException(
            treatment + " has " + patients + " patients in " + studies + " studies");
      }
    }

    /** Its name with what it rests on. */
    String title() {
      return say("figure.treatment-title", Map.of("treatment", treatment, "size", words()));
    }

    /** What it rests on, in words. */
    String words() {
      return patients.isEmpty()
          ? say("figure.studies-of-treatment", Map.of("studies", studies))
          : say(
              "figure.patients-of-treatment",
              Map.of("patients", Math.round(patients.getAsDouble()), "studies", studies));
    }
  }

  /**
   * Two treatments that studies compare.
   *
   * @param studies 1 or more
   */
  public record Edge(String one, String other, int studies) {
    public Edge {
      Check.words(one, "one");
      Check.words(other, "other");
      if (one.equals(other) || studies < 1) {
        throw new IllegalArgumentException(one + ", " + other + ": " + studies + " studies");
      }
    }
  }

  /** Whether every treatment has its patients. */
  boolean knowsPatients() {
    return nodes.stream().allMatch(node -> node.patients().isPresent());
  }

  /** The graph in a few sentences, for those who cannot see it. */
  @Override
  public String description() {
    List<String> words = new ArrayList<>();
    words.add(say("figure.network"));
    if (provenance.demonstration()) {
      words.add(FigureProvenance.INVENTED);
    }
    words.addAll(sentences);
    for (Node node : nodes) {
      words.add(
          say("figure.treatment", Map.of("treatment", node.treatment(), "size", node.words())));
    }
    for (Edge edge : edges) {
      words.add(
          say(
              "figure.compared",
              Map.of("one", edge.one(), "other", edge.other(), "studies", edge.studies())));
    }
    words.addAll(cautions);
    return String.join(" ", words);
  }

  /** Studies are counted here, not series. */
  @Override
  public List<String> source() {
    List<String> phrases = new ArrayList<>(provenance.phrases());
    String people = provenance.participants();
    phrases.set(
        0,
        people.isBlank()
            ? say("figure.studies", Map.of("studies", provenance.series().studies()))
            : say(
                "figure.studies-of-people",
                Map.of("studies", provenance.series().studies(), "people", people)));
    return List.copyOf(phrases);
  }

  @Override
  public List<Picture> draw(Setting setting) {
    return List.of(NetworkGraphDrawing.draw(this, setting));
  }

  @Override
  public String csv() {
    return NetworkGraphTable.of(this).csv();
  }
}
