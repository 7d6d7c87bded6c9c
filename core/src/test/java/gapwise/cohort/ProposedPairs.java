package gapwise.cohort;

import gapwise.evidence.Study;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.KnownEvidence;
import java.nio.file.Path;
import java.util.List;

/**
 * Prints what is proposed of the studies in a folder of templates as CSV, for scoring by hand; with
 * a second word, the reasons too.
 */
final class ProposedPairs {
  private ProposedPairs() {}

  public static void main(String[] arguments) {
    OverlapSearch cohorts = new OverlapSearch();
    studies(Path.of(arguments[0])).forEach(cohorts::add);
    System.out.println("a,b,verdict");
    for (Proposal one : cohorts.find().proposals()) {
      System.out.println(one.first() + "," + one.second() + "," + one.verdict().word());
      if (arguments.length > 1) {
        one.signs()
            .forEach(sign -> System.err.println(one.first() + " " + one.second() + " " + sign));
      }
    }
  }

  /** The studies of the template's CSV files there; whatever is doubtful stands. */
  private static List<Study> studies(Path folder) {
    Imported read = Import.read(folder, KnownEvidence.NONE, key -> true, rows -> {});
    if (read instanceof Imported.Ready ready) {
      return ready.studies();
    }
    throw new IllegalArgumentException("the template was refused: " + read);
  }
}
