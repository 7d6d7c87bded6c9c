package gapwise.server.job;

import gapwise.intake.Agreement;
import gapwise.table.TableFile;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * One import.
 *
 * @param id name of the job in addresses
 * @param files what was given
 * @param folder where the files lie until the job is settled
 * @param who who imports
 * @param agreed what they have agreed to so far
 * @param state how far it has come
 */
public record ImportJob(
    String id, List<TableFile> files, Path folder, String who, Agreed agreed, ImportState state) {
  public ImportJob {
    files = List.copyOf(files);
    Objects.requireNonNull(agreed, "agreed");
  }

  /**
   * What a person has agreed to of an import, in one or several goes.
   *
   * @param doubts keys of the doubts that stand in the papers
   * @param changes keys of the changes that may replace what stands in the base; {@link #ALL} among
   *     them stands for every change
   * @param left ids of the studies that are left as they stand
   */
  public record Agreed(Set<String> doubts, Set<String> changes, Set<String> left) {
    /** Stands for the keys of all changes, whatever they are; programs say so, no page does. */
    static final String ALL = "all";

    /** Nothing yet. */
    public static final Agreed NOTHING = new Agreed(Set.of(), Set.of(), Set.of());

    public Agreed {
      doubts = Set.copyOf(doubts);
      changes = Set.copyOf(changes);
      left = Set.copyOf(left);
    }

    /** This and more. */
    Agreed and(Agreed more) {
      return new Agreed(
          both(doubts, more.doubts), both(changes, more.changes), both(left, more.left));
    }

    private static Set<String> both(Set<String> some, Set<String> others) {
      Set<String> both = new HashSet<>(some);
      both.addAll(others);
      return both;
    }

    Agreement agreement() {
      return new Agreement(
          doubts::contains,
          change -> changes.contains(ALL) || changes.contains(change.key()),
          left);
    }
  }

  ImportJob in(ImportState next) {
    return new ImportJob(id, files, folder, who, agreed, next);
  }

  ImportJob agreeing(Agreed more) {
    return new ImportJob(id, files, folder, who, agreed.and(more), state);
  }

  /** Where everything that it would change is listed, while it waits for a person. */
  public Path changes() {
    return folder.resolve("changes.csv");
  }

  /** The names of the files as the person knows them. */
  public String names() {
    return String.join(", ", files.stream().map(TableFile::name).toList());
  }
}
