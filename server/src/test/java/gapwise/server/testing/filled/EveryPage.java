package gapwise.server.testing.filled;

import gapwise.server.testing.PageStates;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/** Every state of a page that is looked at, in one list for all who look. */
public final class EveryPage {
  private EveryPage() {}

  /**
   * Those of {@link PageStates}, and those with much on them.
   *
   * @param demonstration gives the address of a path at a server over the demonstration base
   */
  public static Stream<FilledState> of(
      UnaryOperator<String> demonstration, List<FilledState> filled) {
    return Stream.concat(unfilled(demonstration), filled.stream());
  }

  /** Those of {@link PageStates} alone. */
  public static Stream<FilledState> unfilled(UnaryOperator<String> demonstration) {
    return PageStates.byName().entrySet().stream()
        .map(one -> FilledState.of(one.getKey(), demonstration.apply(one.getValue())));
  }
}
