package gapwise.server.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Serves pages and API over the evidence base. */
@Command(
    name = "serve",
    description = "Serve pages and API over the evidence base.",
    mixinStandardHelpOptions = true)
public final class ServeCommand implements Callable<Integer> {
  @Mixin private HomeOption home;
  @Mixin private Serving serving;

  @Override
  public Integer call() {
    serving.serve(home.open());
    return 0;
  }
}
