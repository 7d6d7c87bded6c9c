package gapwise.server.home;

import gapwise.analysis.result.Origin;
import gapwise.answer.Edition;

/** What made a result, of the state that answers. */
public final class Origins {
  private Origins() {}

  /** The origin of results made from a state. */
  public static Origin of(Edition edition) {
    return new Origin(edition.program(), edition.change(), edition.date());
  }
}
