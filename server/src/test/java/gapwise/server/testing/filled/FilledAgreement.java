package gapwise.server.testing.filled;

import gapwise.server.page.extraction.TwoReaders;
import gapwise.server.testing.RunningServer;
import java.util.List;
import java.util.Map;

/** A paper whose two readings differed in several fields, were settled and made one record. */
final class FilledAgreement {
  private static final String DIFFERENCE = "name=\"difference\" value=\"([^\"]+)\"";

  private FilledAgreement() {}

  /** Done before there are accounts; looked at by whoever has the session. */
  static void into(Filling filling) throws Exception {
    RunningServer running = filling.running();
    TwoReaders.open(running);
    TwoReaders.extract(running, "AB", Map.of("c.2.label", "pegs"));
    TwoReaders.extract(
        running,
        "CD",
        Map.of(
            "c.2.label", "pegs of the moon",
            "c.3.events", "8",
            "c.1.union_definition", "bridging of three of four cortices on two radiographs"));
    TwoReaders.begin(running, "EF");
    String settle = TwoReaders.PAPER + "/settle?who=EF";
    List<String> left = Filling.allIn(DIFFERENCE, running.get(settle).body());
    while (!left.isEmpty()) {
      TwoReaders.settle(running, "EF", left.get(0), "first", "", "Table 2 of the paper says so");
      left = Filling.allIn(DIFFERENCE, running.get(settle).body());
    }
    TwoReaders.post(running, TwoReaders.PAPER + "/finish", "who", "EF", "why", "reconciled");
  }

  static void shown(Filling filling, String session) {
    filling.shows("extraction: a paper agreed", TwoReaders.PAPER, session);
    filling.shows("extraction: agreement by field", "/extraction/agreement", session);
    filling.shows("study: agreed by two", "/studies/" + TwoReaders.STUDY, session);
    filling.shows("pooled: an agreed study", "/pooled?outcome=union&status=agreed", session);
  }
}
