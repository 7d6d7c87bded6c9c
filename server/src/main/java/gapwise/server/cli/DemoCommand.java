package gapwise.server.cli;

import gapwise.intake.Intake;
import gapwise.server.home.Home;
import gapwise.table.TableFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Serves the invented demonstration evidence base from a folder of its own. */
@Command(
    name = "demo",
    description = "Serve the invented demonstration studies, kept apart from your own.",
    mixinStandardHelpOptions = true)
public final class DemoCommand implements Callable<Integer> {
  private static final String WORKBOOK = "data-templates/demonstration/gapwise-demonstration.xlsx";

  @Option(
      names = "--home",
      paramLabel = "DIR",
      description = "Folder of the demonstration. Default: ${DEFAULT-VALUE}")
  private Path folder = Path.of(System.getProperty("user.home"), ".gapwise-demo");

  @Option(
      names = "--data",
      paramLabel = "FILE",
      description = "The demonstration workbook. Default: ${DEFAULT-VALUE} here or beside the jar")
  private Path data = Path.of(WORKBOOK);

  @Mixin private Serving serving;

  @Override
  public Integer call() throws IOException {
    Home home = Home.open(folder, Clock.systemUTC());
    System.err.println("Demonstration base in " + folder);
    if (home.base().lastChange() == 0 && !load(home)) {
      home.close();
      return Exit.WRONG;
    }
    serving.serve(home);
    return Exit.DONE;
  }

  private boolean load(Home home) throws IOException {
    Path workbook = Files.exists(data) ? data : besideJar();
    if (!Files.exists(workbook)) {
      System.err.println(
          "There is no " + data + ". Start from the folder of the project, or name it by --data.");
      return false;
    }
    // Its doubts are part of the demonstration and known, so they are let stand.
    return TemplateImport.store(
        home.intake(),
        List.of(TableFile.of(workbook)),
        new ImportWishes(true, true, Set.of(), false, Optional.empty()),
        new Intake.As("gapwise demo", "demonstration, invented"));
  }

  /** The project's folder, seen from server/target/gapwise.jar. */
  private static Path besideJar() {
    Path jar = Path.of(System.getProperty("java.class.path").split(":", 2)[0]).toAbsolutePath();
    Path target = jar.getParent();
    Path project = target == null ? jar : target.resolve("../..").normalize();
    return project.resolve(WORKBOOK);
  }
}
