package gapwise.printed;

import gapwise.evidence.unit.Unit;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What stands around a text that is read for a column.
 *
 * @param said what the words above or beside it say
 * @param groupSize how many patients, limbs or defects the group has; empty where not known
 * @param commaDecimals whether numbers of the same table have decimal commas
 */
public record Setting(Said said, OptionalDouble groupSize, boolean commaDecimals) {
  public Setting {
    Objects.requireNonNull(said, "said");
    Objects.requireNonNull(groupSize, "groupSize");
  }

  /** Nothing is known. */
  public static Setting none() {
    return new Setting(Said.NOTHING, OptionalDouble.empty(), false);
  }

  Optional<Unit> unit() {
    return said.unit();
  }
}
