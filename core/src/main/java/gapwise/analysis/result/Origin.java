package gapwise.analysis.result;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What made a result: which program, and which state of the evidence base.
 *
 * @param version of the program; not empty
 * @param change number of the last change of the evidence base, 0 or more; empty without one
 * @param date day of that change, in universal time; empty without one
 */
public record Origin(String version, OptionalLong change, Optional<LocalDate> date) {
  /** The name of the program. */
  public static final String PROGRAM = "Gapwise";

  public Origin {
    Objects.requireNonNull(change, "change");
    Objects.requireNonNull(date, "date");
    if (version.isBlank()) {
      throw new IllegalArgumentException("a program has a version, found none");
    }
  }

  /** Whether a plan takes its rows from an evidence base. */
  public static boolean selects(ObjectNode plan) {
    return plan.path("source").has("evidence");
  }

  /** The software as JSON. */
  ObjectNode software() {
    return JsonNodeFactory.instance.objectNode().put("name", PROGRAM).put("version", version);
  }

  /** The state of the evidence as JSON; empty where a plan does not select from it. */
  Optional<ObjectNode> evidence(ObjectNode plan) {
    if (change.isEmpty() || !selects(plan)) {
      return Optional.empty();
    }
    ObjectNode json = JsonNodeFactory.instance.objectNode().put("change", change.getAsLong());
    date.ifPresent(day -> json.put("date", day.toString()));
    return Optional.of(json);
  }
}
