package gapwise.synthesis.network;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;

/** Treatments in their order, the reference first, then by alphabet, and the place of each. */
final class TreatmentIndex {
  private final List<String> names;
  private final Map<String, Integer> places = new HashMap<>();

  private TreatmentIndex(List<String> names) {
    this.names = List.copyOf(names);
    for (int i = 0; i < names.size(); i++) {
      places.put(names.get(i), i);
    }
  }

  /** The treatments of studies; the reference, if it is among them, comes first. */
  static TreatmentIndex of(List<NetworkStudy> studies, String reference) {
    TreeSet<String> all = new TreeSet<>();
    studies.forEach(study -> all.addAll(study.treatments()));
    List<String> ordered = new ArrayList<>();
    if (all.remove(reference)) {
      ordered.add(reference);
    }
    ordered.addAll(all);
    return new TreatmentIndex(ordered);
  }

  List<String> names() {
    return names;
  }

  int size() {
    return names.size();
  }

  boolean has(String name) {
    return places.containsKey(name);
  }

  int of(String name) {
    return Objects.requireNonNull(places.get(name), name);
  }
}
