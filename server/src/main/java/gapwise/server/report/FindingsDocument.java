package gapwise.server.report;

import gapwise.decision.findings.Findings;
import java.util.Objects;

/**
 * A summary of findings with what it says of itself.
 *
 * @param findings the numbers
 * @param situation the situation in words
 * @param prepared how it was made
 */
public record FindingsDocument(Findings findings, String situation, Prepared prepared) {
  public FindingsDocument {
    Objects.requireNonNull(findings, "findings");
    Objects.requireNonNull(situation, "situation");
    Objects.requireNonNull(prepared, "prepared");
  }
}
