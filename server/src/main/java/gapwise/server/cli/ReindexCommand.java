package gapwise.server.cli;

import gapwise.server.home.Home;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Builds the search index anew. */
@Command(
    name = "reindex",
    description = "Build the search index anew from the records.",
    mixinStandardHelpOptions = true)
public final class ReindexCommand implements Callable<Integer> {
  @Mixin private ExistingHomeOption home;

  @Override
  public Integer call() {
    try (Home open = home.open()) {
      open.reindex();
    }
    System.err.println("The search index was built anew.");
    return Exit.DONE;
  }
}
