package gapwise.search;

/**
 * Arms that pass all filters but the missing length asked for, and of which it is not said whether
 * they have it.
 *
 * @param oneEnd arms of which one end alone is given, such as "over 6 cm", which reaches into it
 * @param unknown arms whose missing length is not given
 */
public record LengthNotSaid(int oneEnd, int unknown) {
  /** Where no length is asked for. */
  static final LengthNotSaid NONE = new LengthNotSaid(0, 0);
}
