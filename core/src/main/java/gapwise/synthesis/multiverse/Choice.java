package gapwise.synthesis.multiverse;

import java.util.List;

/**
 * A choice that an analyst has to make, with the answers that are tried.
 *
 * @param name what is chosen, such as {@code scale}
 * @param levels the answers, in the order in which they are tried
 */
public record Choice(String name, List<String> levels) {
  public Choice {
    levels = List.copyOf(levels);
  }
}
