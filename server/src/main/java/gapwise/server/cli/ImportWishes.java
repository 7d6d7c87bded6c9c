package gapwise.server.cli;

import gapwise.intake.Agreement;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;

/**
 * What a person said beforehand of an import by command.
 *
 * @param acknowledge whether every doubt is let stand
 * @param replaceAll whether every study of the file may replace what stands there
 * @param replaced names of studies that may
 * @param keep whether the others are left as they stand
 * @param changes new file for everything that differs
 */
record ImportWishes(
    boolean acknowledge,
    boolean replaceAll,
    Set<String> replaced,
    boolean keep,
    Optional<Path> changes) {
  ImportWishes {
    replaced = Set.copyOf(replaced);
  }

  /**
   * The same as the import understands it.
   *
   * @param left names of studies that are left as they stand
   */
  Agreement leaving(Set<String> left) {
    return new Agreement(
        key -> acknowledge, change -> replaceAll || replaced.contains(change.after().id()), left);
  }
}
