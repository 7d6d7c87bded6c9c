package gapwise.server.cli;

import gapwise.server.home.Home;
import java.nio.file.Path;
import java.time.Clock;
import picocli.CommandLine.Option;

/** Where the records are, for commands that need some. */
final class ExistingHomeOption {
  @Option(
      names = "--home",
      paramLabel = "DIR",
      description =
          "Folder of the evidence base, which must be there already. Default: ${DEFAULT-VALUE}")
  Path folder = Path.of(System.getProperty("user.home"), ".gapwise");

  Home open() {
    return Home.openExisting(folder, Clock.systemUTC());
  }
}
