package gapwise.analysis.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * What a network rests on.
 *
 * @param treatments in their order
 * @param studies the treatments of each
 * @param participants of treatments, where arms report them
 */
record NetworkShape(
    List<String> treatments, List<List<String>> studies, Map<String, Double> participants) {
  NetworkShape {
    treatments = List.copyOf(treatments);
    studies = List.copyOf(studies);
    participants = Map.copyOf(participants);
  }

  /** Each treatment with its studies and patients. */
  List<NetworkResult.Node> nodes() {
    return treatments.stream()
        .map(
            treatment -> {
              Double patients = participants.get(treatment);
              return new NetworkResult.Node(
                  treatment,
                  (int) studies.stream().filter(study -> study.contains(treatment)).count(),
                  patients == null ? OptionalDouble.empty() : OptionalDouble.of(patients));
            })
        .toList();
  }

  /** Each pair that studies hold. */
  List<NetworkResult.Edge> comparisons() {
    List<NetworkResult.Edge> edges = new ArrayList<>();
    int[][] counts = new int[treatments.size()][treatments.size()];
    for (List<String> study : studies) {
      List<Integer> places = study.stream().map(treatments::indexOf).sorted().toList();
      for (int i = 0; i < places.size(); i++) {
        for (int j = i + 1; j < places.size(); j++) {
          counts[places.get(i)][places.get(j)]++;
        }
      }
    }
    for (int i = 0; i < treatments.size(); i++) {
      for (int j = i + 1; j < treatments.size(); j++) {
        if (counts[i][j] > 0) {
          edges.add(new NetworkResult.Edge(treatments.get(i), treatments.get(j), counts[i][j]));
        }
      }
    }
    return edges;
  }
}
