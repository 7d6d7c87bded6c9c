package gapwise.server.cli;

import gapwise.server.home.Home;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Writes a copy of all records into one file. */
@Command(
    name = "backup",
    description =
        "Write a copy of all records, with their history, into one new file. Put it as gapwise.db"
            + " into an empty folder to use it again.",
    mixinStandardHelpOptions = true)
public final class BackupCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "New file.")
  private Path file;

  @Mixin private HomeOption home;

  @Override
  public Integer call() throws IOException {
    try (Home open = home.open()) {
      open.backup(file);
    } catch (FileAlreadyExistsException there) {
      System.err.println(file + " is there already; an older backup is never overwritten.");
      return Exit.WRONG;
    }
    System.err.println("All records written to " + file + ".");
    return Exit.DONE;
  }
}
