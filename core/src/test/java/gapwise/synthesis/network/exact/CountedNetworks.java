package gapwise.synthesis.network.exact;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import gapwise.effect.ArmCounts;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Networks of counts that tests share. */
final class CountedNetworks {
  /** Ten invented studies, two of three arms, those of reference/exact_network.py. */
  static final String INVENTED =
      "A frame 2 20|A nail 7 22|A plate 4 19|B frame 0 15|B nail 3 16|C nail 2 25|C plate 11 24|"
          + "D plate 1 18|D graft 4 17|D frame 0 16|E graft 5 20|E nail 6 21|F frame 6 14|"
          + "F nail 2 12|G frame 1 30|G graft 9 28|H nail 8 26|H plate 0 25|I frame 9 33|"
          + "I nail 4 31|J frame 1 21|J plate 6 20";

  private CountedNetworks() {}

  /** Studies of rows such as {@code A frame 2 20|B ...}: study, treatment, events, patients. */
  static List<CountedStudy> studies(String rows) {
    Map<String, List<String[]>> arms = new LinkedHashMap<>();
    for (String row : rows.split("\\|")) {
      String[] words = row.trim().split(" ");
      arms.computeIfAbsent(words[0], s -> new ArrayList<>()).add(words);
    }
    List<CountedStudy> studies = new ArrayList<>();
    arms.forEach(
        (label, all) ->
            studies.add(
                new CountedStudy(
                    label,
                    all.stream().map(words -> words[1]).toList(),
                    all.stream()
                        .map(
                            words ->
                                new ArmCounts(
                                    Double.parseDouble(words[2]), Double.parseDouble(words[3])))
                        .toList())));
    return studies;
  }

  static ExactNetwork network(List<CountedStudy> studies, boolean random) {
    return assertInstanceOf(
            ExactNetwork.Fitted.Done.class,
            ExactNetwork.of(studies, "", new ExactSettings(random, 0.95)))
        .network();
  }

  static ExactComparison comparison(ExactNetwork network, String one, String other) {
    return network
        .comparison(network.treatments().indexOf(one), network.treatments().indexOf(other))
        .orElseThrow();
  }
}
