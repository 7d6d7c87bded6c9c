package gapwise.server.report;

import gapwise.answer.Edition;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * What a sheet says of how it was made.
 *
 * @param edition program and state of the evidence
 * @param address where the same sheet is opened again, with the number of the change
 * @param on the day
 * @param searched the day of the last search of the literature; empty where it is written in by
 *     hand
 * @param invented whether some study is invented
 */
public record Prepared(
    Edition edition, String address, LocalDate on, Optional<LocalDate> searched, boolean invented) {
  public Prepared {
    Objects.requireNonNull(edition, "edition");
    Objects.requireNonNull(address, "address");
    Objects.requireNonNull(on, "on");
    Objects.requireNonNull(searched, "searched");
  }
}
