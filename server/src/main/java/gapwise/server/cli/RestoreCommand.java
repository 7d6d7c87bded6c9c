package gapwise.server.cli;

import gapwise.store.Restore;
import gapwise.store.StorePlace;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Puts a backup into a home. */
@Command(
    name = "restore",
    description =
        "Check a backup and put it into a home, new or old, or into an empty database of a server."
            + " What was in the home before is kept beside it. The home may not be in use.",
    mixinStandardHelpOptions = true)
public final class RestoreCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "What the command backup wrote.")
  private Path file;

  @Option(
      names = "--home",
      paramLabel = "DIR",
      required = true,
      description = "Folder to put it into; made when it is not there.")
  private Path home;

  @Mixin private DatabaseOption database;

  @Override
  public Integer call() {
    StorePlace place = database.with(home);
    Restore.Done done = Restore.of(file, place, Clock.systemUTC());
    System.err.println(file + " was checked and put into " + place.shown() + ":");
    System.err.println(CheckedRecords.told(done.soundness()));
    done.replaced()
        .ifPresent(
            kept ->
                System.err.println(
                    "The database that was there before is kept as "
                        + kept
                        + "; delete it when it is not needed any more."));
    return Exit.DONE;
  }
}
