package gapwise.server.cli;

import gapwise.server.home.Home;
import gapwise.server.home.Records;
import gapwise.store.StorePlace;
import java.nio.file.Path;
import java.time.Clock;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where the records are, for commands that need some. */
final class ExistingHomeOption {
  @Option(
      names = "--home",
      paramLabel = "DIR",
      description =
          "Folder of the evidence base, which must be there already. Default: ${DEFAULT-VALUE}")
  Path folder = Path.of(System.getProperty("user.home"), ".gapwise");

  @Mixin private DatabaseOption database;

  /** Where the evidence base is. */
  StorePlace place() {
    return database.with(folder);
  }

  /** The records alone, beside whoever has the home open. */
  Records records() {
    return Records.openExisting(place(), Clock.systemUTC());
  }

  /** The whole home with its index, which one process follows. */
  Home open() {
    return Home.openExisting(place(), Clock.systemUTC());
  }
}
