package gapwise.server.cli;

import gapwise.evidence.Study;
import gapwise.exchange.Export;
import gapwise.server.home.Hold;
import gapwise.server.home.Home;
import gapwise.store.OwnerOnly;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Writes all studies into the template. */
@Command(
    name = "export",
    description = "Write all studies into a workbook that can be imported again.",
    mixinStandardHelpOptions = true)
public final class ExportCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "New file, ending in .xlsx.")
  private Path file;

  @Mixin private ExistingHomeOption home;

  @Override
  public Integer call() throws IOException {
    if (Files.exists(file)) {
      System.err.println(file + " is there already; name a new file.");
      return Exit.WRONG;
    }
    List<Study> studies = new ArrayList<>();
    try (Home open = home.open();
        Hold hold = open.hold()) {
      hold.evidence().studies().forEach(kept -> studies.add(kept.study()));
    }
    try (OutputStream target = OwnerOnly.newFile(file)) {
      Export.workbook(studies, target);
    }
    System.err.println(studies.size() + " studies written to " + file + ".");
    return Exit.DONE;
  }
}
