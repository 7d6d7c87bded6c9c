package gapwise.evidence.rule;

import java.util.Objects;
import java.util.Optional;

/**
 * One thing that is impossible or doubtful in a record.
 *
 * @param severity how bad it is
 * @param code kebab-case word that stays stable between versions
 * @param part which part of the record
 * @param message what was found, what was expected and what to do, as sentences for people
 * @param same what tells the finding from others of its code, where it can come up at several
 *     records, such as the two studies of a pair; empty where part and message do
 */
public record Finding(
    Severity severity, String code, RecordPart part, String message, Optional<String> same) {
  public Finding {
    Objects.requireNonNull(severity, "severity");
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(part, "part");
    Objects.requireNonNull(message, "message");
    Objects.requireNonNull(same, "same");
  }
}
