package gapwise.server.cli;

import gapwise.store.Backup;
import gapwise.store.Soundness;
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
        "Write a copy of all records, with their history, into one new file, and check it. The"
            + " server may go on meanwhile. Put it back by the command restore.",
    mixinStandardHelpOptions = true)
public final class BackupCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "New file.")
  private Path file;

  @Mixin private ExistingHomeOption home;

  @Override
  public Integer call() throws IOException {
    Soundness copied;
    try {
      copied = Backup.write(home.place(), file);
    } catch (FileAlreadyExistsException there) {
      System.err.println(file + " is there already; an older backup is never overwritten.");
      return Exit.WRONG;
    }
    System.err.println("All records written to " + file + ", read back and found equal:");
    System.err.println(CheckedRecords.told(copied));
    return Exit.DONE;
  }
}
