package gapwise.server;

import gapwise.server.cli.BackupCommand;
import gapwise.server.cli.DemoCommand;
import gapwise.server.cli.ExportCommand;
import gapwise.server.cli.Failure;
import gapwise.server.cli.ImportCommand;
import gapwise.server.cli.KeptCommand;
import gapwise.server.cli.OverlapsCommand;
import gapwise.server.cli.PeopleCommand;
import gapwise.server.cli.ReadPaperCommand;
import gapwise.server.cli.ReadSheetCommand;
import gapwise.server.cli.ReferencesCommand;
import gapwise.server.cli.ReindexCommand;
import gapwise.server.cli.RerunCommand;
import gapwise.server.cli.RestoreCommand;
import gapwise.server.cli.RunCommand;
import gapwise.server.cli.ServeCommand;
import gapwise.server.cli.SupplementCommand;
import gapwise.server.cli.Version;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The main class: one command, one class. */
@Command(
    name = "gapwise",
    description =
        "Compares ways of reconstructing bone lost to lower-limb trauma from published series.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    subcommands = {
      ServeCommand.class,
      DemoCommand.class,
      RunCommand.class,
      SupplementCommand.class,
      RerunCommand.class,
      ImportCommand.class,
      ExportCommand.class,
      ReadPaperCommand.class,
      ReadSheetCommand.class,
      OverlapsCommand.class,
      ReferencesCommand.class,
      PeopleCommand.class,
      KeptCommand.class,
      ReindexCommand.class,
      BackupCommand.class,
      RestoreCommand.class
    })
public final class Gapwise implements Callable<Integer> {
  private static final int NOTHING_ASKED = 2;

  @Spec private CommandSpec spec;

  /** Without a command: how to use it. */
  @Override
  public Integer call() {
    spec.commandLine().usage(System.err);
    return NOTHING_ASKED;
  }

  /** Runs one command and ends with its exit code. */
  public static void main(String[] arguments) {
    System.exit(commandLine().execute(arguments));
  }

  /** The commands, with failures told in words. */
  static CommandLine commandLine() {
    return new CommandLine(new Gapwise()).setExecutionExceptionHandler(Failure::tell);
  }
}
