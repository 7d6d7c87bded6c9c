package gapwise.reference.pair;

import gapwise.problem.Problem;
import gapwise.reference.format.FileAnswer;
import gapwise.reference.format.ReadRecord;
import java.io.IOException;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Proposals as a table with the columns a, b, verdict and why: one row a pair; rows without b tell
 * of one record what was doubtful or refused and what became of its paper, or of a file how many
 * records were read.
 */
public final class ProposalsCsv {
  private ProposalsCsv() {}

  /** Writes the table (RFC 4180). */
  public static void write(ReferenceProposals proposals, Appendable target) throws IOException {
    CSVPrinter table = CSVFormat.RFC4180.print(target);
    table.printRecord("a", "b", "verdict", "why");
    for (FileAnswer file : proposals.files()) {
      row(table, file.name(), "", file.read() + " read", why(file.problems()));
    }
    for (ReferenceProposals.Handled handled : proposals.records()) {
      if (!handled.record().problems().isEmpty()) {
        boolean read = handled.record() instanceof ReadRecord.Read;
        row(
            table,
            handled.key().label(),
            "",
            read ? "doubt" : "refused",
            why(handled.record().problems()));
      }
    }
    for (Standing standing : proposals.standings()) {
      row(table, standing.paper().label(), "", standing.kind().word(), standing.sentence());
    }
    for (ProposedPair pair : proposals.pairs()) {
      row(
          table,
          pair.first().label(),
          pair.second().label(),
          pair.verdict().word(),
          String.join(" ", pair.reasons()));
    }
  }

  private static void row(CSVPrinter table, String... values) throws IOException {
    for (String value : values) {
      table.print(harmless(value));
    }
    table.println();
  }

  /** A text that starts like a formula gets an apostrophe, so that no spreadsheet computes it. */
  private static String harmless(String value) {
    return value.matches("(?s)[=+@\\t\\r-].*") ? "'" + value : value;
  }

  private static String why(List<Problem> problems) {
    return problems.stream().map(Problem::line).collect(Collectors.joining(" "));
  }
}
