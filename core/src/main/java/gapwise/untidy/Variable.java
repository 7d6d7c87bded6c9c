package gapwise.untidy;

import java.util.Objects;
import java.util.Optional;

/**
 * One column of a table, or one row of a table that lies on its side.
 *
 * @param at its column, or its row
 * @param heading what its words say
 * @param group the cell above it that names a group, where groups stand in columns above measures
 */
record Variable(int at, Heading heading, Optional<GridCell> group) {
  Variable {
    Objects.requireNonNull(heading, "heading");
    Objects.requireNonNull(group, "group");
  }

  String target() {
    return heading.target();
  }

  Variable with(Heading other) {
    return new Variable(at, other, group);
  }
}
