package gapwise.server.cli;

import gapwise.server.home.Home;
import java.nio.file.Path;
import java.time.Clock;
import picocli.CommandLine.Option;

/** Where the records are. */
final class HomeOption {
  @Option(
      names = "--home",
      paramLabel = "DIR",
      description =
          "Folder of the evidence base; made when it is not there. Default: ${DEFAULT-VALUE}")
  Path folder = Path.of(System.getProperty("user.home"), ".gapwise");

  Home open() {
    return Home.open(folder, Clock.systemUTC());
  }
}
